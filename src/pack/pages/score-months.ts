import { type GroupedNights, groupNights } from '../../calendar/group-nights.ts';
import type { CivilDate } from '../../calendar/rules.ts';
import type { ResolvedWeek } from '../../lesson/model.ts';

/** A month that the week lies in, wholly or in part. */
export interface ScoreMonth {
  readonly name: string;
  readonly groups: readonly GroupedNights[];
  readonly firstDate: CivilDate;
  readonly lastDate: CivilDate;
  /** Dates of the lessons that lie in this month, in order. */
  readonly taught: readonly CivilDate[];
}

/** The months of the week's lessons, in order. A week without lessons has the month of the Monday it begins on. */
export function listScoreMonths(week: ResolvedWeek): ScoreMonth[] {
  const dates = week.lessons.map((lesson) => lesson.tonight.date);
  const months = new Map<CivilDate, CivilDate[]>();
  for (const date of dates.length === 0 ? [week.plan.begins] : dates) {
    const { firstDate } = week.almanac.nightOn(date).month;
    const taught = months.get(firstDate);
    if (taught === undefined) months.set(firstDate, [date]);
    else if (taught.at(-1) !== date) taught.push(date);
  }
  return Array.from(months.values(), (taught) => describeMonth(week, taught));
}

function describeMonth({ almanac }: ResolvedWeek, taught: readonly CivilDate[]): ScoreMonth {
  const nights = almanac.nightsOfMonth(taught[0] ?? '');
  const first = nights[0];
  const last = nights.at(-1);
  if (first === undefined || last === undefined) throw new Error('A month without nights.');
  return { name: first.month.name, groups: groupNights(nights), firstDate: first.date, lastDate: last.date, taught };
}
