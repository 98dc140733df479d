import type { Almanac, MonthRecord, NightRecord } from '../../calendar/almanac-types.ts';
import { foldName, foldText } from '../fold-text.ts';
import { findNightAfter, findNightBefore } from './neighbours.ts';

/** A month with all that questions want to know of it. */
export interface MonthLook {
  readonly nights: readonly NightRecord[];
  /** How many nights of the month bear each name, folded. */
  readonly times: ReadonlyMap<string, number>;
}

const looks = new WeakMap<MonthRecord, MonthLook>();

/** The month of a night; worked out once a month, as every kind of question looks at it. */
export function lookAtMonth(almanac: Almanac, record: NightRecord): MonthLook {
  const known = looks.get(record.month);
  if (known !== undefined) return known;
  const nights = almanac.nightsOfMonth(record.date);
  const look = { nights, times: countNames(nights) };
  looks.set(record.month, look);
  return look;
}

/** Whether no other night of its month has the name of this one, as names are folded. */
export function isSaidOnce(almanac: Almanac, record: NightRecord): boolean {
  return lookAtMonth(almanac, record).times.get(foldName(record.night)) === 1;
}

/** The last night of the month before, or nothing where that cannot be told. */
export function findLastBefore(almanac: Almanac, record: NightRecord): NightRecord | undefined {
  const [first] = lookAtMonth(almanac, record).nights;
  return first && findNightBefore(almanac, first);
}

/** The first night of the month after, or nothing where that cannot be told. */
export function findFirstAfter(almanac: Almanac, record: NightRecord): NightRecord | undefined {
  const last = lookAtMonth(almanac, record).nights.at(-1);
  return last && findNightAfter(almanac, last);
}

/** Whether the months beside that of a night have other names: only then does the name say which month is meant. */
export function isMonthAlone(almanac: Almanac, record: NightRecord): boolean {
  const name = foldText(record.month.name);
  const beside = [findLastBefore(almanac, record), findFirstAfter(almanac, record)];
  return beside.every((other) => other === undefined || foldText(other.month.name) !== name);
}

function countNames(nights: readonly NightRecord[]): ReadonlyMap<string, number> {
  const times = new Map<string, number>();
  for (const { night } of nights) times.set(foldName(night), (times.get(foldName(night)) ?? 0) + 1);
  return times;
}
