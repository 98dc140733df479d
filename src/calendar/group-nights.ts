import type { NightRecord } from './almanac-types.ts';

/** Nights in a row that belong to one group. */
export interface GroupedNights {
  readonly name: string;
  /** In order; never empty. */
  readonly nights: readonly NightRecord[];
}

/** Parts nights into groups, in order. A group that comes back after another one begins anew. */
export function groupNights(nights: readonly NightRecord[]): GroupedNights[] {
  const groups: { name: string; nights: NightRecord[] }[] = [];
  for (const record of nights) {
    const { group } = record.night;
    const last = groups.at(-1);
    if (last?.name === group && last.nights.at(-1)?.month.firstDate === record.month.firstDate)
      last.nights.push(record);
    else groups.push({ name: group, nights: [record] });
  }
  return groups;
}
