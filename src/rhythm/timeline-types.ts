/** What is done on a beat: a night with its gesture, or a month whose name is said. */
export interface RunItem {
  readonly kind: 'night' | 'month';
  readonly name: string;
  /** 1-based place in the calendar's list of nights, or of months. */
  readonly number: number;
  /** Key of the gesture in the gestures file; absent for months, and for nights without one. */
  readonly gesture?: string;
}

/** Items that are beaten as one phrase: a group of nights, or the months. */
export interface RunGroup {
  readonly kind: 'nights' | 'months';
  readonly name: string;
  /** Those that were selected, in order; never empty. */
  readonly items: readonly RunItem[];
  /** Items that the whole group has in the calendar: what a count-in by group beats. */
  readonly wholeLength: number;
  /** 1-based place of the first selected item in the whole group. */
  readonly firstInGroup: number;
}

/**
 * What is counted before a group: `by-group` beats once for each night that the group has, so that the class hears
 * which group comes; a number of beats, the same before every group; or nothing.
 */
export type CountIn = 'by-group' | 'none' | number;

/** How a run is beaten. */
export interface Rhythm {
  /** Beats in a minute, above 0; need not be whole. */
  readonly tempoBeatsPerMinute: number;
  /** Whole beats that each night or month lasts, 1 or more. */
  readonly beatsPerItem: number;
  readonly countIn: CountIn;
  /** Whole beats without a stroke between one group and the next, and between passes; 0 or more. */
  readonly restBeats: number;
  /** Times the whole run is done, 1 or more. */
  readonly passes: number;
  /** True when one more pass, at `SLOW_SHARE` of the tempo, comes before the others. */
  readonly slowFirst: boolean;
}

/** Where an event lies. Beats are whole and counted from 0 at the very beginning, whatever their tempo. */
interface Timed {
  readonly firstBeat: number;
  readonly beats: number;
  /** Seconds from the very beginning: the nearest double to the exact fraction. */
  readonly startsAtSeconds: number;
  readonly endsAtSeconds: number;
  /** 1-based; the slow pass is the first when there is one. */
  readonly pass: number;
  /** Index in the run's groups. */
  readonly group: number;
}

/** One thing that happens in a run. Events follow one another without gaps. */
export type TimelineEvent =
  | (Timed & {
      /** One beat of a count-in. */
      readonly kind: 'count';
      /** 1-based, and of how many. */
      readonly count: number;
      readonly of: number;
    })
  | (Timed & {
      readonly kind: 'item';
      /** Index in the group's items. */
      readonly item: number;
      /** True for the first item of a group in the calendar: the strong beat. */
      readonly strong: boolean;
    })
  | (Timed & { readonly kind: 'rest' });

/** Beats a minute from a beat on. */
export interface TempoChange {
  readonly atBeat: number;
  readonly beatsPerMinute: number;
}

/** A run on the beat. */
export interface Timeline {
  readonly groups: readonly RunGroup[];
  readonly rhythm: Rhythm;
  readonly events: readonly TimelineEvent[];
  /** The first is at beat 0. */
  readonly tempi: readonly TempoChange[];
  readonly totalBeats: number;
  readonly totalSeconds: number;
}

/**
 * How a beat sounds: `rim` is rim and drum together on a group's first beat, `drum` the first beat of any other night or
 * month, `soft` a beat on which it goes on, `count` a beat of a count-in, and `rest` is silent.
 */
export type Stroke = 'rim' | 'drum' | 'soft' | 'count' | 'rest';

/**
 * A stretch of sound: one stroke a beat. Two runs whose strokes and tempi are equal sound the same, and a run whose
 * strokes stand in another's at the same tempo can be played from it.
 */
export interface Track {
  /** File name without its ending, in lower-case ASCII: tells nothing but the tempo and a number. */
  readonly name: string;
  readonly strokes: readonly Stroke[];
  readonly tempi: readonly TempoChange[];
  /** Names of groups with the beat at which each is counted in, else begins: markers of the MIDI file, in order. */
  readonly markers: readonly { readonly atBeat: number; readonly text: string }[];
  readonly totalSeconds: number;
}

/** Where a run is heard: a stretch of a track. */
export interface TrackCut {
  readonly track: Track;
  readonly startsAtSeconds: number;
  readonly endsAtSeconds: number;
}
