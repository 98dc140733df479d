import type { Almanac, NightRecord } from './almanac-types.ts';
import { requireCivilZone } from './civil.ts';
import type { CivilDate, InstantMs, PhaseName } from './rules.ts';

/** A night as other programs read it (`nights --json`). Times are local with offset, floored to the second. */
export interface NightRow {
  readonly date: CivilDate;
  readonly begins: string;
  readonly ends: string;
  readonly night: {
    readonly name: string;
    readonly number: number;
    readonly group: string;
    readonly repeat: boolean;
  };
  readonly nightOfMonth: number;
  readonly month: {
    readonly name: string;
    readonly number: number;
    readonly year: number;
    readonly firstDate: CivilDate;
    readonly length: number;
    readonly intercalary: boolean;
  };
  /** Days, two decimals. */
  readonly moonAgeDays: number;
  /** 0 to 1, three decimals. */
  readonly illuminatedFraction: number;
  readonly phase: { readonly name: PhaseName; readonly at: string } | null;
  readonly sunset: string | null;
  readonly sunrise: string | null;
  readonly moonrise: string | null;
  readonly moonset: string | null;
  readonly basis: 'computed' | 'observed';
}

function roundTo(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}

/** The row of a night; its keys stand in the order of the contract, so that it can be printed as it is. */
export function renderNightRow(almanac: Almanac, record: NightRecord): NightRow {
  const zone = requireCivilZone(almanac.place.timeZone);
  const local = (instantMs: InstantMs | null) => (instantMs === null ? null : zone.renderLocal(instantMs));
  const sky = almanac.skyOf(record);
  const { night, month } = record;
  return {
    date: record.date,
    begins: zone.renderLocal(record.beginsMs),
    ends: zone.renderLocal(record.endsMs),
    night: { name: night.name, number: night.number, group: night.group, repeat: record.repeat },
    nightOfMonth: record.nightOfMonth,
    month: {
      name: month.name,
      number: month.number,
      year: month.year,
      firstDate: month.firstDate,
      length: month.length,
      intercalary: month.intercalary,
    },
    moonAgeDays: roundTo(sky.moonAgeDays, 2),
    illuminatedFraction: roundTo(sky.illuminatedFraction, 3),
    phase: sky.phase && { name: sky.phase.name, at: zone.renderLocal(sky.phase.atMs) },
    sunset: local(sky.sunsetMs),
    sunrise: local(sky.sunriseMs),
    moonrise: local(sky.moonriseMs),
    moonset: local(sky.moonsetMs),
    basis: record.basis,
  };
}
