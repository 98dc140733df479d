import type { Element } from 'hast';
import { h } from 'hastscript';
import type { TimelineEvent } from '../../rhythm/timeline-types.ts';
import type { LessonView } from '../definition.ts';
import type { GestureRun } from './gesture-run.ts';

/** Folder of sound beside every page that plays any. */
const SOUND_FOLDER = 'sound/';

/** A recording is heard from here before its first beat, so that one can get ready, to here after its last. */
const RECORDING_LEAD_SECONDS = 2;
const RECORDING_TAIL_SECONDS = 1;

/**
 * A browser that is told where to stop may do so a quarter of a second late, and then the next stroke of the track
 * would be heard. A stroke lasts 0.34 seconds at most; so it is told to stop this long before the end, or this share
 * of a beat where beats are short.
 */
const STOP_EARLY_SECONDS = 0.3;
const STOP_EARLY_SHARE = 0.4;

/** A stretch of a file, in seconds from its beginning. `zeroSeconds` is the first beat. */
interface Heard {
  readonly href: string;
  readonly fromSeconds: number;
  readonly zeroSeconds: number;
  readonly untilSeconds: number;
  /** What tells a browser without scripts which part to play; empty for the whole file. */
  readonly fragment: string;
}

/** Where a run is heard. */
function findSound({ timeline, recorded }: GestureRun, view: LessonView): Heard {
  if (recorded !== undefined) {
    return {
      href: SOUND_FOLDER + encodeURIComponent(recorded.sound.packName),
      fromSeconds: Math.max(0, recorded.startsAtSeconds - RECORDING_LEAD_SECONDS),
      zeroSeconds: recorded.startsAtSeconds,
      untilSeconds: recorded.endsAtSeconds + RECORDING_TAIL_SECONDS,
      fragment: '',
    };
  }
  const { track, startsAtSeconds, endsAtSeconds } = view.trackOf(timeline);
  const isWhole = startsAtSeconds === 0 && endsAtSeconds >= track.totalSeconds;
  const lastBeatSeconds = 60 / (timeline.tempi.at(-1)?.beatsPerMinute ?? 60);
  const stop = endsAtSeconds - Math.min(STOP_EARLY_SECONDS, lastBeatSeconds * STOP_EARLY_SHARE);
  return {
    href: `${SOUND_FOLDER}${track.name}.wav`,
    fromSeconds: startsAtSeconds,
    zeroSeconds: startsAtSeconds,
    untilSeconds: endsAtSeconds,
    fragment: isWhole ? '' : `#t=${roundToMs(startsAtSeconds)},${roundToMs(stop)}`,
  };
}

/**
 * The sound of a run: what plays it without a script, and, for the player's script, what happens when.
 * The script reads `[kind, ms from the first beat, beats, index of the group, number]` for each event, where the kind is
 * 0 for a rest, 1 for a counted beat with its number, 2 for a card with its index.
 */
export function renderSound(run: GestureRun, view: LessonView): Element[] {
  const { href, fragment, fromSeconds, zeroSeconds, untilSeconds } = findSound(run, view);
  const score = {
    from: toMs(fromSeconds),
    zero: toMs(zeroSeconds),
    until: toMs(untilSeconds),
    end: toMs(run.timeline.totalSeconds),
    events: run.timeline.events.map(encodeEvent),
  };
  return [
    h('audio', {
      className: ['run-audio', 'screen-only'],
      controls: true,
      preload: 'none',
      src: href + fragment,
      ariaLabel: view.labels.text('drum-track'),
    }),
    h('script', { type: 'application/json' }, JSON.stringify(score)),
  ];
}

/** Address of the same track as a MIDI file; nothing for a recording. Only the teacher has those. */
export function findMidiFile({ timeline, recorded }: GestureRun, view: LessonView): string | undefined {
  return recorded === undefined ? `${SOUND_FOLDER}${view.trackOf(timeline).track.name}.mid` : undefined;
}

/** Address of a sound of the content folder. */
export function addressSound({ packName }: { readonly packName: string }): string {
  return SOUND_FOLDER + encodeURIComponent(packName);
}

function encodeEvent(event: TimelineEvent): number[] {
  const { kind, startsAtSeconds, beats, group } = event;
  const timed = [toMs(startsAtSeconds), beats, group];
  if (kind === 'rest') return [0, ...timed, 0];
  return kind === 'count' ? [1, ...timed, event.count] : [2, ...timed, event.item];
}

function toMs(seconds: number): number {
  return Math.round(seconds * 1000);
}

function roundToMs(seconds: number): number {
  return toMs(seconds) / 1000;
}
