import { describe, expect, it } from 'vitest';
import { createAlmanac } from '../../src/calendar/almanac.ts';
import type { Almanac, NightRecord } from '../../src/calendar/almanac-types.ts';
import { parseCivilDate, renderCivilDate } from '../../src/calendar/day-number.ts';
import type { CloseCall, NightExplanation } from '../../src/calendar/explanation.ts';
import type { CalendarRules, CivilDate, Place } from '../../src/calendar/rules.ts';
import { findStar } from '../../src/content/star-catalogue.ts';
import { ESTUARY, groupsWith, samplePlace, sampleRules, utc } from './sample-rules.ts';

const estuary = createAlmanac(sampleRules(), ESTUARY);

const shift = (date: CivilDate, days: number) => renderCivilDate(parseCivilDate(date) + days);

/** A date well within each month of a range. */
function* listMonths(almanac: Almanac, from: CivilDate, to: CivilDate): Generator<CivilDate> {
  for (let date = from; date < to; ) {
    const { month } = almanac.nightOn(date);
    date = shift(month.firstDate, month.length + 5);
    yield date;
  }
}

type What = CloseCall['what'];

/** The calls of a kind, typed as such. */
function callsOf<Kind extends What>({ closeCalls }: NightExplanation, kind: Kind) {
  return closeCalls.filter((call): call is Extract<CloseCall, { what: Kind }> => call.what === kind);
}

