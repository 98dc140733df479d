import { describe, expect, it } from 'vitest';
import { createAlmanac } from '../../src/calendar/almanac.ts';
import { ESTUARY, groupsWith, samplePlace, sampleRules, utc } from './sample-rules.ts';

const estuary = createAlmanac(sampleRules(), ESTUARY);

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
