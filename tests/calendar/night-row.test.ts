import { describe, expect, it } from 'vitest';
import { createAlmanac } from '../../src/calendar/almanac.ts';
import { renderNightRow } from '../../src/calendar/night-row.ts';
import { ESTUARY, samplePlace, sampleRules } from './sample-rules.ts';

/** The example of the design, section 6, letter for letter. */
const CONTRACT = [
  '{"date":"2026-07-29","begins":"2026-07-29T17:25:41+12:00","ends":"2026-07-30T17:26:37+12:00",',
  '"night":{"name":"Round Moon","number":16,"group":"High Water","repeat":false},',
  '"nightOfMonth":16,',
  '"month":{"name":"Frost Month","number":2,"year":2026,"firstDate":"2026-07-14","length":29,"intercalary":false},',
  '"moonAgeDays":14.82,"illuminatedFraction":0.998,"phase":{"name":"full-moon","at":"2026-07-30T02:36:19+12:00"},',
  '"sunset":"2026-07-29T17:25:41+12:00","sunrise":"2026-07-30T07:33:08+12:00","moonrise":null,',
  '"moonset":"2026-07-30T07:54:16+12:00","basis":"computed"}',
].join('');

describe('renderNightRow', () => {
  const almanac = createAlmanac(sampleRules(), ESTUARY);

  it('gives the row of the contract', () => {
    expect(JSON.stringify(renderNightRow(almanac, almanac.nightOn('2026-07-29')))).toBe(CONTRACT);
  });

  it('says null for what does not happen, and keeps the keys', () => {
    const tromso = createAlmanac(sampleRules(), samplePlace(69.65, 18.96, 'Europe/Oslo'));
    const row = renderNightRow(tromso, tromso.nightOn('2026-06-23'));
    expect(row).toMatchObject({ begins: '2026-06-24T00:00:00+02:00', sunset: null, sunrise: null, phase: null });
    expect(Object.keys(row)).toEqual(Object.keys(JSON.parse(CONTRACT)));
  });

  it('keeps words that are not of the contract out', () => {
    const months = sampleRules().months.map((month) => ({ ...month, say: 'so', meaning: 'what' }));
    const wordy = createAlmanac(sampleRules({ months }), ESTUARY);
    expect(JSON.stringify(renderNightRow(wordy, wordy.nightOn('2026-07-29')))).toBe(CONTRACT);
  });

  it('prints fractions rounded, without tails', () => {
    for (const record of almanac.nights('2026-07-01', '2026-08-31')) {
      const row = renderNightRow(almanac, record);
      expect(String(row.moonAgeDays)).toMatch(/^\d{1,2}(\.\d{1,2})?$/);
      expect(String(row.illuminatedFraction)).toMatch(/^[01](\.\d{1,3})?$/);
    }
  });
});
