import { describe, expect, it } from 'vitest';
import { MS_PER_DAY } from '../../src/calendar/day-number.ts';
import { createLunations, PHASES } from '../../src/calendar/lunations.ts';
import { USNO_PHASE_TOLERANCE_SECONDS, USNO_PHASES } from '../reference/usno-phases.ts';
import { utc } from './sample-rules.ts';

const lunations = createLunations();

describe('createLunations', () => {
  it('gives the phases that the U.S. Naval Observatory published', () => {
    let compared = 0;
    for (const line of USNO_PHASES.trim().split('\n')) {
      const printed = line.split(' ');
      const lunation = lunations.lunationAt(utc(printed[0] ?? '') + MS_PER_DAY);
      for (const [index, phase] of PHASES.entries()) {
        const at = printed[index];
        if (at === undefined || at === '-') continue;
        compared += 1;
        const seconds = Math.abs(lunations.phaseInstant(lunation, phase) - utc(at)) / 1000;
        expect(seconds, `${phase} ${at}`).toBeLessThan(USNO_PHASE_TOLERANCE_SECONDS);
      }
    }
    expect(compared).toBe(97);
  });

  it('numbers lunations as Meeus does: 0 is the new Moon of 2000-01-06, -283 that of example 49.a', () => {
    expect(lunations.lunationAt(utc('2000-01-06T18:15'))).toBe(0);
    expect(lunations.lunationAt(utc('2000-01-06T18:13'))).toBe(-1);
    expect(lunations.lunationAt(utc('1977-02-18T12:00'))).toBe(-283);
  });

  it('puts phases in order, 5.5 to 9.5 days apart, and new Moons 29.2 to 29.9, from 1800 to 2200', () => {
    const last = lunations.lunationAt(utc('2200-12-31T00:00'));
    for (let lunation = lunations.lunationAt(utc('1800-01-01T00:00')); lunation < last; lunation += 1) {
      const instants = [...PHASES.map((phase) => lunations.phaseInstant(lunation, phase))];
      instants.push(lunations.phaseInstant(lunation + 1, 'new-moon'));
      const days = instants.map((instant, index) => (instant - (instants[index - 1] ?? Number.NaN)) / MS_PER_DAY);
      for (const gap of days.slice(1)) expect(gap > 5.5 && gap < 9.5).toBe(true);
      const whole = ((instants[4] ?? 0) - (instants[0] ?? 0)) / MS_PER_DAY;
      expect(whole > 29.2 && whole < 29.9).toBe(true);
    }
  });

  it('counts a phase at the very instant', () => {
    const fullMs = lunations.phaseInstant(300, 'full-moon');
    expect(lunations.firstFrom('full-moon', fullMs)).toBe(300);
    expect(lunations.firstFrom('full-moon', fullMs + 1)).toBe(301);
    const newMs = lunations.phaseInstant(300, 'new-moon');
    expect(lunations.lunationAt(newMs)).toBe(300);
    expect(lunations.lunationAt(newMs - 1)).toBe(299);
  });

  it('refuses a lunation that is no whole number', () => {
    expect(() => lunations.phaseInstant(0.1, 'new-moon')).toThrow('expected a whole number');
  });
});
