import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { computeTimeline } from '../../src/rhythm/compute-timeline.ts';
import { listStrokes } from '../../src/rhythm/list-strokes.ts';
import { planTracks, type TrackPlan } from '../../src/rhythm/plan-tracks.ts';
import type { Rhythm, Stroke, TempoChange, Timeline } from '../../src/rhythm/timeline-types.ts';
import { anyGroups, anyRhythm, buildGroups, buildRhythm, cutLast, monthGroups } from './sample-runs.ts';

const whole = (changes: Partial<Rhythm> = {}) => computeTimeline(monthGroups, buildRhythm(changes));
const upTo = (groups: number, nights: number, changes: Partial<Rhythm> = {}) =>
  computeTimeline(cutLast(monthGroups.slice(0, groups), nights), buildRhythm(changes));
const only = (from: number, to: number, changes: Partial<Rhythm> = {}) =>
  computeTimeline(monthGroups.slice(from, to), buildRhythm(changes));

/** Where each timeline is heard, in words. */
const spell = ({ cuts }: TrackPlan) =>
  cuts.map(({ track, startsAtSeconds, endsAtSeconds }) => `${track.name} ${startsAtSeconds}-${endsAtSeconds}`);

/** Each beat with its stroke, its tempo and the second at which it begins, added up one by one. */
const unroll = (strokes: readonly Stroke[], tempi: readonly TempoChange[]) => {
  let seconds = 0;
  return strokes.map((stroke, beat) => {
    const tempo = tempi.findLast(({ atBeat }) => atBeat <= beat)?.beatsPerMinute ?? Number.NaN;
    const startsAtSeconds = seconds;
    seconds += 60 / tempo;
    return { stroke, tempo, startsAtSeconds };
  });
};

