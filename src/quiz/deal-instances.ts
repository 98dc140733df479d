import type { Report } from '../content/diagnostic.ts';
import { countLargestLevel, dealHand } from './deal-hand.ts';
import { listAskable } from './list-askable.ts';
import type { ComputedSource, QuestionSource, QuizFacts } from './model.ts';
import { nameNightFact, type QuestionInstance } from './questions/question-instance.ts';
import type { ComputedKind } from './questions/question-kinds.ts';
import { createRandom, type Random } from './random.ts';
import { describeDates, reportMixed, reportNothing, reportTold, reportTooFew } from './report-shortage.ts';

/** The instances of each computed question, one a group, in the order of the groups. */
export type DealtInstances = ReadonlyMap<QuestionSource, readonly QuestionInstance[]>;

/** A computed question with all instances that would do for it. */
interface Asked {
  readonly source: ComputedSource;
  readonly pool: readonly QuestionInstance[];
}

/**
 * Deals the instances of the computed questions to the groups. No paper gets an instance twice, and groups get different
 * ones, of one level and about equally hard, as far as there are enough; where there are not, some groups share one, or
 * get one of another level, and a warning `quiz-question` says so. A question whose paper could not get an instance of its
 * own is an error, and has no entry. An instance whose answer the learners have on paper, on a handout or in the words of
 * another question of the quiz, is used only when there is no other, with a warning; and the same fact is asked for twice
 * on a paper, in two ways, only where groups would share or levels differ else.
 */
export function dealInstances(
  sources: readonly QuestionSource[],
  groups: number,
  facts: QuizFacts,
  seed: string,
  report: Report,
): DealtInstances {
  const askable = listAskable(sources.filter(isComputed), facts);
  const told = new Set([
    ...Array.from(facts.toldDates, nameNightFact),
    ...Array.from(askable.values()).flatMap((pool) => pool.flatMap(({ tells }) => tells)),
  ]);
  const dealt = new Map<QuestionSource, readonly QuestionInstance[]>();
  const factsOnPapers = Array.from({ length: groups }, () => new Set<string>());
  for (const [ask, sameKind] of groupByKind(askable)) {
    const chosen = sameKind.map((asked) => leaveOutTold(asked, sameKind, told, facts, report));
    // Those with the least to choose from are dealt first, so that others leave them something.
    const inTurn = chosen.toSorted((one, other) => one.pool.length - other.pool.length);
    const random = createRandom(`${seed}\n${ask}`);
    for (const [source, hand] of dealHands(inTurn, factsOnPapers, random, facts, report)) dealt.set(source, hand);
  }
  return dealt;
}

function isComputed(source: QuestionSource): source is ComputedSource {
  return source.kind === 'computed';
}

function groupByKind(
  askable: ReadonlyMap<ComputedSource, readonly QuestionInstance[]>,
): Map<ComputedKind, readonly Asked[]> {
  const byKind = new Map<ComputedKind, Asked[]>();
  for (const [source, pool] of askable) {
    const sameKind = byKind.get(source.ask);
    if (sameKind === undefined) byKind.set(source.ask, [{ source, pool }]);
    else sameKind.push({ source, pool });
  }
  return byKind;
}

/** Keeps to what the learners do not have on paper yet, where that is enough for all questions of the kind. */
function leaveOutTold(
  { source, pool }: Asked,
  sameKind: readonly Asked[],
  told: ReadonlySet<string>,
  facts: QuizFacts,
  report: Report,
): Asked {
  const kept = pool.filter((instance) => !told.has(instance.asks));
  if (kept.length >= sameKind.length || kept.length === pool.length) return { source, pool: kept };
  // One warning for a kind: its questions share the dates.
  if (sameKind[0]?.source === source) reportTold(source, describeDates(source, facts), report);
  return { source, pool };
}

/** Deals a hand to each question of a kind that can be asked: an instance a paper, which the papers ask from then on. */
function dealHands(
  inTurn: readonly Asked[],
  factsOnPapers: readonly Set<string>[],
  random: Random,
  facts: QuizFacts,
  report: Report,
): Map<ComputedSource, readonly QuestionInstance[]> {
  const hands = new Map<ComputedSource, readonly QuestionInstance[]>();
  const taken = new Set<string>();
  const papers = factsOnPapers.map((ofAll) => ({ ofAll, ofKind: new Set<string>() }));
  for (const { source, pool } of inTurn) {
    const hand = dealHand(pool, taken, papers, random);
    if (hand === undefined) {
      reportNothing(source, hands.size, pool.length, facts, report);
      continue;
    }
    reportUneven(source, hand, pool, facts, report);
    for (const [paper, { asks }] of hand.entries()) {
      taken.add(asks);
      papers[paper]?.ofKind.add(asks);
      papers[paper]?.ofAll.add(asks);
    }
    hands.set(source, hand);
  }
  return hands;
}

/** Warns where groups share an instance, or get a harder one than others. */
function reportUneven(
  source: ComputedSource,
  hand: readonly QuestionInstance[],
  pool: readonly QuestionInstance[],
  facts: QuizFacts,
  report: Report,
): void {
  const groups = hand.length;
  const different = new Set(hand.map(({ asks }) => asks)).size;
  const levels = [...new Set(hand.map(({ level }) => level))].sort();
  if (different < groups) {
    reportTooFew(source, { available: different, groups }, facts, report);
  } else if (levels.length > 1) {
    reportMixed(source, levels, { available: countLargestLevel(pool), groups }, facts, report);
  }
}
