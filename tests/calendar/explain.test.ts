import { describe, expect, it } from 'vitest';
import { createAlmanac } from '../../src/calendar/almanac.ts';
import { MS_PER_DAY, parseCivilDate, renderCivilDate } from '../../src/calendar/day-number.ts';
import type { CalendarRules } from '../../src/calendar/rules.ts';
import { findStar } from '../../src/content/star-catalogue.ts';
import { ESTUARY, samplePlace, sampleRules, utc } from './sample-rules.ts';

const estuary = createAlmanac(sampleRules(), ESTUARY);

function groupsWith(changes: Readonly<Record<number, object>>): CalendarRules['groups'] {
  const nights = Array.from({ length: 30 }, (_, index) => ({ name: `N${index + 1}`, ...changes[index + 1] }));
  return [{ name: 'All', nights }];
}

describe('an easy date', () => {
  it('is told from the conjunction to the name, with instants', () => {
    const told = estuary.explain('2026-07-29');
    const record = estuary.nightOn('2026-07-29');
    const { date, beginsMs, endsMs, beginsWith, night, repeat, nightOfMonth } = record;
    expect(told).toMatchObject({
      date,
      beginsMs,
      endsMs,
      beginsWith,
      night,
      repeat,
      nightOfMonth,
      dayBegins: 'sunset',
    });
    // New Moon of 2026-07-14, 09:43 universal time (almanac offices, from memory): after sunset of the 14th at the estuary.
    expect(Math.abs(told.month.openingPhase.atMs - utc('2026-07-14T09:43'))).toBeLessThan(2 * 60_000);
    expect(told.month).toMatchObject({
      name: 'Frost Month',
      firstDate: '2026-07-14',
      computedFirstDate: '2026-07-14',
      basis: { kind: 'rule' },
      openingPhase: { name: 'new-moon' },
      openingDate: '2026-07-14',
      crescents: [],
      visibility: null,
    });
    const margin = Math.abs(told.month.openingPhase.atMs - told.month.openingBoundaryMs) / 60_000;
    expect(told.month.openingMarginMinutes).toBeCloseTo(margin, 1);
    expect(told.month.openingBoundaryMs).toBe(estuary.nightOn('2026-07-14').beginsMs);
    expect(told.year).toMatchObject({ phase: 'full-moon', markerDate: '2026-06-21' });
    expect(Math.abs((told.year.markerAtMs ?? 0) - utc('2026-06-21T08:24'))).toBeLessThan(2 * 60_000);
    expect(Math.abs(told.year.phaseAtMs - utc('2026-06-29T23:57'))).toBeLessThan(2 * 60_000);
    expect(told.name).toEqual({ by: 'counting', observation: null, anchors: [] });
    expect(told.phase).toEqual(estuary.skyOf(record).phase);
    expect([told.closeCall, told.closeCalls]).toEqual([false, []]);
  });

  it('is refused where nightOn refuses it', () => {
    expect(() => estuary.explain('2026-02-30')).toThrow('Unexpected date `2026-02-30`');
    expect(() => estuary.explain('2201-01-01')).toThrow(RangeError);
  });
});

