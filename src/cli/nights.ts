import type { Almanac } from '../calendar/almanac-types.ts';
import { type NightRow, renderNightRow } from '../calendar/night-row.ts';
import { isCoveredDate } from '../content/civil-date.ts';
import type { OpenedSchool } from '../content/open-library.ts';
import type { WeekSetting } from '../lesson/resolve-week.ts';
import type { Arguments } from './arguments.ts';
import { openSetting } from './open-weeks.ts';
import { tellDiagnostics } from './tell-diagnostics.ts';
import type { Terminal } from './terminal.ts';
import { UsageError } from './usage-error.ts';

/** Prints which night each date is, as a table for people or as JSON. @returns The exit status. */
export async function nights(given: Arguments, terminal: Terminal): Promise<number> {
  const { names, options } = given;
  if (names.length > 0)
    throw new UsageError(
      `\`nights\` takes options only; found \`${names.join(' ')}\`; write \`--from DATE --to DATE\``,
    );
  const from = requireDate('from', options.from);
  const to = options.to === undefined ? from : requireDate('to', options.to);
  if (to < from)
    throw new UsageError(`\`--to ${to}\` is before \`--from ${from}\`; expected the same date or a later one`);
  const setting = openSetting(given);
  const opened = openSchool(setting, terminal);
  if (opened === undefined) return 1;
  const almanac = setting.almanacFor(opened);
  if (options.json === true) printJson(almanac, from, to, terminal);
  else await printTable(opened, almanac, from, to, terminal);
  return 0;
}

function requireDate(option: 'from' | 'to', text: string | undefined): string {
  if (text === undefined)
    throw new UsageError('`nights` needs a date; write `--from YYYY-MM-DD`, and `--to YYYY-MM-DD` for more than one');
  if (!isCoveredDate(text)) {
    throw new UsageError(
      `\`--${option} ${text}\` is not a date of the calendar; expected a real date from 1900-01-01 to 2100-12-31, as YYYY-MM-DD`,
    );
  }
  return text;
}

function openSchool({ library, schoolId, calendarId }: WeekSetting, terminal: Terminal): OpenedSchool | undefined {
  const homes = library.findHomeSchools();
  const id = schoolId ?? (homes.length === 1 ? homes[0] : undefined);
  if (id === undefined) {
    const ids = library.schools.ids.join(', ') || 'none: there are no files';
    throw new UsageError(
      `\`nights\` needs a school; write \`--school ID\` with one of ${ids}, or \`home: true\` in one school file`,
    );
  }
  const opened = library.openSchool(id, calendarId);
  tellDiagnostics(opened?.diagnostics ?? [], terminal);
  return opened?.value;
}

/** Row by row, so that a hundred years need no more memory than one. */
function printJson(almanac: Almanac, from: string, to: string, terminal: Terminal): void {
  let before = '[';
  for (const record of almanac.nights(from, to)) {
    terminal.print(`${before}${JSON.stringify(renderNightRow(almanac, record))}`);
    before = ',';
  }
  terminal.print(before === '[' ? '[]' : ']');
}

const HEADINGS: readonly string[] = ['date', 'night', 'name', 'group', 'begins', 'Moon up', 'Moon down', 'lit'];

async function printTable(
  { school, calendar }: OpenedSchool,
  almanac: Almanac,
  from: string,
  to: string,
  terminal: Terminal,
): Promise<void> {
  // Its tables of Unicode take 20 ms to make ready, which no other command needs.
  const { default: measureWidth } = await import('string-width');
  terminal.print(`${calendar.title}, ${school.name} (${almanac.place.timeZone})`);
  if (calendar.note !== undefined) terminal.print(terminal.emphasise(calendar.note, 'dim', 'print'));
  let month: NightRow[] = [];
  for (const record of almanac.nights(from, to)) {
    const row = renderNightRow(almanac, record);
    if (month[0] !== undefined && month[0].month.firstDate !== row.month.firstDate) {
      printMonth(month, measureWidth, terminal);
      month = [];
    }
    month.push(row);
  }
  if (month.length > 0) printMonth(month, measureWidth, terminal);
}

/** @param measureWidth Cells of a terminal that a text takes: letters with marks take one, wide ones two. */
function printMonth(rows: readonly NightRow[], measureWidth: (text: string) => number, terminal: Terminal): void {
  const [first] = rows;
  if (first === undefined) return;
  const { name, number, year, length, intercalary } = first.month;
  const lines = [HEADINGS, ...rows.map(listCells)];
  const widths = HEADINGS.map((_, column) => Math.max(...lines.map((cells) => measureWidth(cells[column] ?? ''))));
  const place = `month ${number} of ${year}${intercalary ? ', the thirteenth' : ''}, ${length} nights`;
  terminal.print(`\n${terminal.emphasise(name, 'bold', 'print')} (${place})`);
  for (const [index, cells] of lines.entries()) {
    const line = cells
      .map((cell, column) => cell + ' '.repeat((widths[column] ?? 0) - measureWidth(cell)))
      .join('  ')
      .trimEnd();
    terminal.print(index === 0 ? terminal.emphasise(line, 'dim', 'print') : line);
  }
}

function listCells(row: NightRow): string[] {
  const { date, night, nightOfMonth, illuminatedFraction, phase } = row;
  return [
    date,
    String(nightOfMonth).padStart(5),
    night.repeat ? `${night.name} (again)` : night.name,
    night.group,
    readClock(row.begins, date),
    readClock(row.moonrise, date),
    readClock(row.moonset, date),
    `${Math.round(illuminatedFraction * 100)}%`.padStart(4) +
      (phase === null ? '' : `  ${phase.name.replace('-', ' ')} ${readClock(phase.at, date)}`),
  ];
}

/** `17:25`, with `+1` on the date after the night's own; a dash for a time that does not come. */
function readClock(local: string | null, date: string): string {
  if (local === null) return '-';
  return `${local.slice(11, 16)}${local.startsWith(date) ? '' : ' +1'}`;
}
