import type { Report } from '../content/diagnostic.ts';
import { drawEvenBand, isEven } from './even-band.ts';
import { listAskable } from './list-askable.ts';
import type { ComputedSource, QuestionSource, QuizFacts } from './model.ts';
import { nameNightFact, type QuestionInstance } from './questions/question-instance.ts';
import type { ComputedKind } from './questions/question-kinds.ts';
import { createRandom, type Random } from './random.ts';
import { describeDates, reportNothing, reportTold, reportTooFew } from './report-shortage.ts';
import { shareOut } from './share-out.ts';

/** The instances of each computed question, one a group, in the order of the groups. */
export type DealtInstances = ReadonlyMap<QuestionSource, readonly QuestionInstance[]>;

/** A computed question with all instances that would do for it. */
interface Asked {
  readonly source: ComputedSource;
  readonly pool: readonly QuestionInstance[];
}

/**
 * Deals the instances of the computed questions to the groups. No paper gets an instance twice, and groups get different
 * ones, of one level and about equally hard, as far as there are enough; where there are not, some groups share one and a
 * warning `quiz-question` says so. A question whose paper could not get an instance of its own is an error, and has no
 * entry. An instance whose answer the learners have on paper, on a handout or in the words of another question of the
 * quiz, is used only when there is no other, with a warning.
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
  for (const [ask, sameKind] of groupByKind(askable)) {
    const chosen = sameKind.map((asked) => leaveOutTold(asked, sameKind, told, facts, report));
    // Those with the least to choose from are dealt first, so that others leave them something.
    const inTurn = chosen.toSorted((one, other) => one.pool.length - other.pool.length);
    const random = createRandom(`${seed}\n${ask}`);
    for (const [source, hand] of dealHands(inTurn, groups, random, facts, report)) dealt.set(source, hand);
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

/** A hand for each question that can be asked: an instance a group. */
function dealHands(
  inTurn: readonly Asked[],
  groups: number,
  random: Random,
  facts: QuizFacts,
  report: Report,
): Map<ComputedSource, readonly QuestionInstance[]> {
  const hands = new Map<ComputedSource, readonly QuestionInstance[]>();
  const taken = new Set<string>();
  for (const { source, pool } of inTurn) {
    const free = pool.filter(({ asks }) => !taken.has(asks));
    const hand = dealHand(free, pool, groups, hands, random);
    if (hand === undefined) {
      reportNothing(source, hands.size, pool.length, facts, report);
      continue;
    }
    const different = new Set(hand).size;
    if (different < groups) reportTooFew(source, different, groups, facts, report);
    for (const { asks } of hand) taken.add(asks);
    hands.set(source, hand);
  }
  return hands;
}

/**
 * An instance a group. None of them is seen twice in the room where there are enough that are about equally hard; else
 * groups share instances, as few as can be, and no paper gets one that it has. Nothing where a paper would have to.
 */
function dealHand(
  free: readonly QuestionInstance[],
  pool: readonly QuestionInstance[],
  groups: number,
  dealt: ReadonlyMap<ComputedSource, readonly QuestionInstance[]>,
  random: Random,
): readonly QuestionInstance[] | undefined {
  if (free.length >= groups) {
    const hand = drawEvenBand(free, groups, random);
    if (isEven(hand)) return hand;
  }
  const papers = Array.from({ length: groups }, (_, group) => {
    return new Set(Array.from(dealt.values(), (earlier) => earlier[group]?.asks));
  });
  const band = drawEvenBand(pool, Math.min(pool.length, groups + dealt.size), random);
  return shareOut(band, papers) ?? shareOut([...band, ...pool.filter((each) => !band.includes(each))], papers);
}
