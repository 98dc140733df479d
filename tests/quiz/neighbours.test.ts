import { describe, expect, it } from 'vitest';
import { createAlmanac } from '../../src/calendar/almanac.ts';
import { NoNightError } from '../../src/calendar/no-night-error.ts';
import { listKnownNights } from '../../src/quiz/questions/neighbours.ts';
import { samplePlace, sampleRules } from '../calendar/sample-rules.ts';

const rules = sampleRules({ monthBegins: { at: 'first-crescent', offset: 0, visibility: 'B' } });

describe('listKnownNights', () => {
  it('leaves out the nights that cannot be told near a pole, and goes on after them', () => {
    const almanac = createAlmanac(rules, samplePlace(70, 20, 'Europe/Oslo'));
    expect(() => [...almanac.nights('2027-01-25', '2027-02-14')]).toThrow(NoNightError);
    const dates = listKnownNights(almanac, '2027-01-25', '2027-02-14').map(({ date }) => date);
    expect(dates).toEqual(['08', '09', '10', '11', '12', '13', '14'].map((day) => `2027-02-${day}`));
  });

  it('gives nothing for a date that the clocks of the place left out', () => {
    const almanac = createAlmanac(sampleRules(), samplePlace(-13.8, -171.8, 'Pacific/Apia'));
    const dates = listKnownNights(almanac, '2011-12-29', '2011-12-31').map(({ date }) => date);
    expect(dates).toEqual(['2011-12-29', '2011-12-31']);
  });
});
