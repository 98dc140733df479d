import type { RunNight } from './almanac-types.ts';
import type { NightGroup } from './rules.ts';

/** The name a night takes. */
export interface FittedName {
  readonly night: RunNight;
  /** True when an earlier night of the month already has this name. */
  readonly repeat: boolean;
}

/** Lists the named nights of all groups in order, each with its place in the run. */
export function computeRun(groups: readonly NightGroup[]): readonly RunNight[] {
  const run: RunNight[] = [];
  for (const [groupIndex, group] of groups.entries()) {
    for (const [nightIndex, night] of group.nights.entries()) {
      const place = { groupNumber: groupIndex + 1, numberInGroup: nightIndex + 1 };
      run.push({ ...night, number: run.length + 1, group: group.name, ...place });
    }
  }
  return run;
}

/** A name tied to a night of the month. */
export interface Pin {
  /** 0 for the first night. */
  readonly index: number;
  /** 1-based place in the list of names. */
  readonly number: number;
}

/** The pins that can all hold, in order: each later in the month and in the list than the one before; the first wins. */
function keepInOrder(pins: readonly Pin[], start: Pin, length: number): Pin[] {
  const kept: Pin[] = [];
  for (const pin of [...pins].sort((a, b) => a.number - b.number)) {
    const last = kept.at(-1) ?? start;
    if (pin.index > last.index && pin.number > last.number && pin.index < length) kept.push(pin);
  }
  return kept;
}

/** Leaves names out of a stretch until `count` are left: flexible ones first, the last of them first; then the last ones. */
function leaveOut(names: readonly RunNight[], count: number): readonly RunNight[] {
  const left = [...names];
  while (left.length > count) {
    const flexible = left.findLastIndex((night) => night.flexible === true);
    left.splice(flexible < 0 ? left.length - 1 : flexible, 1);
  }
  return left;
}

/** Repeats a name of a stretch until there are `count`: the last flexible one, or the last one if none is. */
function repeatOne(names: readonly RunNight[], count: number): readonly RunNight[] {
  const flexible = names.findLastIndex((night) => night.flexible === true);
  const index = flexible < 0 ? names.length - 1 : flexible;
  const night = names[index];
  if (night === undefined) return names;
  return names.toSpliced(index, 0, ...Array.from({ length: count - names.length }, () => night));
}

/**
 * Names for the nights from one pin on to the night before the next. The first is tied to its pin and stays; where no
 * name is pinned at the beginning of the month, a name that is pinned later may have to be said early.
 */
function fillStretch(run: readonly RunNight[], from: Pin, to: Pin): readonly RunNight[] {
  const count = to.index - Math.max(from.index, 0);
  const pinned = from.index < 0 ? [] : run.slice(from.number - 1, from.number);
  const between = run.slice(from.number, to.number - 1);
  const names = [...pinned, ...leaveOut(between, Math.max(0, count - pinned.length))];
  // Before the first pin there may be nights and no names: the pinned name is said from the first night on.
  const stretch = names.length > 0 ? names : run.slice(to.number - 1, to.number);
  return stretch.length < count ? repeatOne(stretch, count) : stretch.slice(0, count);
}

/**
 * Fits the list of names to the nights of a month. Night 1 takes the first name; between pins names run in order. Where
 * a stretch from one pin to the next has fewer nights than names, flexible names are left out, the last of the stretch
 * first, then the names just before the next pin. Where it has more, the last flexible name of the stretch is repeated,
 * or its last name if none is flexible. The end of the month counts as a pin behind the last name. Of pins that cannot
 * all hold, the one whose name comes first in the list is kept.
 * @param run One name at least.
 * @param length Nights in the month, 1 or more.
 * @param pins Names tied to nights: the anchors.
 * @param start A pin to begin with, from which on names are wanted: an observation. Absent: the whole month.
 * @returns A name for each night from the start's on.
 */
export function computeFit(
  run: readonly RunNight[],
  length: number,
  pins: readonly Pin[],
  start: Pin = { index: -1, number: 0 },
): readonly RunNight[] {
  const ends = [...keepInOrder(pins, start, length), { index: length, number: run.length + 1 }];
  const fitted: RunNight[] = [];
  let from = start;
  for (const to of ends) {
    fitted.push(...fillStretch(run, from, to));
    from = to;
  }
  return fitted;
}

/** Adds to each name whether an earlier night of the month already has it. */
export function markRepeats(names: readonly RunNight[]): readonly FittedName[] {
  const said = new Set<number>();
  return names.map((night) => {
    const repeat = said.has(night.number);
    said.add(night.number);
    return { night, repeat };
  });
}
