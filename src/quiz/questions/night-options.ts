import type { ElementContent } from 'hast';
import type { RunNight } from '../../calendar/almanac-types.ts';
import { fillLabel } from '../../content/fill-label.ts';
import {
  type Distractor,
  type DistractorReason,
  findReason,
  hasDistractors,
  listDistractorSets,
} from '../distractors.ts';
import { keepEvenLengths, standsOut } from '../even-lengths.ts';
import { foldName } from '../fold-text.ts';
import type { QuizFacts } from '../model.ts';
import { findMirror } from './mirror-night.ts';
import type { WrongOption } from './question-instance.ts';
import { renderNight } from './working.ts';

/** Which names may be wrong options beside a night. */
export interface NightChoice {
  readonly right: RunNight;
  /** Nights that may not be options, such as the one in the question. */
  readonly avoid?: readonly RunNight[];
  /** Nights that are passed over next to the right one; the first of them is in every set. */
  readonly notReached?: readonly RunNight[];
}

/** What choosing a night means where the kind of question knows better than its place in the run tells. */
export type ExplainNight = (night: RunNight, reason: DistractorReason) => ElementContent[] | undefined;

const MEANS_LABELS = {
  'just-before': 'quiz-means-just-before',
  'just-after': 'quiz-means-just-after',
  earlier: 'quiz-means-earlier',
  later: 'quiz-means-later',
  across: 'quiz-means-mirror',
  'near-across': 'quiz-means-near-mirror',
  'not-reached': 'quiz-means-not-reached',
} as const satisfies Record<DistractorReason, string>;

/** Whether {@link listNightOptions} has any name to offer. */
export function hasNightOptions(facts: QuizFacts, choice: NightChoice): boolean {
  return hasDistractors(makeRing(facts, choice));
}

/** How options are shown and explained; absent: as the name alone, by its place in the run. */
interface OptionViews {
  readonly renderName?: (name: string) => ElementContent[];
  readonly explain?: ExplainNight;
}

/**
 * Sets of wrong nights beside a right one, with what each means. Where the right one is by far the longest or the shortest
 * beside all of them, one name of each set gives way to one of about its length, if the calendar has such.
 */
export function listNightOptions(
  facts: QuizFacts,
  choice: NightChoice,
  { renderName = (name) => renderNight(facts, name), explain = () => undefined }: OptionViews = {},
): readonly (readonly WrongOption[])[] {
  const right = renderName(choice.right.name);
  const render = (set: readonly Distractor[]) =>
    set.flatMap(({ place, reason }) => {
      const night = facts.almanac.run[place];
      if (night === undefined) return [];
      const means = explain(night, reason) ?? fillLabel(facts.labels, MEANS_LABELS[reason], {});
      return [{ content: renderName(night.name), means }];
    });
  const sets = listDistractorSets(makeRing(facts, choice));
  const rendered = sets.map(render);
  if (!rendered.every((set) => standsOut(right, set))) return keepEvenLengths(right, rendered);
  return keepEvenLengths(
    right,
    sets.map((set) => render(swapForLength(facts, choice, set))),
  );
}

function makeRing({ almanac }: QuizFacts, { right, avoid = [], notReached = [] }: NightChoice) {
  return {
    texts: almanac.run.map(foldName),
    right: right.number - 1,
    across: findMirror(almanac, right.number - 1),
    avoid: avoid.map(foldName),
    notReached: notReached.map(({ number }) => number - 1),
  };
}

/** The last night of a set gives way to the one nearest in length to the right one. */
function swapForLength(facts: QuizFacts, choice: NightChoice, set: readonly Distractor[]): Distractor[] {
  const { run } = facts.almanac;
  const { right, avoid = [] } = choice;
  const kept = set.slice(0, -1);
  const taken = new Set([right, ...avoid, ...kept.map(({ place }) => run[place] ?? right)].map(foldName));
  const differ = ({ name }: RunNight) => Math.abs(name.length - right.name.length);
  const [nearest] = run
    .filter((night) => !taken.has(foldName(night)))
    .toSorted((one, other) => differ(one) - differ(other));
  if (nearest === undefined) return [...set];
  const place = nearest.number - 1;
  return [...kept, { place, reason: findReason(makeRing(facts, choice), place) }];
}
