import type { RunNight } from '../../calendar/almanac-types.ts';
import { computeTimeline } from '../../rhythm/compute-timeline.ts';
import type { CountIn, RunGroup } from '../../rhythm/timeline-types.ts';
import type { Level } from './question-instance.ts';

/** A run that can be asked for: how it is beaten, and how long that takes, which is a whole number of seconds. */
export interface AskedRun {
  readonly level: Level;
  readonly groups: readonly RunGroup[];
  /** True for all groups of the calendar, where there are several. */
  readonly isWhole: boolean;
  readonly tempo: number;
  /** Beats that each night lasts. */
  readonly beats: number;
  readonly countIn: CountIn;
  /** Nights of the run. */
  readonly nights: number;
  /** Beats of all nights, and of all count-ins. */
  readonly nightBeats: number;
  readonly countBeats: number;
  readonly totalBeats: number;
  /** Seconds from the first beat, that of a count-in if there is one, to the end of the last night. */
  readonly seconds: number;
}

/** Tempi, beats a night and count-ins of each level: on 1 and 2 a beat is two seconds, one, or half a one. */
const WAYS: Readonly<
  Record<
    Level,
    { readonly tempi: readonly number[]; readonly beats: readonly number[]; readonly countIns: readonly CountIn[] }
  >
> = {
  1: { tempi: [30, 60, 120], beats: [1, 2, 3, 4], countIns: ['none'] },
  2: { tempi: [30, 60, 120], beats: [1, 2, 3, 4], countIns: ['by-group', 4] },
  3: { tempi: [40, 45, 48, 60, 72, 80, 90, 100, 120], beats: [1, 2, 3, 4], countIns: ['by-group'] },
};

/** Shortest and longest answers, in seconds: of levels 1 and 2 in seconds alone, of level 3 in minutes and seconds. */
const SECONDS: Readonly<Record<Level, readonly [from: number, upTo: number]>> = {
  1: [4, 60],
  2: [4, 60],
  3: [61, 300],
};

/**
 * Runs of one group on levels 1 and 2; on level 3 of two groups that follow each other, and of all.
 * @param run all nights of the calendar
 * @param numbers of the groups asked about; the whole run is asked about whichever they are
 */
export function listAskedRuns(run: readonly RunNight[], numbers: ReadonlySet<number>): AskedRun[] {
  const groups = gatherGroups(run);
  const singles = groups.filter((_, index) => numbers.has(index + 1)).map((group) => [group]);
  const pairs = groups.slice(1).flatMap((group, index) => {
    const before = groups[index];
    return before !== undefined && numbers.has(index + 1) && numbers.has(index + 2) ? [[before, group]] : [];
  });
  const selections = { 1: singles, 2: singles, 3: groups.length > 2 ? [...pairs, groups] : [groups] };
  return ([1, 2, 3] as const).flatMap((level) =>
    selections[level].flatMap((selection) =>
      listWays(selection, level, groups.length > 1 && selection.length === groups.length),
    ),
  );
}

/** The calendar's groups with all their nights, also those that a month leaves out. */
function gatherGroups(run: readonly RunNight[]): RunGroup[] {
  const numbers = [...new Set(run.map(({ groupNumber }) => groupNumber))];
  return numbers.map((groupNumber) => {
    const nights = run.filter((night) => night.groupNumber === groupNumber);
    const items = nights.map(({ name, number }) => ({ kind: 'night', name, number }) as const);
    return { kind: 'nights', name: nights[0]?.group ?? '', items, wholeLength: items.length, firstInGroup: 1 };
  });
}

function listWays(groups: readonly RunGroup[], level: Level, isWhole: boolean): AskedRun[] {
  const { tempi, beats: beatsOf, countIns } = WAYS[level];
  const [from, upTo] = SECONDS[level];
  const ways = beatsOf.flatMap((beats) => countIns.map((countIn) => ({ beats, countIn })));
  return ways.flatMap(({ beats, countIn }) => {
    const counted = countBeats(groups, beats, countIn);
    return tempi.flatMap((tempo) => {
      const seconds = (counted.totalBeats * 60) / tempo;
      if (!Number.isInteger(seconds) || seconds < from || seconds > upTo) return [];
      return { level, groups, isWhole, tempo, beats, countIn, ...counted, seconds };
    });
  });
}

/** Beats as a gesture sequence has them, which do not hang on the tempo. */
function countBeats(
  groups: readonly RunGroup[],
  beatsPerItem: number,
  countIn: CountIn,
): Pick<AskedRun, 'nights' | 'nightBeats' | 'countBeats' | 'totalBeats'> {
  const rhythm = { tempoBeatsPerMinute: 60, beatsPerItem, countIn, restBeats: 0, passes: 1, slowFirst: false };
  const { events, totalBeats } = computeTimeline(groups, rhythm);
  const nights = events.filter(({ kind }) => kind === 'item').length;
  const nightBeats = nights * beatsPerItem;
  return { nights, nightBeats, countBeats: totalBeats - nightBeats, totalBeats };
}