describe('the beginning of a month', () => {
  it('is a close call all month when its phase is within an hour of the boundary, and only then', () => {
    let flagged = 0;
    for (const date of listMonths(estuary, '2020-01-10', '2032-01-01')) {
      const told = estuary.explain(date);
      const boundaries = estuary.nightOn(told.month.openingDate);
      const { atMs } = told.month.openingPhase;
      const minutes = Math.min(atMs - boundaries.beginsMs, boundaries.endsMs - atMs) / 60_000;
      const [call, ...others] = callsOf(told, 'opening-phase');
      expect(others).toEqual([]);
      expect(call !== undefined).toBe(minutes <= 60);
      if (!call) continue;
      flagged += 1;
      const { firstDate } = told.month;
      expect(call).toMatchObject({ opens: 'this-month', firstDate, phase: 'new-moon', atMs });
      expect(call.marginMinutes).toBeCloseTo(minutes, 0);
      // The month would begin a night sooner, where its phase is near the beginning of its night, or later.
      const isSooner = atMs - boundaries.beginsMs < boundaries.endsMs - atMs;
      const { night, nightOfMonth } = estuary.nightOn(shift(date, isSooner ? 1 : -1));
      expect(call.otherwise).toMatchObject({ night: night.name, nightOfMonth });
    }
    // An hour on both sides is a twelfth of the day: of some 148 months about 12.
    expect(flagged).toBeGreaterThan(4);
    expect(flagged).toBeLessThan(25);
  });

  it('is a close call of the night before, which says that it is the next month’s, and when that begins', () => {
    // The new Moon of 2026-11-09, 07:02 UTC, is 10 minutes before the sunset that ends the night of the 8th.
    const [call, ...others] = estuary.explain('2026-11-07').closeCalls;
    expect(others).toEqual([]);
    if (call?.what !== 'opening-phase') throw new Error('The phase of 2026-11-09 is a close call.');
    expect(call).toMatchObject({ opens: 'next-month', firstDate: '2026-11-08', phase: 'new-moon' });
    expect(Math.abs(call.atMs - utc('2026-11-09T07:02'))).toBeLessThan(2 * 60_000);
    expect(Math.abs(call.marginMinutes - 10)).toBeLessThan(3);
    const month = { name: 'Month 5', number: 5, year: 2026, length: 30 };
    expect(call.otherwise).toEqual({ night: 'Night 29', nightOfMonth: 29, month });
    expect(estuary.explain('2026-11-06').closeCalls).toEqual([]);
    expect(estuary.explain('2026-11-08').closeCalls).toMatchObject([
      { opens: 'this-month', otherwise: { night: 'Night 30', nightOfMonth: 30, month } },
    ]);
  });

  it('where it might come sooner, is one of the two nights before', () => {
    const dates = [...listMonths(estuary, '2020-01-10', '2032-01-01')];
    const date = dates.find((each) => {
      const { month } = estuary.explain(each);
      const sinceMinutes = (month.openingPhase.atMs - estuary.nightOn(month.openingDate).beginsMs) / 60_000;
      return sinceMinutes <= 60;
    });
    const { firstDate } = estuary.nightOn(date ?? '').month;
    const length = estuary.nightOn(shift(firstDate, -1)).month.length - 1;
    const callsBefore = [1, 2, 3].map((days) => estuary.explain(shift(firstDate, -days)).closeCalls);
    expect(callsBefore).toMatchObject([
      [{ opens: 'next-month', otherwise: { nightOfMonth: 1, night: 'Night 1' } }],
      // It would be the last of its month.
      [{ opens: 'next-month', otherwise: { nightOfMonth: length, month: { length } } }],
      [],
    ]);
  });

  it('is a close call of the nights before whose names are fitted to the month’s length', () => {
    const fitted = createAlmanac(sampleRules({ groups: groupsWith({ 20: { flexible: true } }) }), ESTUARY);
    // Night 20 is left out of 29 nights; of 30 it is not.
    expect(fitted.explain('2026-10-28').closeCalls).toEqual([]);
    for (const date of ['2026-10-29', '2026-11-02', '2026-11-07']) {
      const other = fitted.nightOn(date).night.number - 1;
      expect(fitted.explain(date).closeCalls).toMatchObject([
        { what: 'opening-phase', opens: 'next-month', otherwise: { night: `N${other}`, month: { length: 30 } } },
      ]);
    }
  });

  it('is a close call when a crescent is near the limit of its class', () => {
    const almanac = createAlmanac(sampleRules({ monthBegins: { at: 'first-crescent', offset: 0 } }), ESTUARY);
    let flagged = 0;
    for (const date of listMonths(almanac, '2020-01-10', '2032-01-01')) {
      const told = almanac.explain(date);
      const { crescents, firstDate, computedFirstDate } = told.month;
      const last = crescents.at(-1);
      expect(last?.seen).toBe(true);
      expect(crescents.slice(0, -1).some(({ seen }) => seen)).toBe(false);
      expect(last?.date).toBe(computedFirstDate);
      const near = crescents.filter(({ q }) => q !== null && Math.abs(q + 0.014) <= 0.05);
      const calls = callsOf(told, 'crescent');
      expect(calls).toMatchObject(
        near.map(({ date: on, q, bestMs }) => ({
          ...{ opens: 'this-month', firstDate, date: on, atMs: bestMs, q, marginQ: (q ?? 0) + 0.014 },
          otherwise: { nightOfMonth: told.nightOfMonth + (q !== null && q > -0.014 ? -1 : 1) },
        })),
      );
      flagged += near.length;
      if (calls.length === 0) continue;
      const before = callsOf(almanac.explain(shift(firstDate, -1)), 'crescent');
      expect(before).toMatchObject([{ opens: 'next-month', firstDate, date: near[0]?.date }]);
    }
    expect(flagged).toBeGreaterThan(2);
    expect(almanac.explain('2026-02-25').month.visibility).toBe('B');
  });

  it('is none where a record gave it', () => {
    const observations = [{ date: '2026-11-08', night: 'Night 1' }];
    const seen = createAlmanac(sampleRules({ observations }), ESTUARY);
    for (const date of ['2026-11-07', '2026-11-08', '2026-11-20']) {
      expect(estuary.explain(date).closeCall).toBe(true);
      expect(seen.explain(date).closeCall).toBe(false);
    }
  });
});

