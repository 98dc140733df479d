import type { Rhythm, RunGroup, TempoChange, Timeline, TimelineEvent } from './timeline-types.ts';

/**
 * The slow first pass keeps three quarters of the tempo: a step that a class can hear and still dance to, and the same
 * as the slower speed of the player. Common practice, no source.
 */
export const SLOW_SHARE = 3 / 4;

const SECONDS_IN_MINUTE = 60;
/** Seconds times the tempo by which a beat of the slow pass is longer: 60 / SLOW_SHARE - 60, a whole number. */
const SLOW_EXTRA = 20;

/**
 * Puts a run on the beat. In each pass every group has its count-in and then its items; a rest stands before each group
 * but the very first, and belongs to the group that comes after it. Tempo changes where a pass begins, at its rest if it
 * has one. A count-in by group beats the whole group, however few of its nights were selected, so that the class hears
 * which group comes, and a run up to tonight sounds as the whole run does.
 *
 * Each time is worked out from its beat number by one division of whole numbers by the tempo, the slow pass and all, so
 * that errors do not add up: beat 3,600 at 60 beats a minute is exactly at 3,600 seconds.
 * @param groups in the order in which they are beaten; may be empty, which gives a timeline of no events
 * @throws RangeError when the tempo is not a finite number above 0, a number of beats or passes is not whole or too
 * small, or a group has no items
 */
export function computeTimeline(groups: readonly RunGroup[], rhythm: Rhythm): Timeline {
  requireRhythm(rhythm);
  groups.forEach(requireGroup);
  const slowBeats = rhythm.slowFirst ? countPassBeats(groups, rhythm) : 0;
  const secondsAt = (beat: number) =>
    (SECONDS_IN_MINUTE * beat + SLOW_EXTRA * Math.min(beat, slowBeats)) / rhythm.tempoBeatsPerMinute;
  const events: TimelineEvent[] = [];
  let beat = 0;
  const place = (beats: number, pass: number, group: number) => {
    const firstBeat = beat;
    beat += beats;
    return { firstBeat, beats, startsAtSeconds: secondsAt(firstBeat), endsAtSeconds: secondsAt(beat), pass, group };
  };
  const passes = rhythm.passes + (rhythm.slowFirst ? 1 : 0);
  for (let pass = 1; pass <= passes; pass++) {
    groups.forEach((group, index) => {
      if (beat > 0 && rhythm.restBeats > 0) events.push({ ...place(rhythm.restBeats, pass, index), kind: 'rest' });
      const of = countInBeats(group, rhythm);
      for (let count = 1; count <= of; count++) {
        events.push({ ...place(1, pass, index), kind: 'count', count, of });
      }
      group.items.forEach((_, item) => {
        const strong = item === 0 && group.firstInGroup === 1;
        events.push({ ...place(rhythm.beatsPerItem, pass, index), kind: 'item', item, strong });
      });
    });
  }
  return {
    groups,
    rhythm,
    events,
    tempi: listTempi(rhythm, slowBeats),
    totalBeats: beat,
    totalSeconds: secondsAt(beat),
  };
}

function countInBeats(group: RunGroup, { countIn }: Rhythm): number {
  if (countIn === 'none') return 0;
  return countIn === 'by-group' ? group.wholeLength : countIn;
}

/** Beats of the first pass, which no rest comes before. */
function countPassBeats(groups: readonly RunGroup[], rhythm: Rhythm): number {
  const rests = Math.max(0, groups.length - 1) * rhythm.restBeats;
  return groups.reduce(
    (sum, group) => sum + countInBeats(group, rhythm) + group.items.length * rhythm.beatsPerItem,
    rests,
  );
}

function listTempi({ tempoBeatsPerMinute }: Rhythm, slowBeats: number): TempoChange[] {
  const full = { atBeat: slowBeats, beatsPerMinute: tempoBeatsPerMinute };
  return slowBeats === 0 ? [full] : [{ atBeat: 0, beatsPerMinute: tempoBeatsPerMinute * SLOW_SHARE }, full];
}

function requireRhythm({ tempoBeatsPerMinute, beatsPerItem, countIn, restBeats, passes }: Rhythm): void {
  if (!(Number.isFinite(tempoBeatsPerMinute) && tempoBeatsPerMinute > 0)) {
    throw new RangeError(`a tempo must be a number above 0, not ${tempoBeatsPerMinute}`);
  }
  requireWhole(beatsPerItem, 1, 'beats an item');
  if (typeof countIn === 'number') requireWhole(countIn, 0, 'beats of the count-in');
  requireWhole(restBeats, 0, 'beats of rest');
  requireWhole(passes, 1, 'passes');
}

function requireGroup({ name, items, wholeLength, firstInGroup }: RunGroup): void {
  if (items.length === 0) throw new RangeError(`the group ${name} has no items`);
  requireWhole(wholeLength, 1, 'items of a whole group');
  requireWhole(firstInGroup, 1, 'the first place in a group');
}

function requireWhole(value: number, least: number, what: string): void {
  if (!(Number.isSafeInteger(value) && value >= least)) {
    throw new RangeError(`${what} must be a whole number from ${least}, not ${value}`);
  }
}
