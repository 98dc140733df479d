import type { Almanac, NightRecord } from '../calendar/almanac-types.ts';
import { NIGHT_CSV_HEADER, renderNightCsv } from '../calendar/night-csv.ts';
import { renderNightRow } from '../calendar/night-row.ts';
import type { CivilDate } from '../calendar/rules.ts';
import { addDays } from '../content/civil-date.ts';
import type { OpenedSchool } from '../content/open-library.ts';
import { renderNightsIcs } from '../pack/night-ics.ts';
import { sayExplanation } from '../pack/say-explanation.ts';
import { renderPlain, type Sentence } from '../pack/voice.ts';
import type { Arguments } from './arguments.ts';
import { chooseNights, type DateRange, requireRanges } from './choose-nights.ts';
import { chooseSchool, openChosenSchool } from './choose-school.ts';
import { openSetting } from './open-weeks.ts';
import { printNightTable } from './print-night-table.ts';
import type { Terminal } from './terminal.ts';
import { UsageError } from './usage-error.ts';

/** The forms in which nights are printed, besides the table. */
const FORMS = ['json', 'csv', 'ics'] as const;

type Form = 'table' | (typeof FORMS)[number];

/** Prints which night each date is, or why a date has its night. @returns The exit status. */
export async function nights(given: Arguments, terminal: Terminal): Promise<number> {
  const { names, options } = given;
  if (names.length > 0)
    throw new UsageError(
      `\`nights\` takes options only; found \`${names.join(' ')}\`; write \`--from DATE --to DATE\`, and quotes around names`,
    );
  const choice = chooseNights(given);
  const form = chooseForm(options);
  const setting = openSetting(given);
  const id = chooseSchool('nights', setting.library, setting.schoolId);
  const opened = openChosenSchool(setting.library, id, setting.calendarId, terminal);
  if (opened === undefined) return 1;
  const almanac = setting.almanacFor(opened);
  if (choice.kind === 'explain') return printExplanation(opened, almanac, choice.date, terminal);
  const ranges = choice.kind === 'range' ? [choice.range] : requireRanges(almanac, choice.year, choice.month);
  const leftOut: CivilDate[] = [];
  await print(form, opened, almanac, listNights(almanac, ranges, leftOut), terminal);
  // A table without these dates would look like a mistake; programs get what there is.
  if (form === 'table') tellLeftOut(leftOut, almanac.place.timeZone, terminal);
  return 0;
}

function chooseForm(options: Arguments['options']): Form {
  const [form = 'table', second] = FORMS.filter((name) => options[name] === true);
  if (second !== undefined)
    throw new UsageError(`\`--${form}\` and \`--${second}\` are two forms of the same nights; keep one of them`);
  if (form !== 'table' && options.explain !== undefined)
    throw new UsageError(`\`--explain\` answers in words and takes no \`--${form}\`; leave one of them out`);
  return form;
}

/**
 * Night by night, so that a hundred years need no more memory than one.
 * @param leftOut Gets the dates that the clocks of the place left out, as they are passed over.
 */
function* listNights(almanac: Almanac, ranges: readonly DateRange[], leftOut: CivilDate[]): Generator<NightRecord> {
  for (const { from, to } of ranges) {
    let expected = from;
    for (const record of almanac.nights(from, to)) {
      for (; expected < record.date; expected = addDays(expected, 1)) leftOut.push(expected);
      yield record;
      expected = addDays(expected, 1);
    }
    for (; expected <= to; expected = addDays(expected, 1)) leftOut.push(expected);
  }
}

function tellLeftOut(dates: readonly CivilDate[], timeZone: string, terminal: Terminal): void {
  for (const date of dates)
    terminal.tell(`lessontide: ${date} was left out by the clocks of ${timeZone}; it has no night`);
}

async function print(
  form: Form,
  opened: OpenedSchool,
  almanac: Almanac,
  records: Iterable<NightRecord>,
  terminal: Terminal,
): Promise<void> {
  if (form === 'table') await printNightTable(opened, almanac, records, terminal);
  else if (form === 'json') printJson(almanac, records, terminal);
  else if (form === 'csv') printCsv(almanac, records, terminal);
  // The terminal ends what it prints with LF; both formats end their lines with CR LF.
  else for (const lines of renderNightsIcs({ ...opened, almanac }, records)) terminal.print(`${lines}\r`);
}

function printJson(almanac: Almanac, records: Iterable<NightRecord>, terminal: Terminal): void {
  let before = '[';
  for (const record of records) {
    terminal.print(`${before}${JSON.stringify(renderNightRow(almanac, record))}`);
    before = ',';
  }
  terminal.print(before === '[' ? '[]' : ']');
}

function printCsv(almanac: Almanac, records: Iterable<NightRecord>, terminal: Terminal): void {
  terminal.print(`${NIGHT_CSV_HEADER}\r`);
  for (const record of records) terminal.print(`${renderNightCsv(renderNightRow(almanac, record))}\r`);
}

/** In the words of the school's language, as the pack's pages say it. */
function printExplanation(
  { calendar, school, labels }: OpenedSchool,
  almanac: Almanac,
  date: CivilDate,
  terminal: Terminal,
): number {
  const { timeZone } = almanac.place;
  // A place that has moved over the date line has left out a date.
  const [record] = almanac.nights(date, date);
  if (record === undefined) {
    throw new UsageError(`\`--explain ${date}\` is a date that ${timeZone} left out; take the day before or after`);
  }
  const said = sayExplanation(almanac.explain(date), labels, timeZone);
  const list = (sentences: readonly Sentence[]) => {
    for (const sentence of sentences) terminal.print(`- ${renderPlain(sentence)}`);
  };
  terminal.print(`${calendar.title}, ${school.name} (${timeZone})`);
  if (calendar.note !== undefined) terminal.print(terminal.emphasise(calendar.note, 'dim', 'print'));
  terminal.print(`\n${terminal.emphasise(said.night.map(renderPlain).join(' '), 'bold', 'print')}`);
  terminal.print(`\n${labels.text('how-we-know')}`);
  list(said.steps);
  terminal.print('');
  for (const sentence of said.closeness) {
    const words = renderPlain(sentence);
    terminal.print(said.closeCall ? terminal.emphasise(words, 'yellow', 'print') : words);
  }
  terminal.print(labels.text('keeper-first', { keeper: calendar.keeper }));
  return 0;
}