describe('an anchor', () => {
  const groups = groupsWith({ 10: { flexible: true }, 16: { anchor: 'full-moon' }, 24: { flexible: true } });
  const almanac = createAlmanac(sampleRules({ groups }), ESTUARY);

  /** The first month from 2026 on whose full Moon is near a boundary, and neither opening is. */
  function findMonth(): readonly NightRecord[] {
    for (const date of listMonths(almanac, '2026-01-10', '2036-01-01')) {
      const nights = almanac.nightsOfMonth(date);
      const margin = almanac.explain(date).name.anchors[0]?.marginMinutes ?? 999;
      const ends = [nights[0], nights.at(-1)].flatMap((night) => (night ? almanac.explain(night.date).closeCalls : []));
      if (margin <= 60 && !ends.some(({ what }) => what === 'opening-phase')) return nights;
    }
    throw new Error('There is a month with a close full Moon.');
  }

  it('is a close call of the nights that would have another name, and of no others', () => {
    const month = findMonth();
    const flagged = month.filter(({ date }) => callsOf(almanac.explain(date), 'anchor').length > 0);
    for (const { date, night } of flagged) {
      const [call] = callsOf(almanac.explain(date), 'anchor');
      expect(call).toMatchObject({ night: 'N16', phase: 'full-moon' });
      expect(call?.otherwise?.night).not.toBe(night.name);
    }
    // From the flexible name before the anchor, which is left out or said twice, to the one after it.
    const numbers = flagged.map(({ night }) => night.number);
    expect(Math.min(...numbers)).toBeGreaterThanOrEqual(10);
    expect(Math.max(...numbers)).toBeLessThanOrEqual(24);
    expect(numbers).toContain(16);
    expect(flagged.length).toBeGreaterThan(5);
  });

  it('is none after an observation of its night', () => {
    const close = findMonth().find(({ date }) => almanac.explain(date).closeCall);
    const observations = [{ date: close?.date ?? '', night: close?.night.name ?? '' }];
    const seen = createAlmanac(sampleRules({ groups, observations }), ESTUARY).explain(close?.date ?? '');
    expect(seen.closeCalls).toEqual([]);
  });

  it('is said once where its phase opens the month', () => {
    const tied = createAlmanac(sampleRules({ groups: groupsWith({ 1: { anchor: 'new-moon' } }) }), ESTUARY);
    expect(tied.explain('2026-11-08').closeCalls).toMatchObject([{ what: 'opening-phase' }]);
  });
});

const YEAR_CALLS = ['year-phase', 'year-marker', 'rising'] as const;

const yearCallsOf = (told: NightExplanation) => YEAR_CALLS.flatMap((what) => callsOf(told, what));

