import type { CivilDate, InstantMs } from '../../calendar/rules.ts';
import { readWallClock } from '../../calendar/wall-clock.ts';
import { addDays } from '../../content/civil-date.ts';
import type { QuizFacts } from '../model.ts';
import { sayDate } from './say-date.ts';

const MIDDAY = '12:00';
const MIDNIGHT = '00:00';
const MS_PER_MINUTE = 60_000;

/**
 * A moment in words that fit after a verb, such as "on Friday 31 July at 6:05 pm", and that nobody can take for
 * another: midday and midnight by name, midnight with both its days, and the year where it is not the lesson's; of two
 * days in a row it stands with the second.
 * @param night the date in whose night it lies, where it is thought of as part of a night: the small hours of the date
 *   after are then said to be in the night from one to the other
 */
export function sayMoment(facts: QuizFacts, atMs: InstantMs, night?: CivilDate): string {
  const { almanac, labels } = facts;
  const { timeZone } = almanac.place;
  const { date, clock } = readWallClock(atMs, timeZone);
  const day = sayDate(facts, date);
  if (clock === MIDDAY) return labels.text('quiz-when-midday', { date: day });
  if (clock === MIDNIGHT) {
    // The day before is the one that the place had: some left a date out.
    const before = readWallClock(atMs - MS_PER_MINUTE, timeZone).date;
    return labels.text('quiz-when-midnight', { date: labels.date(before, 'day'), next: day });
  }
  const time = labels.clock(clock);
  if (night === undefined || date !== addDays(night, 1)) return labels.text('quiz-when', { date: day, time });
  return labels.text('quiz-when-night', { date: labels.date(night, 'day'), next: day, time });
}
