import { createAlmanac } from '../calendar/almanac.ts';
import type { Almanac } from '../calendar/almanac-types.ts';
import { parseCivilDate } from '../calendar/day-number.ts';
import { createNightLine } from '../calendar/night-line.ts';
import { NoNightError } from '../calendar/no-night-error.ts';
import type { CivilDate, InstantMs, Observation } from '../calendar/rules.ts';
import { addObservation } from '../content/add-observation.ts';
import type { Diagnostic } from '../content/diagnostic.ts';
import { computeFileId } from '../content/file-id.ts';
import type { LibraryFiles } from '../content/library.ts';
import { type Opened, type OpenedSchool, openLibrary } from '../content/open-library.ts';
import type { SourceFile } from '../content/types.ts';
import { ChangedFileError, replaceText } from '../node/replace-text.ts';
import { listNightChanges, type NightChange } from './night-changes.ts';
import {
  describeNoPlace,
  describeNotBegun,
  describeNotKnown,
  describeTaken,
  findEntryOf,
  type ObservedEntry,
  requireLastEntry,
} from './observed-entries.ts';
import { requireNight, requireNightOfItsOwn } from './read-observation.ts';

/** What came of an observation; `observe --json` prints it as it is. */
export interface RecordedObservation {
  /** `known`: the file had it already. `refused`: nothing was written, and the diagnostics say why. */
  readonly status: 'added' | 'known' | 'refused';
  /** The school's file. */
  readonly file: string;
  /** The line at which the entry stands, or would stand; absent where there is none. */
  readonly line?: number;
  readonly observation: Observation;
  readonly changes: readonly NightChange[];
  readonly diagnostics: readonly Diagnostic[];
}

/** The school that saw something. */
export interface Watch {
  readonly files: LibraryFiles;
  /** A school that is there. */
  readonly id: string;
  readonly opened: Opened<OpenedSchool>;
}

/** What is added where all is well. */
interface Addition {
  readonly watch: Watch;
  readonly file: SourceFile;
  readonly observation: Observation;
}

/**
 * Adds an observation to a school's file, if all is well with both.
 * @param wanted The night as it was asked for.
 * @param nowMs The present instant.
 * @throws UsageError for a night that the school's calendar does not have, and a date that the place left out.
 */
export function recordObservation(watch: Watch, wanted: Observation, nowMs: InstantMs): RecordedObservation {
  const file = watch.files.schools.find(({ path }) => computeFileId(path) === watch.id);
  if (file === undefined) throw new Error(`The school ${watch.id} has no file.`);
  const { value, diagnostics } = watch.opened;
  if (value === undefined) return refuse({ watch, file, observation: wanted }, []);
  const almanac = createAlmanac(value.calendar, value.school.place);
  const observation = { ...wanted, night: requireNight(almanac, value.calendar, wanted.night) };
  requireNightOfItsOwn(almanac, observation.date);
  const addition = { watch, file, observation };
  const known = findEntryOf(file, observation.date);
  if (known === undefined) return add(addition, almanac, nowMs);
  if (known.night !== observation.night) return refuse(addition, [describeTaken(known, observation)]);
  return { status: 'known', file: file.path, line: known.line, observation, changes: [], diagnostics };
}

/** @param line Where the entry would have stood, when the reasons count it. */
function refuse(
  { watch, file, observation }: Addition,
  why: readonly Diagnostic[],
  line?: number,
): RecordedObservation {
  const diagnostics = [...watch.opened.diagnostics, ...why];
  const at = line === undefined ? {} : { line };
  return { status: 'refused', file: file.path, ...at, observation, changes: [], diagnostics };
}

function add(addition: Addition, almanac: Almanac, nowMs: InstantMs): RecordedObservation {
  const { watch, file, observation } = addition;
  const text = addObservation(file.text, observation);
  if (text === undefined) return refuse(addition, [describeNoPlace(file, observation)]);
  const changed = { ...file, text };
  const entry = requireLastEntry(changed);
  const { line } = entry;
  const after = openWith(watch, changed);
  const fresh = leaveOutKnown(after.diagnostics, watch.opened.diagnostics);
  if (after.value === undefined || fresh.some(({ severity }) => severity === 'error')) {
    return refuse(addition, fresh, line);
  }
  const fault = write(file, text);
  if (fault !== undefined) return refuse(addition, [fault]);
  const then = createAlmanac(after.value.calendar, after.value.school.place);
  const changes = listNightChanges(almanac, then, observation.date);
  const diagnostics = [...after.diagnostics, ...listRemarks(entry, then, observation.date, nowMs)];
  return { status: 'added', file: file.path, line, observation, changes, diagnostics };
}

/** What is worth saying of an entry that is no mistake. */
function listRemarks(entry: ObservedEntry, almanac: Almanac, date: CivilDate, nowMs: InstantMs): Diagnostic[] {
  const { rules, place } = almanac;
  const beginsMs = createNightLine(rules.dayBegins, place).beginningOf(parseCivilDate(date)).atMs;
  const early = beginsMs > nowMs ? [describeNotBegun(entry, date, beginsMs, place.timeZone)] : [];
  try {
    almanac.nightOn(date);
    return early;
  } catch (error) {
    if (!(error instanceof NoNightError)) throw error;
    return [...early, describeNotKnown(entry, date, error.message)];
  }
}

function openWith({ files, id }: Watch, changed: SourceFile): Opened<OpenedSchool> {
  const schools = files.schools.map((file) => (file.path === changed.path ? changed : file));
  return openLibrary({ ...files, schools }).openSchool(id) ?? { diagnostics: [] };
}

/** Places may have moved by the new entry; what is said tells whether it is new. */
function leaveOutKnown(after: readonly Diagnostic[], before: readonly Diagnostic[]): Diagnostic[] {
  const known = new Set(before.map(({ message }) => message));
  return after.filter(({ message }) => !known.has(message));
}

/** Nothing when it is done. */
function write({ path, text }: SourceFile, changed: string): Diagnostic | undefined {
  try {
    replaceText(path, text, changed);
    return undefined;
  } catch (error) {
    if (!(error instanceof ChangedFileError)) throw error;
    const place = { file: path, line: 1, column: 1 };
    return { rule: 'observation', severity: 'error', place, message: error.message };
  }
}