describe('the beginning of a year', () => {
  const byDate = { phase: 'new-moon', onOrAfter: { kind: 'date', monthDay: '06-18' } } as const;
  const dated = createAlmanac(sampleRules({ dayBegins: 'midnight', yearBegins: byDate }), samplePlace(0, 0, 'UTC'));
  /** Years whose phase is within an hour of the date. */
  const years = Array.from({ length: 400 }, (_, index) => 1800 + index).filter((year) =>
    yearCallsOf(dated.explain(`${year}-11-01`)).some((call) => call.year === year),
  );

  it('by a date is a close call when the phase is within an hour of the date’s beginning', () => {
    expect(years.length).toBeGreaterThan(0);
    for (let year = 1800; year < 2200; year += 1) {
      const dateMs = utc(`${year}-06-18T00:00`);
      const { phaseAtMs } = dated.explain(`${year}-11-01`).year;
      const calls = yearCallsOf(dated.explain(`${year}-11-01`)).filter((call) => call.year === year);
      if (phaseAtMs - dateMs < 60 * 60_000) {
        const call = { what: 'year-phase', year, markerDate: `${year}-06-18`, phase: 'new-moon', atMs: phaseAtMs };
        expect(calls).toMatchObject([call]);
      } else if (phaseAtMs - dateMs < 29 * 86_400_000) expect(calls).toEqual([]);
    }
  });

  it('is one for the nights whose month hangs on it, and says which month it would be', () => {
    for (const year of years) {
      const months = new Set<string>();
      const flagged = [...dated.nights(`${year}-04-01`, `${year + 1}-10-01`)].filter(({ date, month }) => {
        const [call] = yearCallsOf(dated.explain(date)).filter((each) => each.year === year);
        if (!call) return false;
        const { name, number, year: ofYear } = call.otherwise?.month ?? {};
        expect([name, number, ofYear]).not.toEqual([month.name, month.number, month.year]);
        months.add(month.firstDate);
        return true;
      });
      // A year of twelve or thirteen months and the month before it: all of them, and each to its last night.
      expect(months.size).toBeGreaterThanOrEqual(12);
      expect(months.size).toBeLessThanOrEqual(14);
      expect(flagged.length).toBeGreaterThan(350);
    }
  });

  it('is none for the months before the place of the thirteenth, where only the next year’s is in doubt', () => {
    const thirteenthMonth = { name: 'Between', after: 6 };
    const rules = sampleRules({ dayBegins: 'midnight', yearBegins: byDate, thirteenthMonth });
    const almanac = createAlmanac(rules, samplePlace(0, 0, 'UTC'));
    for (const year of years) {
      for (const date of listMonths(almanac, `${year - 1}-07-01`, `${year}-05-15`)) {
        const told = almanac.explain(date);
        if (told.month.year !== year - 1) continue;
        const isFlagged = yearCallsOf(told).some((call) => call.year === year);
        expect(isFlagged).toBe(told.month.number > 6);
      }
    }
  });

  it('by a solstice is a close call when that or the phase is within an hour of the boundary that tells', () => {
    const almanac = createAlmanac(
      sampleRules({ yearBegins: { phase: 'last-quarter', onOrAfter: { kind: 'solstice', month: 'june' } } }),
      ESTUARY,
    );
    let [flagged, onTheNight] = [0, 0];
    for (let year = 1801; year < 2200; year += 1) {
      const told = almanac.explain(`${year}-11-01`);
      const { markerAtMs, phaseAtMs, markerDate } = told.year;
      const { beginsMs, endsMs } = almanac.nightOn(markerDate);
      if (phaseAtMs < endsMs) onTheNight += 1;
      const isNear = (oneMs: number, otherMs: number) => Math.abs(oneMs - otherMs) <= 3_600_000;
      const calls = yearCallsOf(told).filter((call) => call.year === year);
      for (const call of calls) {
        if (call.what === 'year-phase') expect(isNear(call.atMs, beginsMs)).toBe(true);
        else expect([beginsMs, endsMs].some((each) => isNear(markerAtMs ?? 0, each))).toBe(true);
        expect(Math.abs(call.atMs - (markerAtMs ?? 0))).toBeLessThan(2 * 86_400_000);
      }
      if (isNear(phaseAtMs, beginsMs)) expect(calls).not.toEqual([]);
      flagged += Math.min(calls.length, 1);
    }
    // Two hours of a lunation for the phase, a twelfth of a night of a lunation for the solstice: of 399 years 2 or 3.
    expect(onTheNight).toBeGreaterThan(5);
    expect(flagged).toBeGreaterThan(0);
    expect(flagged).toBeLessThan(7);
  });

  it('by a star comes with how high it stood', () => {
    const almanac = createAlmanac(sampleRules({ yearBegins: ALCYONE }), ESTUARY);
    let flagged = 0;
    for (let year = 1950; year < 2050; year += 1) {
      const told = almanac.explain(`${year}-11-01`);
      expect(told.year.markerDate).toMatch(/-06-(1[6-9]|2\d)$/);
      // The star's morning ends the night that began the evening before.
      expect(almanac.nightAt(told.year.markerAtMs ?? 0).date).toBe(told.year.markerDate);
      for (const call of callsOf(told, 'rising')) {
        flagged += 1;
        expect(call).toMatchObject({ star: 'Alcyone', phase: 'last-quarter' });
        expect(call.marginDegrees).toBeLessThan(0.7);
        const nights = parseCivilDate(almanac.nightAt(call.atMs).date) - parseCivilDate(call.markerDate);
        expect([0, -1]).toContain(nights);
      }
    }
    // Two nights of a lunation: of 100 years about 7.
    expect(flagged).toBeGreaterThan(0);
    expect(flagged).toBeLessThan(20);
  });
});