describe('close calls', () => {
  it('are flagged when the opening phase is within an hour of the boundary, and only then', () => {
    let flagged = 0;
    for (let date = '2020-01-10'; date < '2032-01-01'; ) {
      const { month, closeCalls } = estuary.explain(date);
      const boundaries = estuary.nightOn(month.openingDate);
      const at = month.openingPhase.atMs;
      const minutes = Math.min(at - boundaries.beginsMs, boundaries.endsMs - at) / 60_000;
      const call = closeCalls.find(({ what }) => what === 'opening-phase');
      expect(call !== undefined).toBe(minutes <= 60);
      if (call) flagged += 1;
      date = renderCivilDate(parseCivilDate(month.firstDate) + month.length + 5);
    }
    // An hour on both sides is a twelfth of the day: of some 148 months about 12.
    expect(flagged).toBeGreaterThan(4);
    expect(flagged).toBeLessThan(25);
  });

  it('of the next month are flagged on the last night', () => {
    for (let date = '2020-01-10'; ; ) {
      const { month } = estuary.nightOn(date);
      const next = renderCivilDate(parseCivilDate(month.firstDate) + month.length);
      const isClose = (on: string) => estuary.explain(on).closeCalls.some(({ what }) => what === 'opening-phase');
      date = renderCivilDate(parseCivilDate(next) + 5);
      if (!isClose(date) || isClose(month.firstDate)) continue;
      expect(isClose(renderCivilDate(parseCivilDate(next) - 1))).toBe(true);
      expect(isClose(renderCivilDate(parseCivilDate(next) - 2))).toBe(false);
      break;
    }
  });

  it('are flagged when a crescent is near the limit of its class', () => {
    const almanac = createAlmanac(sampleRules({ monthBegins: { at: 'first-crescent', offset: 0 } }), ESTUARY);
    let flagged = 0;
    for (let date = '2020-01-10'; date < '2032-01-01'; ) {
      const { month, closeCalls } = almanac.explain(date);
      const last = month.crescents.at(-1);
      expect(last?.seen).toBe(true);
      expect(month.crescents.slice(0, -1).some(({ seen }) => seen)).toBe(false);
      expect(last?.date).toBe(month.computedFirstDate);
      const near = month.crescents.filter(({ q }) => q !== null && Math.abs(q + 0.014) <= 0.05);
      expect(closeCalls.filter(({ what }) => what === 'crescent')).toEqual(
        near.map(({ date: on, q }) => ({ what: 'crescent', date: on, q, marginQ: (q ?? 0) + 0.014 })),
      );
      flagged += near.length;
      date = renderCivilDate(parseCivilDate(month.firstDate) + month.length + 5);
    }
    expect(flagged).toBeGreaterThan(2);
    expect(almanac.explain('2026-02-25').month.visibility).toBe('B');
  });

  it('are flagged when an anchor’s phase is near the boundary, but not after an observation', () => {
    const groups = groupsWith({ 16: { anchor: 'full-moon' } });
    const almanac = createAlmanac(sampleRules({ groups }), ESTUARY);
    for (let date = '2026-01-25'; ; ) {
      const told = almanac.explain(date);
      const [anchor] = told.name.anchors;
      const call = told.closeCalls.find(({ what }) => what === 'anchor');
      expect(call !== undefined).toBe((anchor?.marginMinutes ?? 999) <= 60);
      date = renderCivilDate(parseCivilDate(told.month.firstDate) + told.month.length + 5);
      if (!call) continue;
      const observations = [{ date: told.date, night: told.night.name }];
      const seen = createAlmanac(sampleRules({ groups, observations }), ESTUARY).explain(told.date);
      expect(seen.closeCalls.some(({ what }) => what === 'anchor')).toBe(false);
      break;
    }
  });

  it('are flagged all year when the phase falls on the marker’s night or the one before', () => {
    let flagged = 0;
    for (let year = 1990; year < 2040; year += 1) {
      const told = estuary.explain(`${year}-11-01`);
      const marker = parseCivilDate(told.year.markerDate);
      const phaseDay = parseCivilDate(estuary.nightAt(told.year.phaseAtMs).date);
      const before = parseCivilDate(estuary.nightAt(told.year.phaseAtMs - 29.53 * MS_PER_DAY).date);
      const call = told.closeCalls.find(({ what }) => what === 'year-marker');
      if (phaseDay === marker) expect(call).toEqual({ what: 'year-marker', marginNights: 0 });
      if (phaseDay - marker > 0 && marker - before > 2) expect(call).toBeUndefined();
      if (call) flagged += 1;
    }
    // Two nights of twenty-nine and a half: of 50 years about 3.
    expect(flagged).toBeGreaterThan(0);
    expect(flagged).toBeLessThan(10);
  });

  it('of a date as marker are flagged only when the phase is within an hour of its night’s beginning', () => {
    const onOrAfter = { kind: 'date', monthDay: '06-18' } as const;
    const rules = sampleRules({ dayBegins: 'midnight', yearBegins: { phase: 'new-moon', onOrAfter } });
    const almanac = createAlmanac(rules, samplePlace(0, 0, 'UTC'));
    for (let year = 1850; year < 2150; year += 1) {
      const { year: found, closeCalls } = almanac.explain(`${year}-11-01`);
      const calls = closeCalls.filter(({ what }) => what === 'year-marker');
      if (Math.abs(found.phaseAtMs - utc(`${year}-06-18T00:00`)) < 60 * 60_000) expect(calls).toHaveLength(1);
      else if (found.phaseAtMs < utc(`${year}-07-16T12:00`)) expect(calls).toEqual([]);
    }
  });

  it('of a star come with how high it stood', () => {
    const star = findStar('Alcyone');
    if (!star) throw new Error('Alcyone is in the catalogue.');
    const onOrAfter = { kind: 'rising', star, starAltitudeDegrees: 5, sunAltitudeDegrees: -14 } as const;
    const almanac = createAlmanac(sampleRules({ yearBegins: { phase: 'last-quarter', onOrAfter } }), ESTUARY);
    let flagged = 0;
    for (let year = 1950; year < 2050; year += 1) {
      const told = almanac.explain(`${year}-11-01`);
      expect(told.year.markerDate).toMatch(/-06-(1[6-9]|2\d)$/);
      // The star's morning ends the night that began the evening before.
      expect(almanac.nightAt(told.year.markerAtMs ?? 0).date).toBe(told.year.markerDate);
      const whats = told.closeCalls.filter(({ what }) => what === 'year-marker' || what === 'rising');
      expect([0, 2]).toContain(whats.length);
      const rising = told.closeCalls.find(({ what }) => what === 'rising');
      if (rising?.what === 'rising') {
        flagged += 1;
        expect(rising.marginDegrees).toBeLessThan(0.7);
      }
    }
    expect(flagged).toBeGreaterThan(0);
  });
});

