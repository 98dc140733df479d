import { checkRecords, type RecordFault } from '../calendar/check-records.ts';
import { parseCivilDate } from '../calendar/day-number.ts';
import type { CivilDate, Observation } from '../calendar/rules.ts';
import type { Checked } from './check-value.ts';
import type { Diagnostic } from './diagnostic.ts';
import { checkReference, createFault, type Finding } from './faults.ts';
import type { WrittenSchool } from './parse-school.ts';
import type { Calendar } from './types.ts';
import { describePath, quote } from './wording.ts';
import type { YamlDocument, YamlPath } from './yaml-document.ts';

/** Days within which two first nights are meant for the same month: each may lie three nights from the computed one. */
const SAME_MONTH_DAYS = 6;

type Records = Pick<Calendar, 'observations' | 'announcedMonths'>;

/** A record, and where it is written. */
interface Written<Value> {
  readonly value: Value;
  readonly document: YamlDocument;
  readonly path: YamlPath;
}

/** The records that count at a school, each with its place. */
interface SchoolRecords {
  readonly observations: readonly Written<Observation>[];
  readonly announcedMonths: readonly Written<CivilDate>[];
}

function locate(source: Checked<unknown>, records: Partial<Records> | undefined): SchoolRecords {
  const { document } = source;
  const place = <Value>(key: string, values: readonly Value[] = []) =>
    values.map((value, index) => ({ value, document, path: [key, index] }));
  return {
    observations: place('observations', records?.observations),
    announcedMonths: place('announced-months', records?.announcedMonths),
  };
}

/** Both files' records; of the calendar's those go that the school has its own word for: a date, or a month's first night. */
function mergeRecords(calendar: SchoolRecords, school: SchoolRecords, firstName: string | undefined): SchoolRecords {
  const dates = new Set(school.observations.map(({ value }) => value.date));
  const firsts = [
    ...school.announcedMonths.map(({ value }) => value),
    ...school.observations.flatMap(({ value }) => (value.night === firstName ? [value.date] : [])),
  ].map(parseCivilDate);
  const isSpokenFor = (date: CivilDate) =>
    firsts.some((day) => Math.abs(day - parseCivilDate(date)) <= SAME_MONTH_DAYS);
  const kept = calendar.observations.filter(
    ({ value }) => !dates.has(value.date) && !(value.night === firstName && isSpokenFor(value.date)),
  );
  const announced = calendar.announcedMonths.filter(({ value }) => !isSpokenFor(value));
  return {
    observations: [...kept, ...school.observations],
    announcedMonths: [...announced, ...school.announcedMonths],
  };
}

/**
 * The calendar as it counts at a school, with the school's observations and announced months in it, which outrank the
 * calendar's own; and the findings about both. A calendar that cannot be used with its records has no value.
 */
export function applySchoolRecords(
  school: Checked<WrittenSchool>,
  calendar: Checked<Calendar>,
): { readonly value?: Calendar; readonly diagnostics: readonly Diagnostic[] } {
  if (school.value === undefined || calendar.value === undefined) return { diagnostics: [] };
  const rules = calendar.value;
  const own = locate(school, school.value);
  const theirs = locate(calendar, rules);
  const count = [own, theirs].reduce((sum, each) => sum + each.observations.length + each.announcedMonths.length, 0);
  if (count === 0) return { value: rules, diagnostics: [] };
  const names = rules.groups.flatMap(({ nights }) => nights.map(({ name }) => name));
  const unknown = [...checkReference(school.document, ['observations', '*', 'night'], 'night', names)];
  if (unknown.length > 0) return { diagnostics: unknown };
  const merged = mergeRecords(theirs, own, names[0]);
  const value: Calendar = {
    ...rules,
    observations: merged.observations.map((each) => each.value),
    announcedMonths: merged.announcedMonths.map((each) => each.value),
  };
  const written = [...merged.announcedMonths, ...merged.observations];
  const faults = checkRecords(value, school.value.place);
  const diagnostics = faults.flatMap((fault) => describeFault(written, fault));
  const isFaulty = diagnostics.some(({ severity }) => severity === 'error');
  return { ...(!isFaulty && { value }), diagnostics };
}

function describeFault(written: readonly Written<Observation | CivilDate>[], fault: RecordFault): Diagnostic[] {
  const record = written[fault.record];
  const other = 'other' in fault ? written[fault.other] : undefined;
  if (record === undefined) return [];
  const { document, path } = record;
  // Between the two files the school's word counts: worth telling, no fault.
  const isBetween = other !== undefined && other.document !== document;
  const isWarning = fault.what === 'month-length' || fault.what === 'first-name-left-out' || isBetween;
  const finding: Finding = {
    rule: 'observation',
    ...(isWarning && { severity: 'warning' as const }),
    message: `${describePath(path)}: ${describeRecord(record)} ${describeCause(fault, other)}`,
    found: typeof record.value === 'string' ? record.value : record.value.date,
  };
  const diagnostic = createFault(document, path, finding);
  return [{ ...diagnostic, ...(other && { related: other.document.placeOf(other.path) }) }];
}

function describeRecord({ value }: Written<Observation | CivilDate>): string {
  if (typeof value === 'string') return `the month announced for ${quote(value)}`;
  return `${quote(value.night)} on ${quote(value.date)}`;
}

function describeCause(fault: RecordFault, other: Written<Observation | CivilDate> | undefined): string {
  const against = other === undefined ? 'another record' : describeRecord(other);
  switch (fault.what) {
    case 'no-such-date':
      return 'is on a date that the clocks of this place left out; use the date before or after.';
    case 'too-far': {
      const side = fault.nightsOff > 0 ? 'after' : 'before';
      return `is ${Math.abs(fault.nightsOff)} nights ${side} the computed date ${quote(fault.computedDate)}, expected at most 3; check the date and the name, or how the calendar begins its months.`;
    }
    case 'other-beginning':
      return `gives the month another first night than ${against}, which makes it ${quote(fault.otherDate)}; keep the one that is right.`;
    case 'outside-month':
      return fault.side === 'before'
        ? `comes before the first night of its month, which is that of ${quote(fault.firstDate)} by ${against}; keep the one that is right.`
        : `comes after the last night of its month, since the next begins on ${quote(fault.firstDate)} by ${against}; keep the one that is right.`;
    case 'first-name-left-out': {
      const [first = ''] = fault.leftOut;
      return `begins its month without ${fault.leftOut.map(quote).join(', ')}, expected ${quote(first)} first; if that was on ${quote(fault.firstDate)}, add it to the observations, else check the date and the name.`;
    }
    case 'out-of-step':
      return `does not go with ${against}: they must lie about as far from the computed calendar, to within 3 nights; check both dates and names.`;
    case 'month-length':
      return `makes the month from ${quote(fault.firstDate)} ${fault.length} nights long, expected 28 to 31; check the first nights of this month and the next.`;
  }
}