const ALCYONE: CalendarRules['yearBegins'] = (() => {
  const star = findStar('Alcyone');
  if (!star) throw new Error('Alcyone is in the catalogue.');
  const onOrAfter = { kind: 'rising', star, starAltitudeDegrees: 5, sunAltitudeDegrees: -14 } as const;
  return { phase: 'last-quarter', onOrAfter };
})();

/*
 * Where a night turns. Two places are taken that differ in the night of a date; the line between them is halved until
 * they lie less than a metre apart and still differ. There the least change of the sky decides, so each of the two must
 * call it close, and tell that the night would otherwise be the one of the other place.
 */
describe('two places a metre apart that differ', () => {
  const ANCHORED = groupsWith({
    8: { anchor: 'first-quarter' },
    11: { flexible: true },
    16: { anchor: 'full-moon' },
    19: { flexible: true },
    23: { anchor: 'last-quarter' },
  });
  const DAYS = Array.from({ length: 2500 }, (_, index) => shift('2020-01-01', index));
  const DECADES = Array.from({ length: 3650 }, (_, index) => shift('1950-01-01', 10 * index));
  const YEARS = Array.from({ length: 399 }, (_, index) => `${1801 + index}-11-01`);
  const FAR_APART = [samplePlace(-35, -60, 'UTC'), samplePlace(-35, 60, 'UTC')] as const;
  const turn = (axis: 'latitudeDegrees' | 'longitudeDegrees', degrees: number, place: Place = ESTUARY) =>
    [place, { ...place, [axis]: place[axis] + degrees }] as const;
  const NORTHERN = samplePlace(48, 2, 'Europe/Paris');
  const CRESCENT = { monthBegins: { at: 'first-crescent', offset: 0, visibility: 'B' } } as const;
  const FULL_MOON = { dayBegins: 'sunrise', monthBegins: { at: 'full-moon', offset: 1 } } as const;

  const CASES: readonly [What, string, Partial<CalendarRules>, readonly [Place, Place], readonly CivilDate[]][] = [
    ['opening-phase', 'conjunction at sunset, going east', {}, turn('longitudeDegrees', 2), DECADES],
    ['opening-phase', 'conjunction at sunset, going north', {}, turn('latitudeDegrees', 3), DECADES],
    ['opening-phase', 'full Moon at sunrise, going east', FULL_MOON, turn('longitudeDegrees', 3, NORTHERN), DECADES],
    ['opening-phase', 'full Moon at sunrise, going north', FULL_MOON, turn('latitudeDegrees', 3, NORTHERN), DECADES],
    ['opening-phase', 'names fitted to the length', { groups: ANCHORED }, turn('longitudeDegrees', 2), DECADES],
    ['crescent', 'a crescent, going west', CRESCENT, turn('longitudeDegrees', -4, NORTHERN), DAYS],
    ['crescent', 'a crescent, going south', CRESCENT, turn('latitudeDegrees', -2), DAYS],
    ['anchor', 'an anchor, going east', { groups: ANCHORED }, turn('longitudeDegrees', 2), DAYS],
    ['anchor', 'an anchor, going north', { groups: ANCHORED }, turn('latitudeDegrees', 3), DAYS],
    ['anchor', 'an anchor of a crescent’s month', { ...CRESCENT, groups: ANCHORED }, turn('latitudeDegrees', 3), DAYS],
    ['rising', 'a star, going north', { yearBegins: ALCYONE }, turn('latitudeDegrees', 1), YEARS],
    ['rising', 'a star, going west', { yearBegins: ALCYONE }, turn('longitudeDegrees', -25), YEARS],
    ['year-phase', 'a year’s phase at sunset', {}, FAR_APART, YEARS],
    ['year-marker', 'a solstice at sunset', {}, FAR_APART, YEARS],
  ];

  it.each(CASES)('call it close: %s, by %s', (what, _, changes, [from, to], dates) => {
    const rules = sampleRules(changes);
    const { places, date } = findFlip(rules, from, to, dates, what);
    expect(measureMetres(...places)).toBeLessThan(1);
    const [here, there] = [createAlmanac(rules, places[0]), createAlmanac(rules, places[1])];
    // A beginning of a month moves all its nights, one of a year all its months.
    const least = { 'opening-phase': 29, crescent: 29, anchor: 1, 'year-phase': 350, 'year-marker': 350, rising: 350 };
    expect(expectBothClose(here, there, date, what)).toBeGreaterThanOrEqual(least[what]);
  });

  it('call it close where the Sun rises at the one and not at the other', () => {
    const [from, to] = turn('latitudeDegrees', 1, samplePlace(67, 19, 'Europe/Oslo'));
    // The conjunction of 1965-12-22, 21:03 UTC, comes ten hours after that day's noon and two before its midnight.
    const { places, date } = findFlip(sampleRules(), from, to, ['1965-12-30'], 'opening-phase');
    const [here, there] = [createAlmanac(sampleRules(), places[0]), createAlmanac(sampleRules(), places[1])];
    const opening = here.explain(date).month.openingDate;
    expect([here, there].map((each) => each.nightOn(opening).beginsWith)).toEqual(['sunset', 'midnight']);
    expect(callsOf(here.explain(date), 'opening-phase')).toMatchObject([{ isUnsure: true }]);
    expect(expectBothClose(here, there, date, 'opening-phase')).toBeGreaterThanOrEqual(29);
  });
});

