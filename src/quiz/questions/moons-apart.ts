import type { MoonView, NightRecord } from '../../calendar/almanac-types.ts';
import { foldName, foldText } from '../fold-text.ts';
import { nameLitAmount } from './moon-words.ts';

/** A night with the Moon as it is drawn for it, and the words for the drawing. */
export interface MoonNight {
  readonly record: NightRecord;
  readonly moon: MoonView;
  readonly words: string;
}

/** By what two drawings are told apart: by how much is lit, at once or at a second glance, or else by which side is. */
type Difference = 'wide-amount' | 'amount' | 'side';

/**
 * Lit fractions differ by this much at least: the edge of the light lies 3 mm further in a drawing of 21 mm, which a
 * photocopy keeps. By eye.
 */
const LEAST_GAP = 0.15;

/** Of a disc all dark or all lit and one with an edge: the edge is 2 mm wide at least. By eye. */
const LEAST_GAP_TO_NONE = 0.1;

/** From here on nobody need look twice; below it two that are lit on different sides look like mirror images. By eye. */
const WIDE_GAP = 0.22;

/** Thinner than this, a lit or a dark edge is a line in a drawing, and its side is not to be relied on. By eye. */
const LEAST_EDGE = 0.06;

/** Lit sides lie a quarter turn apart at least. */
const LEAST_TURN_DEGREES = 90;

/** Nights further apart are not of one question: a half Moon and the other one are 15 nights apart. */
const MOST_NIGHTS_APART = 16;

/** Sets kept of those that begin with one night, for each level: enough for a room, few for a year. Our own choice. */
const SETS_A_NIGHT = 4;

/** Nights whose drawings a child can tell apart, and how hard that is. */
export interface MoonSet {
  /** In order of time. */
  readonly nights: readonly MoonNight[];
  readonly level: 1 | 2 | 3;
}

/**
 * Sets of nights whose drawings and whose words all differ clearly. Level 1: by wide gaps in how much is lit; 2: by
 * narrower ones; 3: two of them at least are mirror images, or nearly.
 * @param nights in order of time
 * @param size nights of a set, 2 or more
 */
export function listMoonSets(nights: readonly MoonNight[], size: number): MoonSet[] {
  // Asked for again and again below, so worked out once for each two.
  const differences = nights.map((one, place) =>
    nights.slice(place + 1, place + 1 + MOST_NIGHTS_APART).map((other) => tellApart(one, other)),
  );
  const differ: Differ = (one, other) => differences[one]?.[other - one - 1];
  return nights.flatMap((_, first) => {
    const near = Array.from(
      { length: Math.min(MOST_NIGHTS_APART, nights.length - 1 - first) },
      (_, at) => first + 1 + at,
    );
    const sets = extendSet([first], near, size, differ).map((places) => makeSet(nights, places, differ));
    return ([1, 2, 3] as const).flatMap((level) => thinOut(sets.filter((set) => set.level === level)));
  });
}

/** By what the nights at two places are told apart; the first place is the smaller. */
type Differ = (one: number, other: number) => Difference | undefined;

function extendSet(set: readonly number[], later: readonly number[], size: number, differ: Differ): number[][] {
  if (set.length === size) return [[...set]];
  return later.flatMap((next, index) => {
    if (set.some((place) => differ(place, next) === undefined)) return [];
    return extendSet([...set, next], later.slice(index + 1), size, differ);
  });
}

function makeSet(nights: readonly MoonNight[], places: readonly number[], differ: Differ): MoonSet {
  const pairs = places.flatMap((one, index) => places.slice(index + 1).map((other) => differ(one, other)));
  const level = pairs.includes('side') ? 3 : pairs.includes('amount') ? 2 : 1;
  return { nights: places.flatMap((place) => nights[place] ?? []), level };
}

/** Evenly spread ones of many. */
function thinOut(sets: readonly MoonSet[]): MoonSet[] {
  if (sets.length <= SETS_A_NIGHT) return [...sets];
  const places = Array.from({ length: SETS_A_NIGHT }, (_, index) => Math.floor((index * sets.length) / SETS_A_NIGHT));
  return places.flatMap((place) => sets[place] ?? []);
}

/** How two nights' drawings, names and words are told apart; nothing where they are not, beyond doubt. */
function tellApart(one: MoonNight, other: MoonNight): Difference | undefined {
  if (foldName(one.record.night) === foldName(other.record.night) || one.words === other.words) return undefined;
  if (namesNight(one.words, other.record) || namesNight(other.words, one.record)) return undefined;
  const gap = Math.abs(one.moon.litFraction - other.moon.litFraction);
  const isMirror = one.moon.waxing !== other.moon.waxing && hasSide(one) && hasSide(other) && lieApart(one, other);
  if (isMirror && gap < WIDE_GAP) return 'side';
  const amounts = [one, other].map(({ moon }) => nameLitAmount(moon.litFraction));
  const hasNone = amounts.includes('dark') || amounts.includes('whole');
  if (gap < (hasNone ? LEAST_GAP_TO_NONE : LEAST_GAP) || amounts[0] === amounts[1]) return undefined;
  return gap < WIDE_GAP ? 'amount' : 'wide-amount';
}

function hasSide({ moon: { litFraction } }: MoonNight): boolean {
  return litFraction >= LEAST_EDGE && litFraction <= 1 - LEAST_EDGE;
}

function lieApart(one: MoonNight, other: MoonNight): boolean {
  const turn = Math.abs(one.moon.brightLimbDegrees - other.moon.brightLimbDegrees);
  return Math.min(turn, 360 - turn) >= LEAST_TURN_DEGREES;
}

/** Whether words give a night's name away. */
export function namesNight(words: string, { night }: NightRecord): boolean {
  return foldText(words).includes(foldName(night));
}
