import type { Almanac, NightRecord } from '../calendar/almanac-types.ts';
import { requireCivilZone } from '../calendar/civil.ts';
import { parseCivilDate } from '../calendar/day-number.ts';
import type { CivilDate, InstantMs } from '../calendar/rules.ts';
import type { OpenedSchool } from '../content/open-library.ts';
import type { Terminal } from './terminal.ts';

const HEADINGS: readonly string[] = ['date', 'night', 'name', 'group', 'begins', 'Moon up', 'Moon down', 'lit'];

const LEGEND = '+1: on the date after. lit: how much of the Moon, when the night begins.';

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
  let month: NightRecord[] = [];
  let standIn = '';
  for (const record of records) {
    if (record.sunStays !== undefined) standIn = ` ${nameMissing(almanac)}: midnight stands in for it.`;
    if (month[0] !== undefined && month[0].month.firstDate !== record.month.firstDate) {
      printMonth(almanac, month, measureWidth, terminal);
      month = [];
    }
    month.push(record);
  }
  if (month.length > 0) printMonth(almanac, month, measureWidth, terminal);
  if (month.length > 0) terminal.print(`\n${terminal.emphasise(LEGEND + standIn, 'dim', 'print')}`);
  if (calendar.note !== undefined) terminal.print(`\n${terminal.emphasise(calendar.note, 'dim', 'print')}`);
}

/** @param measureWidth Cells of a terminal that a text takes: letters with marks take one, wide ones two. */
function printMonth(
  almanac: Almanac,
  nights: readonly NightRecord[],
  measureWidth: (text: string) => number,
  terminal: Terminal,
): void {
  const [first] = nights;
  if (first === undefined) return;
  const { name, number, year, length, intercalary } = first.month;
  const lines = [HEADINGS, ...nights.map((night) => listCells(almanac, night))];
  const widths = HEADINGS.map((_, column) => Math.max(...lines.map((cells) => measureWidth(cells[column] ?? ''))));
  const place = `month ${number} of ${year}${intercalary ? ', the extra month' : ''}, ${length} nights`;
  terminal.print(`\n${terminal.emphasise(name, 'bold', 'print')} (${place})`);
  for (const [index, cells] of lines.entries()) {
    const line = cells
      .map((cell, column) => cell + ' '.repeat((widths[column] ?? 0) - measureWidth(cell)))
      .join('  ')
      .trimEnd();
    terminal.print(index === 0 ? terminal.emphasise(line, 'dim', 'print') : line);
  }
}

function listCells(almanac: Almanac, record: NightRecord): string[] {
  const { date, night } = record;
  const { phase, illuminatedFraction, moonriseMs, moonsetMs } = almanac.skyOf(record);
  const read = (atMs: InstantMs | null) => (atMs === null ? '-' : readClock(atMs, date, almanac.place.timeZone));
  const remarks = [
    // From the three decimals that programs get, so that both round alike.
    `${Math.round(Number(illuminatedFraction.toFixed(3)) * 100)}%`.padStart(4),
    ...(phase === null ? [] : [`${phase.name.replace('-', ' ')} ${read(phase.atMs)}`]),
    ...(record.basis === 'observed' ? ['observed'] : []),
    ...(record.sunStays === undefined ? [] : [nameMissing(almanac)]),
  ];
  return [
    date,
    String(record.nightOfMonth).padStart(5),
    record.repeat ? `${night.name} (again)` : night.name,
    night.group,
    read(record.beginsMs),
    read(moonriseMs),
    read(moonsetMs),
    remarks.join('  '),
  ];
}

/** What midnight stands in for. */
function nameMissing({ rules }: Almanac): string {
  return `no ${rules.dayBegins}`;
}

/** `17:25`, with `+1` on the date after the night's own, in the far north and south also `+2`. */
function readClock(atMs: InstantMs, date: CivilDate, timeZone: string): string {
  const zone = requireCivilZone(timeZone);
  let daysAfter = 0;
  for (let day = parseCivilDate(date); day < zone.dayAt(atMs); day = zone.nextDay(day)) daysAfter += 1;
  return `${zone.renderClock(atMs)}${daysAfter === 0 ? '' : ` +${daysAfter}`}`;
}
