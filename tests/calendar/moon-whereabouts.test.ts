import { describe, expect, it } from 'vitest';
import { listUp } from '../../src/calendar/above-horizon.ts';
import { MS_PER_DAY } from '../../src/calendar/day-number.ts';
import { findMoonWhereabouts } from '../../src/calendar/moon-whereabouts.ts';
import type { Place } from '../../src/calendar/rules.ts';
import { ESTUARY, samplePlace, utc } from './sample-rules.ts';

function findWhereabouts(place: Place, atMs: number) {
  return findMoonWhereabouts(
    place,
    atMs,
    listUp('moon', place, { fromMs: atMs - MS_PER_DAY, untilMs: atMs + MS_PER_DAY }),
  );
}

describe('findMoonWhereabouts', () => {
  /*
   * Full Moon on 29 July 2026 at 14:36 UT (published phase tables, from memory). Plain geometry: that night it rises about
   * sunset, is highest about midnight, 00:23 by the clock of a zone 6 minutes behind the place's own time and without daylight
   * saving, and sets about sunrise.
   */
  it.each([
    ['2026-07-29T03:30', 'will-rise'],
    ['2026-07-29T08:00', 'up-east'],
    ['2026-07-29T12:25', undefined],
    ['2026-07-29T17:00', 'up-west'],
    ['2026-07-29T22:30', 'has-set'],
  ] as const)('has the full Moon at %s UT: %s', (time, whereabouts) => {
    expect(findWhereabouts(ESTUARY, utc(time))).toBe(whereabouts);
  });

  it('tells nothing near the horizon, however long the Moon is up', () => {
    const [up] = listUp('moon', ESTUARY, { fromMs: utc('2026-07-29T00:00'), untilMs: utc('2026-07-30T12:00') });
    const riseMs = up?.fromMs ?? 0;
    for (const minutes of [-25, -10, 10, 25]) {
      const found = findWhereabouts(ESTUARY, riseMs + minutes * 60_000);
      expect([undefined, minutes < -20 ? 'will-rise' : undefined]).toContain(found);
    }
    expect(findWhereabouts(ESTUARY, riseMs + 10 * 60_000)).toBeUndefined();
  });

  it('tells nothing where a Moon that is down set long ago and rises long after', () => {
    // Down for more than 14 hours: the full Moon of June is low for 60 degrees north.
    const place = samplePlace(60.2, 24.9, 'Europe/Helsinki');
    const ups = listUp('moon', place, { fromMs: utc('2026-06-28T00:00'), untilMs: utc('2026-07-02T00:00') });
    const gaps = ups.slice(1).map((up, index) => [ups[index]?.untilMs ?? 0, up.fromMs] as const);
    const long = gaps.filter(([setMs, riseMs]) => riseMs - setMs > 14 * 3_600_000);
    expect(long.length).toBeGreaterThan(0);
    for (const [setMs, riseMs] of long) expect(findWhereabouts(place, (setMs + riseMs) / 2)).toBeUndefined();
  });

  it('names no side of the sky near a pole', () => {
    const place = samplePlace(88, 0, 'UTC');
    const answers = Array.from({ length: 28 }, (_, day) =>
      findWhereabouts(place, utc('2026-03-01T00:00') + day * MS_PER_DAY),
    );
    expect(answers.filter((answer) => answer === 'up-east' || answer === 'up-west')).toEqual([]);
  });
});
