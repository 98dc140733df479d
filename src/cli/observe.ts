import { createAlmanac } from '../calendar/almanac.ts';
import type { Almanac, NightRecord } from '../calendar/almanac-types.ts';
import type { CivilDate, Observation } from '../calendar/rules.ts';
import { addObservation, renderObservation } from '../content/add-observation.ts';
import { addDays, clampDate, FIRST_DATE, isCoveredDate, LAST_DATE } from '../content/civil-date.ts';
import type { Diagnostic } from '../content/diagnostic.ts';
import { collect } from '../content/faults.ts';
import { computeFileId } from '../content/file-id.ts';
import type { LibraryFiles } from '../content/library.ts';
import { findNearMiss } from '../content/near-miss.ts';
import { type OpenedSchool, openLibrary } from '../content/open-library.ts';
import { cleanText } from '../content/schemas/parts.ts';
import type { SourceFile } from '../content/types.ts';
import { parseYaml } from '../content/yaml-document.ts';
import { readContent } from '../node/read-content.ts';
import { ChangedFileError, replaceText } from '../node/replace-text.ts';
import type { Arguments } from './arguments.ts';
import { chooseSchool, openChosenSchool } from './choose-school.ts';
import { CONTENT_FOLDER, requireKnown } from './open-weeks.ts';
import { tellDiagnostics } from './tell-diagnostics.ts';
import type { Terminal } from './terminal.ts';
import { UsageError } from './usage-error.ts';

/** A night may change the month it is in and, by its length, those beside it. */
const DAYS_COMPARED = 62;

/** The name that a date had, and the one that it has now. */
interface Change {
  readonly date: CivilDate;
  readonly before: string;
  readonly after: string;
}

/** Adds what was seen to the school's file and says which nights change by it. @returns The exit status. */
export function observe(given: Arguments, terminal: Terminal): number {
  const { options } = given;
  const wanted = readObservation(given);
  const files = readContent(options.content ?? CONTENT_FOLDER);
  const library = openLibrary(files);
  requireKnown('school', options.school, library.schools.ids);
  const id = chooseSchool('observe', library, options.school);
  const opened = openChosenSchool(library, id, undefined, terminal);
  const file = files.schools.find(({ path }) => computeFileId(path) === id);
  if (opened === undefined || file === undefined) return 1;
  const almanac = createAlmanac(opened.calendar, opened.school.place);
  const observation = { ...wanted, night: requireNight(almanac, opened, wanted.night) };
  requireNightOfItsOwn(almanac, observation.date);
  const known = findObserved(file, observation.date);
  if (known !== undefined) return tellKnown(known, observation, file, terminal);
  const text = addObservation(file.text, observation);
  if (text === undefined) {
    terminal.tell(
      `lessontide: \`${file.path}\` writes its observations in a way that cannot be added to from here; nothing was written; add by hand: \`- ${renderObservation(observation)}\``,
    );
    return 1;
  }
  const after = openWith(files, { ...file, text }, id);
  const fresh = leaveOutKnown(after.diagnostics, library.openSchool(id)?.diagnostics ?? []);
  tellDiagnostics(fresh, terminal);
  if (after.value === undefined || fresh.some(({ severity }) => severity === 'error')) {
    terminal.tell('lessontide: nothing was written');
    return 1;
  }
  const changes = listChanges(almanac, createAlmanac(after.value.calendar, after.value.school.place), observation.date);
  return write(file, text, observation, changes, terminal);
}

function readObservation({ names, options }: Arguments): Observation {
  const [date, ...words] = names;
  const night = cleanText(words.join(' ')).normalize('NFC');
  if (date === undefined || night === '') {
    throw new UsageError('`observe` needs a date and a night; write `observe YYYY-MM-DD "NIGHT" --by "WHO OR HOW"`');
  }
  if (!isCoveredDate(date)) {
    throw new UsageError(
      `\`${date}\` is not a date of the calendar; expected a real date from ${FIRST_DATE} to ${LAST_DATE}, as YYYY-MM-DD`,
    );
  }
  const by = cleanText(options.by ?? '').normalize('NFC');
  if (by === '') {
    throw new UsageError('`observe` needs to know who saw it, or how; add `--by "seen from the jetty"`, say');
  }
  if (/[\p{Cc}\p{Cs}\u2028\u2029]/u.test(by)) {
    throw new UsageError('`--by` holds a control character; expected words on one line');
  }
  return { date, night, by };
}

