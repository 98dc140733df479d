import type { Almanac, MonthRecord, NightRecord } from '../calendar/almanac-types.ts';
import type { CivilDate } from '../calendar/rules.ts';
import { addDays, clampDate, FIRST_DATE, LAST_DATE } from '../content/civil-date.ts';

/**
 * A year begins with the month whose phase falls on or after a date of the civil year of its number: that month may
 * begin a month before, and an offset or an observation moves it by some nights more.
 */
const DAYS_BEFORE_YEAR = 62;

/** A month with the dates of its first and last nights. */
export interface DatedMonth {
  readonly month: MonthRecord;
  readonly from: CivilDate;
  readonly to: CivilDate;
}

/**
 * The months of one of the calendar's years, in order.
 * @param year The number of the year: the civil year of its marker.
 * @returns Nothing where the year does not lie whole within the dates that the kit answers for.
 */
export function findMonthsOfYear(almanac: Almanac, year: number): readonly DatedMonth[] | undefined {
  const months: DatedMonth[] = [];
  const earliest = addDays(`${String(year).padStart(4, '0')}-01-01`, -DAYS_BEFORE_YEAR);
  let next = findFirstNight(almanac, clampDate(earliest));
  while (next !== undefined && next.month.year <= year) {
    const { month } = next;
    next = findNextMonth(almanac, month);
    if (next === undefined) return undefined;
    if (month.year === year) months.push({ month, from: month.firstDate, to: addDays(next.date, -1) });
  }
  const first = months[0];
  return first?.month.number === 1 && first.from >= FIRST_DATE ? months : undefined;
}

/** The first night on a date or after it; nothing after the last date. A place may have left out a date. */
function findFirstNight(almanac: Almanac, date: CivilDate): NightRecord | undefined {
  if (date > LAST_DATE) return undefined;
  const [night] = almanac.nights(date, clampDate(addDays(date, 2)));
  return night;
}

function findNextMonth(almanac: Almanac, month: MonthRecord): NightRecord | undefined {
  let date = addDays(month.firstDate, month.length);
  let night = findFirstNight(almanac, date);
  // Over a date that was left out the same month goes on for a date more.
  while (night?.month.firstDate === month.firstDate) {
    date = addDays(night.date, 1);
    night = findFirstNight(almanac, date);
  }
  return night;
}
