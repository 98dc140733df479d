import type { Almanac } from '../../calendar/almanac-types.ts';
import type { Calendar, ContentSound, GestureSet, Recording, RunRecording } from '../../content/types.ts';
import type { FigureView } from '../../drawing/figure/figure.ts';
import { computeTimeline } from '../../rhythm/compute-timeline.ts';
import { followRecording } from '../../rhythm/follow-recording.ts';
import { computePlaceInGroup } from '../../rhythm/place-in-group.ts';
import type { Rhythm, RunGroup, RunItem, Timeline } from '../../rhythm/timeline-types.ts';
import { type SharedFigure, shareFigure } from './shared-figures.ts';

/** A run of gestures on the beat, as a page shows it. */
export interface GestureRun {
  readonly timeline: Timeline;
  /** Of the timeline's groups, in their order. */
  readonly parts: readonly RunPart[];
  readonly view: FigureView;
  /** 1-based among the runs of the lesson. */
  readonly number: number;
  /** Tonight's sentence, which ends the run. */
  readonly sentence?: string;
  /** A teacher's recording, whose beat the run keeps. */
  readonly recording?: RunRecording;
  /** Where the run is heard in the recording, in place of a drum track; absent for one that is only linked to. */
  readonly recorded?: RecordedSound;
}

/** A file of sound with the place of a run in it. */
export interface RecordedSound {
  readonly sound: ContentSound;
  /** Seconds from the recording's beginning to the run's first beat, and to its end. */
  readonly startsAtSeconds: number;
  readonly endsAtSeconds: number;
}

/** A group of a run. */
export interface RunPart {
  readonly group: RunGroup;
  /** Beats that are counted before it, and beats of rest before those; in the first pass. */
  readonly countBeats: number;
  readonly restBeats: number;
  readonly cards: readonly RunCard[];
}

/** A night or a month of a run. */
export interface RunCard {
  readonly item: RunItem;
  /** 1-based place in the whole group. */
  readonly place: number;
  /** Seconds from the beginning of the run, in the first pass. */
  readonly startsAtSeconds: number;
  readonly strong: boolean;
  /** How the name is said, where the calendar tells. */
  readonly say?: string;
  /** Absent where the calendar gives the night none. */
  readonly figure?: SharedFigure;
  /** The name as somebody says it. */
  readonly spoken?: Recording;
}

/** Where names and gestures come from. */
export interface RunSource {
  readonly almanac: Almanac;
  readonly calendar: Calendar;
  readonly gestures: GestureSet;
}

/** What is asked for. */
export interface RunOrder {
  /** Never empty. */
  readonly groups: readonly RunGroup[];
  readonly rhythm: Rhythm;
  readonly view: FigureView;
  readonly number: number;
  readonly sentence?: string | undefined;
  readonly recording?: RunRecording | undefined;
}

/** Puts a run on the beat, its own or that of a recording, and looks up what its cards show. */
export function computeGestureRun(
  { groups, rhythm, view, number, sentence, recording }: RunOrder,
  source: RunSource,
): GestureRun {
  const followed = recording === undefined ? undefined : followRecording(groups, rhythm, recording);
  const timeline = followed?.timeline ?? computeTimeline(groups, rhythm);
  return {
    timeline,
    parts: groups.map((group, index) => gatherPart(timeline, group, index, source, view)),
    view,
    number,
    ...(sentence === undefined ? {} : { sentence }),
    ...(recording === undefined ? {} : { recording }),
    ...(followed === undefined || recording?.sound === undefined
      ? {}
      : { recorded: { ...followed, sound: recording.sound } }),
  };
}

/** What a group is in the first pass; later ones differ in their times alone, and in a rest before the first group. */
function gatherPart(
  { events }: Timeline,
  group: RunGroup,
  index: number,
  source: RunSource,
  view: FigureView,
): RunPart {
  const own = events.filter((event) => event.pass === 1 && event.group === index);
  return {
    group,
    countBeats: own.filter(({ kind }) => kind === 'count').length,
    restBeats: own.find(({ kind }) => kind === 'rest')?.beats ?? 0,
    cards: own.flatMap((event) => {
      const item = event.kind === 'item' ? group.items[event.item] : undefined;
      if (event.kind !== 'item' || item === undefined) return [];
      const { startsAtSeconds, strong } = event;
      return {
        item,
        place: computePlaceInGroup(group, event.item),
        startsAtSeconds,
        strong,
        ...describe(item, source, view),
      };
    }),
  };
}

function describe(
  { kind, number, gesture: key }: RunItem,
  { almanac, calendar, gestures }: RunSource,
  view: FigureView,
): Pick<RunCard, 'say' | 'figure' | 'spoken'> {
  const named = kind === 'month' ? calendar.months[number - 1] : almanac.run[number - 1];
  const gesture = key === undefined ? undefined : gestures.gestures[key];
  const spoken = kind === 'night' ? calendar.spokenNames.get(number) : undefined;
  return {
    ...(named?.say === undefined ? {} : { say: named.say }),
    ...(gesture === undefined || key === undefined ? {} : { figure: shareFigure(key, gesture, view, gestures) }),
    ...(spoken === undefined ? {} : { spoken }),
  };
}
