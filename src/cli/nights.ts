import type { Almanac, NightRecord } from '../calendar/almanac-types.ts';
import type { Eclipse } from '../calendar/eclipses.ts';
import { NIGHT_CSV_HEADER, renderNightCsv } from '../calendar/night-csv.ts';
import { renderNightRow } from '../calendar/night-row.ts';
import type { CivilDate } from '../calendar/rules.ts';
import type { Labels } from '../content/labels.ts';
import type { OpenedSchool } from '../content/open-library.ts';
import { listNightEclipses } from '../directives/eclipse-notice.ts';
import { listEclipseCare, sayCare, sayEclipse } from '../directives/sky-words.ts';
import { renderNightsIcs } from '../pack/night-ics.ts';
import { sayExplanation } from '../pack/say-explanation.ts';
import { renderPlain, type Sentence } from '../pack/voice.ts';
import type { Arguments } from './arguments.ts';
import { chooseNights, requireRanges } from './choose-nights.ts';
import { chooseSchool, openChosenSchool } from './choose-school.ts';
import { listNights, type PassedOver, tellLeftOut, tellUntold } from './list-nights.ts';
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
  if (options.quiet !== true) tellUnusedRecords(opened, terminal);
  const almanac = setting.almanacFor(opened);
  if (choice.kind === 'explain') return printExplanation(opened, almanac, choice.date, terminal);
  const ranges = choice.kind === 'range' ? [choice.range] : requireRanges(almanac, choice.year, choice.month);
  const passedOver: PassedOver = { leftOut: [], untold: [] };
  await print(form, opened, almanac, listNights(almanac, ranges, passedOver), terminal);
  // A table without these dates would look like a mistake; programs get what there is.
  if (form === 'table' && options.quiet !== true) tellLeftOut(passedOver.leftOut, almanac.place.timeZone, terminal);
  tellUntold(passedOver.untold, terminal);
  return passedOver.untold.length === 0 ? 0 : 1;
}

/** What a school saw is told in the names of its own calendar, and counts for no other. */
function tellUnusedRecords({ school, calendar }: OpenedSchool, terminal: Terminal): void {
  const count = (school.observations?.length ?? 0) + (school.announcedMonths?.length ?? 0);
  if (calendar.id === school.calendar || count === 0) return;
  terminal.tell(
    `lessontide: what ${school.name} observed or announced (${count}) counts for its own calendar \`${school.calendar}\` and is left out here`,
  );
}

function chooseForm(options: Arguments['options']): Form {
  const [form = 'table', second] = FORMS.filter((name) => options[name] === true);
  if (second !== undefined)
    throw new UsageError(`\`--${form}\` and \`--${second}\` are two forms of the same nights; keep one of them`);
  if (form !== 'table' && options.explain !== undefined)
    throw new UsageError(`\`--explain\` answers in words and takes no \`--${form}\`; leave one of them out`);
  return form;
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
  printEclipses(listNightEclipses(almanac.place, record), labels, timeZone, terminal);
  terminal.print(labels.text('keeper-first', { keeper: calendar.keeper }));
  return 0;
}

/** With the cautions that go with them. */
function printEclipses(eclipses: readonly Eclipse[], labels: Labels, timeZone: string, terminal: Terminal): void {
  if (eclipses.length === 0) return;
  terminal.print('');
  for (const eclipse of eclipses) terminal.print(sayEclipse(eclipse, labels, timeZone));
  terminal.print(`${sayCare(listEclipseCare(eclipses), labels)}\n`);
}