/** What a night is called and where it stands. */
const nameNight = ({ night, nightOfMonth, month }: NightRecord) =>
  JSON.stringify([night.name, nightOfMonth, month.name, month.number, month.year]);

interface Flip {
  readonly places: readonly [Place, Place];
  readonly date: CivilDate;
}

/** Two places on the way from one to another, within a metre, that differ on a date by a call of a kind. */
function findFlip(rules: CalendarRules, from: Place, to: Place, dates: readonly CivilDate[], what: What): Flip {
  const [first, last] = [createAlmanac(rules, from), createAlmanac(rules, to)];
  for (const date of dates) {
    const name = nameNight(first.nightOn(date));
    if (name === nameNight(last.nightOn(date))) continue;
    let [near, far] = [from, to];
    while (measureMetres(near, far) >= 1) {
      const middle = {
        ...near,
        latitudeDegrees: (near.latitudeDegrees + far.latitudeDegrees) / 2,
        longitudeDegrees: (near.longitudeDegrees + far.longitudeDegrees) / 2,
      };
      if (nameNight(createAlmanac(rules, middle).nightOn(date)) === name) near = middle;
      else far = middle;
    }
    const kinds = createAlmanac(rules, near)
      .explain(date)
      .closeCalls.map((call) => call.what);
    if (kinds.includes(what)) return { places: [near, far], date };
    // Whatever turned it must have been told, of this kind or another.
    expect(kinds, date).not.toEqual([]);
  }
  throw new Error(`No night turns by ${what} between these places.`);
}

/** On a sphere as large as the Earth; good for places that are near to each other. */
function measureMetres(one: Place, other: Place): number {
  const metresPerDegree = 111_320;
  const north = one.latitudeDegrees - other.latitudeDegrees;
  const east = (one.longitudeDegrees - other.longitudeDegrees) * Math.cos((one.latitudeDegrees * Math.PI) / 180);
  return Math.hypot(north, east) * metresPerDegree;
}

/** Checks every date of a year about a date; gives how many differ. */
function expectBothClose(here: Almanac, there: Almanac, about: CivilDate, what: What): number {
  let differing = 0;
  for (const record of here.nights(shift(about, -400), shift(about, 400))) {
    const other = there.nightOn(record.date);
    const [told, toldThere] = [here.explain(record.date), there.explain(record.date)];
    expect(told.closeCall, record.date).toBe(toldThere.closeCall);
    if (nameNight(record) === nameNight(other)) continue;
    differing += 1;
    expect(callsOf(told, what).map(nameOtherwise), record.date).toContain(nameNight(other));
    expect(callsOf(toldThere, what).map(nameOtherwise), record.date).toContain(nameNight(record));
  }
  return differing;
}

function nameOtherwise({ otherwise }: CloseCall): string {
  if (otherwise === null) return '';
  const { night, nightOfMonth, month } = otherwise;
  return JSON.stringify([night, nightOfMonth, month.name, month.number, month.year]);
}
