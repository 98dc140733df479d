import type { NightRecord } from '../../calendar/almanac-types.ts';
import { MS_PER_DAY } from '../../calendar/day-number.ts';
import type { Hardness } from '../even-band.ts';
import type { QuizFacts } from '../model.ts';
import { runsOn } from './neighbours.ts';
import type { Level } from './question-instance.ts';

/** How hard an instance is, against others of its kind and on the scale that authors ask by. */
export interface Grade {
  readonly level: Level;
  readonly hardness: Hardness;
}

/** What the levels of {@link gradeFromTonight} are for a question about a date, for the authors' reference. */
export const DATE_LEVELS = [
  'a date at most three days from the lesson',
  'a date further off in the same month',
  'a date beyond the end of the month, or beyond a name that is left out or said twice',
] as const;

/** Up to here a night is found by a look at tonight's neighbours. Our own choice. */
const NEAR_NIGHTS = 3;

/**
 * How hard it is to get from tonight to another night, before or after: 1 for the nearest ones, 2 for those further off
 * in the same month, 3 where the count meets the month's end, or a name that is left out or said twice.
 */
export function gradeFromTonight(facts: QuizFacts, record: NightRecord): Grade {
  const tonight = facts.almanac.nightOn(facts.today);
  const nights = Math.round(Math.abs(record.beginsMs - tonight.beginsMs) / MS_PER_DAY);
  const hurdle = meetsHurdle(facts, tonight, record);
  return { level: hurdle ? 3 : nights <= NEAR_NIGHTS ? 1 : 2, hardness: { nights, hurdle } };
}

function meetsHurdle(facts: QuizFacts, tonight: NightRecord, record: NightRecord): boolean {
  if (record.month.firstDate !== tonight.month.firstDate) return true;
  const [first, last] = record.date < tonight.date ? [record, tonight] : [tonight, record];
  const month = facts.almanac.nightsOfMonth(facts.today);
  return !runsOn(month.slice(first.nightOfMonth - 1, last.nightOfMonth));
}
