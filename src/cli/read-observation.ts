import type { Almanac } from '../calendar/almanac-types.ts';
import { requireCivilZone } from '../calendar/civil.ts';
import { parseCivilDate } from '../calendar/day-number.ts';
import type { CivilDate, Observation } from '../calendar/rules.ts';
import { FIRST_DATE, isCoveredDate, LAST_DATE } from '../content/civil-date.ts';
import { findNearMiss } from '../content/near-miss.ts';
import { cleanText } from '../content/schemas/parts.ts';
import type { Calendar } from '../content/types.ts';
import type { Arguments } from './arguments.ts';
import { UsageError } from './usage-error.ts';

/**
 * Reads what a call of `observe` says was seen; whether the calendar has such a night is not looked at.
 * @throws UsageError for a date that is none, and where the night or who saw it is missing.
 */
export function readObservation({ names, options }: Arguments): Observation {
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
  return { date, night, by: requireSource(options.by) };
}

function requireSource(given: string | undefined): string {
  const by = cleanText(given ?? '').normalize('NFC');
  if (by === '') {
    throw new UsageError('`observe` needs to know who saw it, or how; add `--by "seen from the jetty"`, say');
  }
  if (/[\p{Cc}\p{Cs}\u2028\u2029]/u.test(by)) {
    throw new UsageError('`--by` holds a control character; expected words on one line');
  }
  return by;
}

/**
 * The name as the calendar writes it; capitals need not agree.
 * @throws UsageError for a night that the calendar does not have.
 */
export function requireNight(almanac: Almanac, { title }: Calendar, asked: string): string {
  const names = almanac.run.map(({ name }) => name);
  const name = names.find((each) => each === asked) ?? names.find((each) => each.toLowerCase() === asked.toLowerCase());
  if (name !== undefined) return name;
  const near = findNearMiss(asked, names);
  const advice = near === undefined ? `expected one of ${names.join(', ')}` : `did you mean \`${near}\`?`;
  throw new UsageError(`\`${asked}\` is not a night of \`${title}\`; ${advice}`);
}

/** @throws UsageError for a date that a place left out when it moved over the date line. */
export function requireNightOfItsOwn(almanac: Almanac, date: CivilDate): void {
  const { timeZone } = almanac.place;
  if (requireCivilZone(timeZone).findStartOfDay(parseCivilDate(date)) !== null) return;
  throw new UsageError(`\`${date}\` is a date that ${timeZone} left out; take the day before or after`);
}
