import type { Almanac, NightRecord } from '../calendar/almanac-types.ts';
import { type NightRow, renderNightRow } from '../calendar/night-row.ts';
import type { OpenedSchool } from '../content/open-library.ts';
import type { Terminal } from './terminal.ts';

const HEADINGS: readonly string[] = ['date', 'night', 'name', 'group', 'begins', 'Moon up', 'Moon down', 'lit'];

/** Prints nights for people, a table a month; no more than a month is in memory. */
export async function printNightTable(
  { school, calendar }: OpenedSchool,
  almanac: Almanac,
  records: Iterable<NightRecord>,
  terminal: Terminal,
): Promise<void> {
  // Its tables of Unicode take 20 ms to make ready, which nothing else needs.
  const { default: measureWidth } = await import('string-width');
  terminal.print(`${calendar.title}, ${school.name} (${almanac.place.timeZone})`);
  let month: NightRow[] = [];
  for (const record of records) {
    const row = renderNightRow(almanac, record);
    if (month[0] !== undefined && month[0].month.firstDate !== row.month.firstDate) {
      printMonth(month, measureWidth, terminal);
      month = [];
    }
    month.push(row);
  }
  if (month.length > 0) printMonth(month, measureWidth, terminal);
  if (calendar.note !== undefined) terminal.print(`\n${terminal.emphasise(calendar.note, 'dim', 'print')}`);
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
  const remarks = [
    `${Math.round(illuminatedFraction * 100)}%`.padStart(4),
    ...(phase === null ? [] : [`${phase.name.replace('-', ' ')} ${readClock(phase.at, date)}`]),
    ...(row.basis === 'observed' ? ['observed'] : []),
  ];
  return [
    date,
    String(nightOfMonth).padStart(5),
    night.repeat ? `${night.name} (again)` : night.name,
    night.group,
    readClock(row.begins, date),
    readClock(row.moonrise, date),
    readClock(row.moonset, date),
    remarks.join('  '),
  ];
}

/** `17:25`, with `+1` on the date after the night's own; a dash for a time that does not come. */
function readClock(local: string | null, date: string): string {
  if (local === null) return '-';
  return `${local.slice(11, 16)}${local.startsWith(date) ? '' : ' +1'}`;
}
