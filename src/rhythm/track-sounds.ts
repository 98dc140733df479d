import { listStrokes } from './list-strokes.ts';
import type { Stroke, Timeline } from './timeline-types.ts';

/** A timeline as it sounds. */
export interface Sound {
  readonly timeline: Timeline;
  /** 0-based place of the timeline among those that were given. */
  readonly index: number;
  readonly strokes: readonly Stroke[];
  /** A code unit a beat, for its stroke and its tempo: what sounds the same is spelt the same. */
  readonly code: string;
  /** The name of the group that each beat belongs to. */
  readonly groups: readonly string[];
}

const STROKES: readonly Stroke[] = ['rim', 'drum', 'soft', 'count', 'rest'];

/**
 * Spells timelines so that one can be looked for in another. Spellings of one list are comparable with each other alone.
 * @throws RangeError when a timeline has no beats
 */
export function listSounds(timelines: readonly Timeline[]): Sound[] {
  const tempi = timelines.flatMap((timeline) => timeline.tempi.map((tempo) => tempo.beatsPerMinute));
  const known = [...new Set(tempi)].sort((a, b) => a - b);
  return timelines.map((timeline, index) => {
    if (timeline.totalBeats === 0) throw new RangeError('a run without beats has no sound');
    const strokes = listStrokes(timeline);
    const groups = timeline.events.flatMap(({ group, beats }) =>
      Array<string>(beats).fill(timeline.groups[group]?.name ?? ''),
    );
    return { timeline, index, strokes, code: spellStrokes(strokes, timeline, known), groups };
  });
}

function spellStrokes(strokes: readonly Stroke[], { tempi }: Timeline, known: readonly number[]): string {
  const stretches = tempi.map(({ atBeat, beatsPerMinute }, index) => {
    const base = known.indexOf(beatsPerMinute) * STROKES.length;
    const stretch = strokes.slice(atBeat, tempi[index + 1]?.atBeat);
    return stretch.map((stroke) => String.fromCharCode(base + STROKES.indexOf(stroke))).join('');
  });
  return stretches.join('');
}

/** The longest first; what sounds the same stands together, ordered by its groups. */
export function compareSounds(a: Sound, b: Sound): number {
  return (
    b.code.length - a.code.length ||
    compareText(a.code, b.code) ||
    compareText(a.groups.join('\u0000'), b.groups.join('\u0000'))
  );
}

/** By code units, which no locale changes. */
function compareText(a: string, b: string): number {
  return a < b ? -1 : Number(a > b);
}

/** True when a sound has the same groups from a beat on as the other one has in all. */
export function hasGroupsAt(whole: Sound, atBeat: number, part: Sound): boolean {
  return part.groups.every((name, beat) => whole.groups[atBeat + beat] === name);
}
