import { estimateWidthEms, type MeasuredText, measureText } from './fit-label.ts';

/** What the layout must know of a night. */
export interface NightNeeds {
  readonly name: string;
  readonly nightOfMonth: number;
  readonly date: string;
  readonly inWeek: boolean;
  readonly gesture?: unknown;
}

/** What the search for a layout needs to know of all nights, gathered once. */
export interface ScoreNeeds {
  /** Nights in each group, and in all. */
  readonly sizes: readonly number[];
  readonly nights: number;
  /** Width in ems that the widest usual name needs on one line, and on two. */
  readonly nameEms: readonly [number, number];
  /** Width of the widest date with its number. */
  readonly dateEms: number;
  readonly hasFigures: boolean;
  readonly hasWeek: boolean;
}

/** A name that needs so much more width than the middle one does not decide how large the others are. */
const oddNameShare = 2;

/** One name in so many may be wider than the one that decides, by this much: it is then set smaller still, but whole. */
const fewNames = 12;
const mostOfFew = 1.4;

/** Measures the nights of each group, in order. @throws RangeError when there is none */
export function gatherScoreNeeds(groups: readonly (readonly NightNeeds[])[]): ScoreNeeds {
  const nights = groups.flat();
  if (nights.length === 0) throw new RangeError('a score needs at least one night');
  const names = nights.map((night) => measureText(night.name, true));
  return {
    sizes: groups.map((group) => group.length),
    nights: nights.length,
    nameEms: [findUsualWidth(names.map(({ ems }) => ems)), findUsualWidth(names.map(measureTwoLines))],
    dateEms: Math.max(...nights.map((night) => estimateWidthEms(sayDate(night), true))),
    hasFigures: nights.some(({ gesture }) => gesture !== undefined),
    hasWeek: nights.some(({ inWeek }) => inWeek),
  };
}

/** "16 · Wed 29 Jul". */
function sayDate({ nightOfMonth, date }: NightNeeds): string {
  return `${nightOfMonth} · ${date}`;
}

/** The widest, but for those that are much wider than most and for a few that are wider than the others. */
function findUsualWidth(ems: readonly number[]): number {
  const sorted = ems.toSorted((one, other) => one - other);
  const middle = sorted[Math.floor(sorted.length / 2)] ?? 0;
  const usual = sorted.filter((width) => width <= oddNameShare * middle);
  const widest = usual.at(-1) ?? middle;
  return Math.max(usual.at(-1 - Math.floor(usual.length / fewNames)) ?? middle, widest / mostOfFew);
}

/** Least width in which a text can be set on two lines. */
function measureTwoLines({ words, ems }: MeasuredText): number {
  let filled = 0;
  let least = ems;
  for (const word of words) {
    const first = filled + word.emsAtLineEnd;
    filled += word.ems;
    least = Math.min(least, Math.max(first, ems - filled));
  }
  return least;
}