/** The name as the calendar writes it; capitals need not agree. */
function requireNight(almanac: Almanac, { calendar }: OpenedSchool, asked: string): string {
  const names = almanac.run.map(({ name }) => name);
  const name = names.find((each) => each === asked) ?? names.find((each) => each.toLowerCase() === asked.toLowerCase());
  if (name !== undefined) return name;
  const near = findNearMiss(asked, names);
  const advice = near === undefined ? `expected one of ${names.join(', ')}` : `did you mean \`${near}\`?`;
  throw new UsageError(`\`${asked}\` is not a night of \`${calendar.title}\`; ${advice}`);
}

/** A place that has moved over the date line has left out a date. */
function requireNightOfItsOwn(almanac: Almanac, date: CivilDate): void {
  const [record] = almanac.nights(date, date);
  if (record !== undefined) return;
  throw new UsageError(`\`${date}\` is a date that ${almanac.place.timeZone} left out; take the day before or after`);
}

/** The night that the school's file has for a date already. */
function findObserved(file: SourceFile, date: CivilDate): string | undefined {
  const { value } = parseYaml(file.text, { file: file.path, line: 1, column: 1 });
  for (const entry of collect(value, ['observations', '*'])) {
    const [seenOn] = collect(entry.value, ['date']);
    const [night] = collect(entry.value, ['night']);
    if (seenOn?.value === date && typeof night?.value === 'string') return cleanText(night.value);
  }
  return undefined;
}

function tellKnown(known: string, { date, night }: Observation, { path }: SourceFile, terminal: Terminal): number {
  if (known === night) {
    terminal.print(`\`${path}\` has \`${night}\` on ${date} already; nothing to add.`);
    return 0;
  }
  terminal.tell(
    `lessontide: \`${path}\` has \`${known}\` on ${date} already, and a date has one night; nothing was written; take that entry out first if it is wrong`,
  );
  return 1;
}

function openWith(files: LibraryFiles, changed: SourceFile, id: string) {
  const schools = files.schools.map((file) => (file.path === changed.path ? changed : file));
  return openLibrary({ ...files, schools }).openSchool(id) ?? { diagnostics: [] };
}

/** Places may have moved by the new entry; what is said tells whether it is new. */
function leaveOutKnown(after: readonly Diagnostic[], before: readonly Diagnostic[]): Diagnostic[] {
  const known = new Set(before.map(({ message }) => message));
  return after.filter(({ message }) => !known.has(message));
}

function listChanges(before: Almanac, after: Almanac, date: CivilDate): Change[] {
  const range = [clampDate(addDays(date, -DAYS_COMPARED)), clampDate(addDays(date, DAYS_COMPARED))] as const;
  const told = new Map(Array.from(before.nights(...range), (record) => [record.date, sayNight(record)]));
  return Array.from(after.nights(...range), (record) => ({
    date: record.date,
    before: told.get(record.date) ?? '',
    after: sayNight(record),
  })).filter((change) => change.before !== change.after);
}

function sayNight({ night, repeat, nightOfMonth, month }: NightRecord): string {
  return `${night.name}${repeat ? ' (again)' : ''}, night ${nightOfMonth} of ${month.name}`;
}

function write(
  file: SourceFile,
  text: string,
  observation: Observation,
  changes: readonly Change[],
  terminal: Terminal,
): number {
  try {
    replaceText(file.path, file.text, text);
  } catch (error) {
    if (!(error instanceof ChangedFileError)) throw error;
    terminal.tell(`lessontide: ${error.message}`);
    return 1;
  }
  terminal.print(`${file.path}: added ${renderObservation(observation)}`);
  if (changes.length === 0) {
    terminal.print('No night changes: what was seen agrees with what was computed.');
    return 0;
  }
  terminal.print(`${changes.length} ${changes.length === 1 ? 'night changes' : 'nights change'}:`);
  const width = Math.max(...changes.map(({ before }) => before.length));
  for (const { date, before, after } of changes) terminal.print(`${date}  ${before.padEnd(width)}  ->  ${after}`);
  return 0;
}
