import type { RunNight } from '../../calendar/almanac-types.ts';
import type { Labels } from '../../content/labels.ts';
import type { Gesture, GestureSet } from '../../content/types.ts';
import { listAlikeGestures } from '../../drawing/figure/figure.ts';
import { foldName, foldText } from '../fold-text.ts';
import { describeGesture, saysHands } from './describe-gesture.ts';
import type { Level } from './question-instance.ts';

/** A night with its gesture. */
export interface GestureNight {
  readonly night: RunNight;
  readonly key: string;
  readonly gesture: Gesture;
  /** What its picture shows. */
  readonly words: string;
  /** The same as `foldText` folds it: each is held against many others. */
  readonly foldedWords: string;
}

/** Why a learner might take the gesture of another night. `mirror`: counted from the other end of the run. */
type GestureReason = 'early' | 'late' | 'mirror';

/** A night whose gesture is a wrong option. */
export interface WrongGesture extends GestureNight {
  readonly reason: GestureReason;
  /** Nights between the two in the run, which is taken as a ring. */
  readonly apart: number;
}

/** Wrong options beside the right one: three, or where the calendar has too few gestures that differ, two. */
const MOST_WRONG = 3;
const FEWEST_WRONG = 2;

/** So near in the run, a gesture is a neighbour's; from there on it is one that nobody mixes up by counting. Our own choice. */
const NEAR_NIGHTS = 4;

/** The nights of a calendar that have gestures, with those that cannot stand beside each other. */
export interface GestureNights {
  readonly nights: readonly GestureNight[];
  /** Nights in the run. */
  readonly length: number;
  /** Whether a class might take one gesture for the other. */
  isAlike(one: GestureNight, other: GestureNight): boolean;
}

/**
 * The nights whose gestures may be asked for or be options: those whose name no other night has, and is not given away by
 * the words for the picture.
 */
export function listGestureNights(run: readonly RunNight[], set: GestureSet, labels: Labels): GestureNights {
  const alike = new Set(listAlikeGestures(set).map(({ first, second }) => joinKeys(first, second)));
  const times = new Map<string, number>();
  for (const night of run) times.set(foldName(night), (times.get(foldName(night)) ?? 0) + 1);
  return {
    nights: run.filter((night) => times.get(foldName(night)) === 1).flatMap((night) => findGesture(night, set, labels)),
    length: run.length,
    isAlike: (one, other) =>
      one.key === other.key ||
      one.foldedWords === other.foldedWords ||
      alike.has(joinKeys(one.key, other.key)) ||
      alike.has(joinKeys(other.key, one.key)),
  };
}

function joinKeys(one: string, other: string): string {
  return `${one}\n${other}`;
}

function findGesture(night: RunNight, { gestures }: GestureSet, labels: Labels): GestureNight[] {
  const { gesture: key } = night;
  const gesture = key !== undefined && Object.hasOwn(gestures, key) ? gestures[key] : undefined;
  if (key === undefined || gesture === undefined) return [];
  const words = describeGesture(gesture, labels);
  const foldedWords = foldText(words);
  return givesAway(foldedWords, night, saysHands(gesture)) ? [] : [{ night, key, gesture, words, foldedWords }];
}

/** Letters of a word that tells something; shorter ones are "of", "the" and their like. Our own choice. */
const LEAST_LETTERS = 4;

/** Whether words have the night's name in them; of those an author wrote, whether they have a word of it. */
function givesAway(foldedWords: string, night: RunNight, isOurWords: boolean): boolean {
  if (isOurWords) return foldedWords.includes(foldName(night));
  const said = new Set(listWords(foldedWords));
  return listWords(foldName(night)).some((word) => said.has(word));
}

function listWords(text: string): string[] {
  return (text.match(/[\p{L}\p{M}]+/gu) ?? []).filter((word) => word.length >= LEAST_LETTERS);
}

/**
 * Sets of wrong gestures: on level 1 those of nights far off in the run, in other groups; on level 2 a neighbour's, the
 * mirror night's and another; on level 3 those of the nearest nights, so many before and so many after, that the right
 * one is not always in the middle. No two gestures of a set, or the right one, are alike; all are drawn, or all are
 * pictures, as the right one is.
 * @returns each set of the same size; none where there are too few
 */
export function listWrongGestures(right: GestureNight, all: GestureNights, level: Level): WrongGesture[][] {
  const others = all.nights.flatMap((other): WrongGesture[] => {
    if (all.isAlike(right, other)) return [];
    if ((other.gesture.picture === undefined) !== (right.gesture.picture === undefined)) return [];
    return [{ ...other, ...relate(right.night, other.night, all.length) }];
  });
  const sets = listOrders(right, others, level).map((order) => takeUnlike(order, all));
  const size = Math.max(0, ...sets.map(({ length }) => length));
  return size < FEWEST_WRONG ? [] : dropSame(sets.filter((set) => set.length === size));
}

function relate(right: RunNight, other: RunNight, length: number): Pick<WrongGesture, 'reason' | 'apart'> {
  const ahead = (other.number - right.number + length) % length;
  const apart = Math.min(ahead, length - ahead);
  if (other.number === length + 1 - right.number && apart > NEAR_NIGHTS) return { reason: 'mirror', apart };
  return { reason: ahead <= length - ahead ? 'late' : 'early', apart };
}

/** The others, best first, in as many ways as there are sets. */
function listOrders(right: GestureNight, others: readonly WrongGesture[], level: Level): WrongGesture[][] {
  const nearest = others.toSorted((one, other) => one.apart - other.apart);
  const early = nearest.filter(({ reason }) => reason === 'early');
  const late = nearest.filter(({ reason }) => reason === 'late');
  const mirror = others.filter(({ reason }) => reason === 'mirror');
  if (level === 3) {
    return Array.from({ length: MOST_WRONG + 1 }, (_, before) => [
      ...early.slice(0, before),
      ...late.slice(0, MOST_WRONG - before),
      ...nearest,
    ]);
  }
  const far = others.filter(({ apart, night }) => apart > NEAR_NIGHTS && night.groupNumber !== right.night.groupNumber);
  if (level === 2) {
    // Another one for each night, lest the same gesture be a wrong option all over a paper.
    const turn = right.night.number % Math.max(1, far.length);
    const turned = [...far.slice(turn), ...far.slice(0, turn)];
    return [early, late].map((side) => [...side.slice(0, 1), ...mirror, ...turned, ...nearest]);
  }
  return Array.from({ length: MOST_WRONG }, (_, first) => spread(far, first));
}

/** From so many on in steps of a third of them all, so that those of a set lie far from each other in the run too. */
function spread(nights: readonly WrongGesture[], first: number): WrongGesture[] {
  const step = Math.max(1, Math.floor(nights.length / MOST_WRONG));
  const turned = [...nights.slice(first), ...nights.slice(0, first)];
  return [...turned.filter((_, place) => place % step === 0), ...turned.filter((_, place) => place % step !== 0)];
}

function takeUnlike(order: readonly WrongGesture[], all: GestureNights): WrongGesture[] {
  const taken: WrongGesture[] = [];
  for (const next of order) {
    if (taken.length >= MOST_WRONG) break;
    if (!taken.some((each) => all.isAlike(each, next))) taken.push(next);
  }
  return taken;
}

/** Sets of the same nights are one. */
function dropSame(sets: readonly WrongGesture[][]): WrongGesture[][] {
  const name = (set: readonly WrongGesture[]) =>
    set
      .map(({ night }) => night.number)
      .sort((a, b) => a - b)
      .join(' ');
  return [...new Map(sets.map((set) => [name(set), set])).values()];
}
