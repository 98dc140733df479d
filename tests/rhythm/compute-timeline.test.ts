import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { computeTimeline, SLOW_SHARE } from '../../src/rhythm/compute-timeline.ts';
import type { Rhythm, Timeline } from '../../src/rhythm/timeline-types.ts';
import { anyGroups, anyRhythm, buildGroups, buildRhythm, cutLast, monthGroups } from './sample-runs.ts';

const itemStarts = ({ events }: Timeline) => events.filter((e) => e.kind === 'item').map((e) => e.startsAtSeconds);

/** Events as `kind@beat`, an item with its index. */
const spell = ({ events }: Timeline) =>
  events.map((event) => `${event.kind === 'item' ? event.item : event.kind}@${event.firstBeat}`).join(' ');

describe('computeTimeline', () => {
  /*
   * By hand, two groups of 2 and 3 nights, a beat a night, a beat of rest between:
   *   beats 0 1 count, 2 3 nights, 4 rest, 5 6 7 count, 8 9 10 nights; 11 beats in all.
   * At 60 a beat lasts 1 s: nights at 2 3 | 8 9 10 s, end at 11 s.
   * At 72 it lasts 60/72 = 5/6 s: 10/6 = 1.6667, 15/6 = 2.5 | 40/6 = 6.6667, 45/6 = 7.5, 50/6 = 8.3333; 55/6 = 9.1667.
   * At 96 it lasts 60/96 = 5/8 s: 1.25 1.875 | 5 5.625 6.25; 6.875.
   */
  it.each([
    [60, [2, 3, 8, 9, 10], 11],
    [72, [1.6667, 2.5, 6.6667, 7.5, 8.3333], 9.1667],
    [96, [1.25, 1.875, 5, 5.625, 6.25], 6.875],
  ])('has the times worked out by hand at %d beats a minute', (tempoBeatsPerMinute, starts, total) => {
    const timeline = computeTimeline(buildGroups(2, 3), buildRhythm({ tempoBeatsPerMinute, restBeats: 1 }));
    expect(spell(timeline)).toBe('count@0 count@1 0@2 1@3 rest@4 count@5 count@6 count@7 0@8 1@9 2@10');
    itemStarts(timeline).forEach((start, index) => {
      expect(start).toBeCloseTo(starts[index] ?? Number.NaN, 4);
    });
    expect(timeline.totalSeconds).toBeCloseTo(total, 4);
    expect(timeline.totalBeats).toBe(11);
    expect(timeline.tempi).toEqual([{ atBeat: 0, beatsPerMinute: tempoBeatsPerMinute }]);
  });

  /*
   * By hand, the same groups, slow first and then at 96: the slow pass goes at 3/4 of 96 = 72, 11 beats of 5/6 s, to
   * 55/6 = 9.1667 s. Then beat 11 rests, 12 13 count, 14 15 nights from 9.1667 + 3 x 0.625 = 11.0417 s, 16 rests,
   * 17 18 19 count, 20 21 22 nights from 9.1667 + 9 x 0.625 = 14.7917 s; the end at 9.1667 + 12 x 0.625 = 16.6667 s.
   */
  it('has the times worked out by hand with a slow first pass', () => {
    const rhythm = buildRhythm({ tempoBeatsPerMinute: 96, restBeats: 1, slowFirst: true });
    const timeline = computeTimeline(buildGroups(2, 3), rhythm);
    const slow = [1.6667, 2.5, 6.6667, 7.5, 8.3333];
    const full = [11.0417, 11.6667, 14.7917, 15.4167, 16.0417];
    itemStarts(timeline).forEach((start, index) => {
      expect(start).toBeCloseTo([...slow, ...full][index] ?? Number.NaN, 4);
    });
    expect(timeline.totalSeconds).toBeCloseTo(16.6667, 4);
    expect(timeline.totalBeats).toBe(23);
    expect(timeline.tempi).toEqual([
      { atBeat: 0, beatsPerMinute: 72 },
      { atBeat: 11, beatsPerMinute: 96 },
    ]);
    const passes = timeline.events.map(({ pass }) => pass);
    expect([passes.indexOf(2), timeline.events[passes.indexOf(2)]?.kind]).toEqual([11, 'rest']);
  });

  it('counts in by the whole group, so that a run up to tonight is a piece of the whole', () => {
    const groups = buildGroups(2, 5, 4);
    const whole = computeTimeline(groups, buildRhythm({ beatsPerItem: 2, restBeats: 1 }));
    const part = computeTimeline(cutLast(groups.slice(0, 2), 3), buildRhythm({ beatsPerItem: 2, restBeats: 1 }));
    expect(part.events).toEqual(whole.events.slice(0, part.events.length));
    expect(part.events.filter(({ kind, group }) => kind === 'count' && group === 1)).toHaveLength(5);
  });

  it('counts in by number and not at all', () => {
    const groups = buildGroups(2, 1);
    expect(spell(computeTimeline(groups, buildRhythm({ countIn: 3, beatsPerItem: 4 })))).toBe(
      'count@0 count@1 count@2 0@3 1@7 count@11 count@12 count@13 0@14',
    );
    expect(spell(computeTimeline(groups, buildRhythm({ countIn: 'none', restBeats: 2, passes: 2 })))).toBe(
      '0@0 1@1 rest@2 0@4 rest@5 0@7 1@8 rest@9 0@11',
    );
    const [first, , third] = computeTimeline(groups, buildRhythm({ countIn: 3 })).events;
    expect(first).toMatchObject({ count: 1, of: 3 });
    expect(third).toMatchObject({ count: 3, of: 3 });
  });

  it('stresses a group’s first item alone, in every pass', () => {
    const late = buildGroups(3).map((group) => ({ ...group, items: group.items.slice(1), firstInGroup: 2 }));
    const groups = [...late, ...buildGroups(2)];
    const { events } = computeTimeline(groups, buildRhythm({ countIn: 'none', passes: 2 }));
    expect(events.map((event) => event.kind === 'item' && event.strong)).toEqual([
      ...[false, false, true, false],
      ...[false, false, true, false],
    ]);
  });

  it('is empty for no groups', () => {
    const timeline = computeTimeline([], buildRhythm({ passes: 3, restBeats: 2, slowFirst: true }));
    expect(timeline).toMatchObject({ events: [], totalBeats: 0, totalSeconds: 0 });
    expect(timeline.tempi).toEqual([{ atBeat: 0, beatsPerMinute: 60 }]);
  });

  it('tiles its time: every event begins on the beat and at the very moment that the one before it ends', () => {
    fc.assert(
      fc.property(anyGroups, anyRhythm, (groups, rhythm) => {
        const { events, totalBeats, totalSeconds } = computeTimeline(groups, rhythm);
        let [beat, seconds] = [0, 0];
        for (const event of events) {
          expect([event.firstBeat, event.startsAtSeconds]).toEqual([beat, seconds]);
          expect(event.beats).toBeGreaterThan(0);
          expect(event.endsAtSeconds).toBeGreaterThan(event.startsAtSeconds);
          [beat, seconds] = [beat + event.beats, event.endsAtSeconds];
        }
        expect([totalBeats, totalSeconds]).toEqual([beat, seconds]);
      }),
    );
  });

  it('does every item in every pass, in order, and each beat lasts as long as its tempo says', () => {
    fc.assert(
      fc.property(anyGroups, anyRhythm, (groups, rhythm) => {
        const { events } = computeTimeline(groups, rhythm);
        const once = groups.flatMap((group, index) => group.items.map((_, item) => `${index} ${item}`));
        const passes = rhythm.passes + Number(rhythm.slowFirst);
        const done = events.flatMap((event) => (event.kind === 'item' ? [`${event.group} ${event.item}`] : []));
        expect(done).toEqual(Array.from({ length: passes }, () => once).flat());
        for (const { pass, beats, startsAtSeconds, endsAtSeconds } of events) {
          const tempo = rhythm.tempoBeatsPerMinute * (rhythm.slowFirst && pass === 1 ? SLOW_SHARE : 1);
          expect(endsAtSeconds - startsAtSeconds).toBeCloseTo((beats * 60) / tempo, 8);
        }
      }),
    );
  });

  it('never drifts: after an hour, and after a slow pass, whole seconds are whole', () => {
    const timeline = computeTimeline(buildGroups(3600), buildRhythm({ tempoBeatsPerMinute: 90, countIn: 'none' }));
    expect(timeline.events[3599]?.endsAtSeconds).toBe(2400);
    const slow = buildRhythm({ tempoBeatsPerMinute: 70, countIn: 'none', slowFirst: true, beatsPerItem: 7 });
    // 21 beats of 8/7 s are 24 s, 21 beats of 6/7 s are 18 s.
    const { events, totalSeconds } = computeTimeline(buildGroups(3), slow);
    expect([events[3]?.startsAtSeconds, totalSeconds]).toEqual([24, 42]);
  });

  it('takes a month of 30 nights with its count-ins in a minute at 60', () => {
    expect(computeTimeline(monthGroups, buildRhythm()).totalSeconds).toBe(60);
  });

  it.each<Partial<Rhythm>>([
    { tempoBeatsPerMinute: 0 },
    { tempoBeatsPerMinute: -72 },
    { tempoBeatsPerMinute: Number.NaN },
    { tempoBeatsPerMinute: Number.POSITIVE_INFINITY },
    { beatsPerItem: 0 },
    { beatsPerItem: 1.5 },
    { countIn: -1 },
    { countIn: 0.5 },
    { restBeats: -1 },
    { restBeats: Number.NaN },
    { passes: 0 },
  ])('refuses %o', (changes) => {
    expect(() => computeTimeline(buildGroups(2), buildRhythm(changes))).toThrow(RangeError);
  });

  it('refuses groups that cannot be', () => {
    const [group] = buildGroups(2);
    if (group === undefined) throw new Error('no group');
    for (const changes of [{ items: [] }, { wholeLength: 0 }, { firstInGroup: 0 }]) {
      expect(() => computeTimeline([{ ...group, ...changes }], buildRhythm())).toThrow(RangeError);
    }
  });
});
