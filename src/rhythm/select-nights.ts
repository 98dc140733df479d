import type { RunNight } from '../calendar/almanac-types.ts';
import { findNearMiss } from '../content/near-miss.ts';

/** What the words `up-to-tonight` and `this-week` mean where the nights are asked for. */
export interface SelectionMoment {
  /** 1-based number of tonight in the run. */
  readonly tonight?: number;
  /** 1-based numbers of the week's nights in the run, in order; may pass the end of the run and begin anew. */
  readonly week?: readonly number[];
}

/** The nights that a `nights` attribute stands for, or what is wrong with it. */
export type NightSelection =
  | {
      readonly kind: 'all' | 'up-to-tonight' | 'this-week' | 'group' | 'night' | 'range';
      readonly nights: readonly RunNight[];
      /** True when the nights run past the end of the run and go on from its beginning. */
      readonly wraps: boolean;
    }
  | NightSelectionFault;

export type NightSelectionFault =
  /** `name` is neither a night nor a group; `hint` is one that was probably meant. */
  | { readonly kind: 'unknown-name'; readonly name: string; readonly hint?: string }
  /** A name is missing: nothing was written, or nothing on one side of `..`. */
  | { readonly kind: 'missing-name' }
  /** The word needs to know tonight, or the week, and there is none here. */
  | { readonly kind: 'no-tonight' | 'no-week' };

/**
 * Reads a `nights` attribute: `all`, `up-to-tonight`, `this-week`, a group's name, a night's name, or `First..Last`.
 * A group and a night may share a name: alone it means the group, at an end of a range the night. A group at an end
 * of a range stands for its first or its last night. A range whose last night comes before its first wraps around.
 * Names are compared in Unicode form NFC, with spaces at the ends left out, and capitals count.
 * @param run all named nights, in order
 * @throws RangeError when `moment` holds a number that is not in the run
 */
export function selectNights(run: readonly RunNight[], written: string, moment: SelectionMoment): NightSelection {
  const text = tidyName(written);
  if (text === '') return { kind: 'missing-name' };
  if (text === 'all') return { kind: 'all', nights: run, wraps: false };
  if (text === 'up-to-tonight') return selectUpToTonight(run, moment.tonight);
  if (text === 'this-week') return selectWeek(run, moment.week);
  return selectByName(run, text) ?? selectRange(run, text) ?? findUnknown(run, text, words);
}

/** The words that `selectRun` knows besides are here too, so that a mistyped one of them gets its hint. */
const words = ['all', 'up-to-tonight', 'this-week', 'months', 'months-then-nights'];

/** A name as it is compared: in Unicode form NFC, without spaces at the ends, and with one where there were more. */
export function tidyName(name: string): string {
  return name.normalize('NFC').trim().replace(/\s+/gu, ' ');
}

function requireNight(run: readonly RunNight[], number: number): RunNight {
  const night = run.find((candidate) => candidate.number === number);
  if (night === undefined) throw new RangeError(`night ${number} is not in a run of ${run.length}`);
  return night;
}

function selectUpToTonight(run: readonly RunNight[], tonight: number | undefined): NightSelection {
  if (tonight === undefined) return { kind: 'no-tonight' };
  const last = requireNight(run, tonight);
  return { kind: 'up-to-tonight', nights: run.slice(0, run.indexOf(last) + 1), wraps: false };
}

function selectWeek(run: readonly RunNight[], week: readonly number[] | undefined): NightSelection {
  if (week === undefined || week.length === 0) return { kind: 'no-week' };
  const nights = week.map((number) => requireNight(run, number));
  const wraps = week.some((number, index) => index > 0 && number < (week[index - 1] ?? number));
  return { kind: 'this-week', nights, wraps };
}

function selectByName(run: readonly RunNight[], name: string): NightSelection | undefined {
  const group = run.filter((night) => tidyName(night.group) === name);
  if (group.length > 0) return { kind: 'group', nights: group, wraps: false };
  const nights = run.filter((night) => tidyName(night.name) === name);
  return nights.length > 0 ? { kind: 'night', nights: nights.slice(0, 1), wraps: false } : undefined;
}

/** Names may hold two dots themselves, so every place where the range could be parted is tried. */
function selectRange(run: readonly RunNight[], text: string): NightSelection | undefined {
  let fault: NightSelection | undefined;
  for (let at = text.indexOf('..'); at >= 0; at = text.indexOf('..', at + 1)) {
    const names = [tidyName(text.slice(0, at)), tidyName(text.slice(at + 2))] as const;
    const first = findEnd(run, names[0], 0);
    const last = findEnd(run, names[1], -1);
    if (first !== undefined && last !== undefined) return cutRange(run, first, last);
    fault ??= names.includes('')
      ? { kind: 'missing-name' }
      : findUnknown(run, first === undefined ? names[0] : names[1], []);
  }
  return fault;
}

/** Index in the run of the night that a range's end names. */
function findEnd(run: readonly RunNight[], name: string, groupsEnd: 0 | -1): number | undefined {
  const night =
    run.find((candidate) => tidyName(candidate.name) === name) ??
    run.filter((candidate) => tidyName(candidate.group) === name).at(groupsEnd);
  return night === undefined ? undefined : run.indexOf(night);
}

function cutRange(run: readonly RunNight[], first: number, last: number): NightSelection {
  const wraps = last < first;
  const nights = wraps ? [...run.slice(first), ...run.slice(0, last + 1)] : run.slice(first, last + 1);
  return { kind: 'range', nights, wraps };
}

function findUnknown(run: readonly RunNight[], name: string, others: readonly string[]): NightSelectionFault {
  const known = [...new Set([...others, ...run.flatMap((night) => [night.name, night.group])])];
  const hint = known.find((candidate) => tidyName(candidate).toLowerCase() === name.toLowerCase());
  const near = hint ?? findNearMiss(name, known);
  return near === undefined ? { kind: 'unknown-name', name } : { kind: 'unknown-name', name, hint: near };
}