describe('what was seen', () => {
  const observation = { date: '2026-07-15', night: 'Night 1', by: 'seen from the jetty' };
  const almanac = createAlmanac(sampleRules({ observations: [observation] }), ESTUARY);

  it('is told as what opened the month, beside the computed date, and is no close call', () => {
    const told = almanac.explain('2026-07-20');
    expect(told.month).toMatchObject({
      firstDate: '2026-07-15',
      computedFirstDate: '2026-07-14',
      basis: { kind: 'observation', observation },
    });
    expect(told.closeCalls.some(({ what }) => what === 'opening-phase')).toBe(false);
  });

  it('is told as what gave the name, from its date on', () => {
    const seen = { date: '2026-07-20', night: 'Night 9' };
    const other = createAlmanac(sampleRules({ observations: [seen] }), ESTUARY);
    expect(other.explain('2026-07-19').name).toMatchObject({ by: 'counting', observation: null });
    expect(other.explain('2026-07-25').name).toMatchObject({ by: 'observation', observation: seen });
    expect(other.explain('2026-07-25').month.basis).toEqual({ kind: 'rule' });
  });

  it('is told of announced months', () => {
    const other = createAlmanac(sampleRules({ announcedMonths: ['2026-07-15'] }), ESTUARY);
    expect(other.explain('2026-07-20').month.basis).toEqual({ kind: 'announced', date: '2026-07-15' });
  });
});

describe('anchors', () => {
  it('are told with their phase, and decide the names they move', () => {
    const groups = groupsWith({ 14: { flexible: true }, 16: { anchor: 'full-moon' } });
    const almanac = createAlmanac(sampleRules({ groups }), ESTUARY);
    for (const record of almanac.nights('2026-01-01', '2026-12-31')) {
      const { name, night, nightOfMonth } = almanac.explain(record.date);
      const isCounted = night.number === Math.min(nightOfMonth, 30);
      expect(name.by).toBe(isCounted && night.number !== 16 ? 'counting' : 'anchor');
      for (const anchor of name.anchors) {
        expect(almanac.nightOn(anchor.date).night.name).toBe(anchor.night);
        expect(almanac.nightAt(anchor.atMs).date).toBe(anchor.date);
      }
    }
  });
});

describe('where the Sun does not set', () => {
  it('tells that midnight stands in', () => {
    const almanac = createAlmanac(sampleRules(), samplePlace(69.65, 18.96, 'Europe/Oslo'));
    expect(almanac.explain('2026-06-20')).toMatchObject({ dayBegins: 'sunset', beginsWith: 'midnight' });
    expect(almanac.explain('2026-03-20')).toMatchObject({ dayBegins: 'sunset', beginsWith: 'sunset' });
  });
});