describe('planTracks', () => {
  it('cuts runs from the longest: a beginning, a group, a range', () => {
    // By hand: groups of 2 and 5 nights with their count-ins are 4 and 10 beats; the third is counted in from second 14.
    const plan = planTracks([upTo(2, 3), whole(), only(2, 3), only(1, 3), whole()]);
    expect(spell(plan)).toEqual([
      'beat-60-1 0-12',
      'beat-60-1 0-60',
      'beat-60-1 14-22',
      'beat-60-1 4-22',
      'beat-60-1 0-60',
    ]);
    expect(plan.tracks).toEqual([
      expect.objectContaining({ name: 'beat-60-1', totalSeconds: 60, tempi: [{ atBeat: 0, beatsPerMinute: 60 }] }),
    ]);
  });

  it('makes tracks of their own for another tempo, another rhythm, and a part that no whole has', () => {
    const late = [{ ...buildGroups(5)[0], items: buildGroups(5)[0]?.items.slice(3) ?? [], firstInGroup: 4 }];
    const plan = planTracks([
      computeTimeline(late as typeof monthGroups, buildRhythm()),
      whole({ tempoBeatsPerMinute: 96 }),
      whole(),
      whole({ beatsPerItem: 2 }),
    ]);
    expect(spell(plan)).toEqual(['beat-60-3 0-7', 'beat-96-1 0-37.5', 'beat-60-2 0-60', 'beat-60-1 0-90']);
    expect(plan.tracks.map(({ name }) => name)).toEqual(['beat-60-1', 'beat-60-2', 'beat-96-1', 'beat-60-3']);
  });

  it('takes the place among the same groups, so that the markers are right', () => {
    // The second and the seventh group have 5 nights, and sound the same.
    const plan = planTracks([whole(), only(6, 7), only(1, 2)]);
    expect(spell(plan)).toEqual(['beat-60-1 0-60', 'beat-60-1 42-52', 'beat-60-1 4-14']);
  });

  it('gives a track both names where runs that sound the same have their own, in one order', () => {
    const [second, seventh] = [only(1, 2), only(6, 7)];
    for (const timelines of [
      [second, seventh],
      [seventh, second],
    ]) {
      const plan = planTracks(timelines);
      expect(spell(plan)).toEqual(['beat-60-1 0-10', 'beat-60-1 0-10']);
      expect(plan.tracks[0]?.markers).toEqual([{ atBeat: 0, text: 'B / G' }]);
    }
  });

  it('leaves the markers of a whole alone where a part under another name is cut from it', () => {
    const plan = planTracks([only(1, 3), only(6, 7)]);
    expect(spell(plan)).toEqual(['beat-60-1 0-18', 'beat-60-1 0-10']);
    expect(plan.tracks[0]?.markers).toEqual([
      { atBeat: 0, text: 'B' },
      { atBeat: 10, text: 'C' },
    ]);
  });

  it('marks a group at its count-in, in every pass, and not in the rest before it', () => {
    const [track] = planTracks([computeTimeline(buildGroups(2, 1), buildRhythm({ restBeats: 2, passes: 2 }))]).tracks;
    // By hand: 2 counts, 2 nights, 2 rests, then B: 1 count, 1 night, 2 rests; A again from beat 10, B from 16.
    expect(track?.markers).toEqual([
      { atBeat: 0, text: 'A' },
      { atBeat: 6, text: 'B' },
      { atBeat: 10, text: 'A' },
      { atBeat: 16, text: 'B' },
    ]);
    const single = planTracks([computeTimeline(buildGroups(2), buildRhythm({ countIn: 'none', passes: 2 }))]);
    expect(single.tracks[0]?.markers.map(({ atBeat }) => atBeat)).toEqual([0, 2]);
  });

  it('cuts a plain run from the passes after a slow one, and a slow run from the slow pass', () => {
    // By hand: the slow pass is 60 beats at 60, to second 60; the others go at 80.
    const slowFirst = whole({ tempoBeatsPerMinute: 80, slowFirst: true });
    const plan = planTracks([slowFirst, whole({ tempoBeatsPerMinute: 80 }), whole(), only(2, 3)]);
    expect(plan.tracks.map(({ name }) => name)).toEqual(['beat-80-1']);
    expect(spell(plan).slice(1)).toEqual(['beat-80-1 60-105', 'beat-80-1 0-60', 'beat-80-1 14-22']);
  });

  it('cuts no run across a change of tempo, unless it changes on the same beat', () => {
    const groups = buildGroups(3);
    const rhythm = buildRhythm({ tempoBeatsPerMinute: 80, countIn: 'none' });
    const slowTwice = computeTimeline(groups, { ...rhythm, slowFirst: true, passes: 2 });
    const slowOnce = computeTimeline(groups, { ...rhythm, slowFirst: true });
    const twice = computeTimeline(groups, { ...rhythm, passes: 2 });
    const thrice = computeTimeline(groups, { ...rhythm, passes: 3 });
    expect(spell(planTracks([slowTwice, slowOnce, twice, thrice]))).toEqual([
      'beat-80-1 0-7.5',
      'beat-80-1 0-5.25',
      expect.stringMatching(/^beat-80-[12] /),
      'beat-80-2 0-6.75',
    ]);
  });

  it('names a track after its tempo in whole beats', () => {
    const tempi = [72.4, 72, 71.5].map((tempoBeatsPerMinute) => whole({ tempoBeatsPerMinute }));
    const names = planTracks(tempi).tracks.map(({ name }) => name);
    expect(names).toEqual(['beat-72-1', 'beat-72-2', 'beat-72-3']);
  });

  it('needs no track for no runs, and refuses a run without beats', () => {
    expect(planTracks([])).toEqual({ tracks: [], cuts: [] });
    expect(() => planTracks([computeTimeline([], buildRhythm())])).toThrow(RangeError);
  });

  const anyTimelines: fc.Arbitrary<Timeline[]> = fc.array(
    fc.tuple(anyGroups, fc.oneof(anyRhythm, fc.constant(buildRhythm()))).map(([groups, rhythm]) =>
      // Few tempi, so that there is something to share.
      computeTimeline(groups, { ...rhythm, tempoBeatsPerMinute: rhythm.tempoBeatsPerMinute > 90 ? 80 : 60 }),
    ),
    { minLength: 1, maxLength: 8 },
  );

  it('reproduces every run beat for beat: stroke, tempo and time', () => {
    fc.assert(
      fc.property(anyTimelines, (timelines) => {
        const { cuts } = planTracks(timelines);
        timelines.forEach((timeline, index) => {
          const cut = cuts[index];
          if (cut === undefined) throw new Error('a run without a cut');
          const heard = unroll(cut.track.strokes, cut.track.tempi);
          const first = heard.findIndex(
            ({ startsAtSeconds }) => Math.abs(startsAtSeconds - cut.startsAtSeconds) < 1e-6,
          );
          const wanted = unroll(listStrokes(timeline), timeline.tempi);
          const part = heard.slice(first, first + wanted.length);
          expect(part.map(({ stroke }) => stroke)).toEqual(wanted.map(({ stroke }) => stroke));
          expect(part.map(({ tempo }) => tempo)).toEqual(wanted.map(({ tempo }) => tempo));
          const late = part.map(
            (beat, n) => beat.startsAtSeconds - cut.startsAtSeconds - (wanted[n]?.startsAtSeconds ?? 0),
          );
          expect(Math.max(...late.map(Math.abs))).toBeLessThan(1e-6);
          expect(cut.endsAtSeconds - cut.startsAtSeconds).toBeCloseTo(timeline.totalSeconds, 8);
        });
      }),
    );
  });

  it('is the same in whatever order the runs come, and holds no track that stands in another', () => {
    const shuffled = anyTimelines.chain((timelines) =>
      fc.record({
        timelines: fc.constant(timelines),
        order: fc.shuffledSubarray([...timelines.keys()], { minLength: timelines.length }),
      }),
    );
    fc.assert(
      fc.property(shuffled, ({ timelines, order }) => {
        const plan = planTracks(timelines);
        const other = planTracks(order.flatMap((index) => timelines[index] ?? []));
        expect(other.tracks).toEqual(plan.tracks);
        expect(other.cuts).toEqual(order.map((index) => plan.cuts[index]));
        const words = plan.tracks.map(({ strokes, tempi }) =>
          unroll(strokes, tempi)
            .map(({ stroke, tempo }) => `[${stroke} ${tempo}]`)
            .join(''),
        );
        words.forEach((word, index) => {
          expect(words.filter((one, at) => at !== index && one.includes(word))).toEqual([]);
        });
      }),
    );
  });
});
