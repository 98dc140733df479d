import type { Report } from '../content/diagnostic.ts';
import { drawEvenBand, isEven } from './even-band.ts';
import type { ComputedKind, QuestionSource, QuizFacts } from './model.ts';
import { nameNightFact, type QuestionInstance } from './questions/question-instance.ts';
import { QUESTION_KINDS } from './questions/question-kinds.ts';
import { createRandom, type Random } from './random.ts';

type ComputedSource = QuestionSource & { kind: 'computed' };

/** The instances of each computed question, one a group, in the order of the groups. */
export type DealtInstances = ReadonlyMap<QuestionSource, readonly QuestionInstance[]>;

/**
 * Deals the instances of the computed questions to the groups. No paper gets an instance twice, and groups get different
 * ones, about equally hard, as far as there are enough; where there are not, some groups share one and a warning
 * `quiz-question` says so. A question whose paper could not get an instance of its own is an error, and has no entry.
 * An instance whose answer the learners have on paper, on a handout or in the words of another question of the quiz,
 * is used only when there is no other, with a warning.
 */
export function dealInstances(
  sources: readonly QuestionSource[],
  groups: number,
  facts: QuizFacts,
  seed: string,
  report: Report,
): DealtInstances {
  const byKind = groupByKind(sources.filter(isComputed));
  const listed = new Map(Array.from(byKind.keys(), (ask) => [ask, QUESTION_KINDS[ask](facts)] as const));
  const told = new Set([
    ...Array.from(facts.toldDates, nameNightFact),
    ...Array.from(listed.values()).flatMap((instances) => instances.flatMap(({ tells }) => tells)),
  ]);
  const dealt = new Map<QuestionSource, readonly QuestionInstance[]>();
  for (const [ask, sameKind] of byKind) {
    const all = listed.get(ask) ?? [];
    const kept = all.filter((instance) => !told.has(instance.asks));
    const pool = kept.length >= sameKind.length ? kept : all;
    if (pool.length > kept.length) reportTold(ask, sameKind, facts, report);
    reportShortage(ask, sameKind, pool.length, groups, facts, report);
    const usable = sameKind.slice(0, pool.length);
    const hands = dealHands(pool, usable.length, groups, createRandom(`${seed}\n${ask}`));
    usable.forEach((source, row) => {
      dealt.set(source, hands[row] ?? []);
    });
  }
  return dealt;
}

/** A hand for each question: an instance a group. */
function dealHands(
  pool: readonly QuestionInstance[],
  rows: number,
  groups: number,
  random: Random,
): (readonly QuestionInstance[])[] {
  // No instance is seen twice in the room. Where that cannot be, or not evenly: neighbouring rows of a Latin square.
  const apart = findHandsApart(pool, rows, groups, random);
  if (apart !== undefined) return apart;
  const shared = drawEvenBand(pool, Math.min(pool.length, Math.max(groups, rows)), random);
  return Array.from({ length: rows }, (_, row) =>
    Array.from({ length: groups }, (_, group) => shared[(group + row) % shared.length]).filter(
      (instance) => instance !== undefined,
    ),
  );
}

function findHandsApart(
  pool: readonly QuestionInstance[],
  rows: number,
  groups: number,
  random: Random,
): QuestionInstance[][] | undefined {
  let left = pool;
  const hands: QuestionInstance[][] = [];
  while (hands.length < rows) {
    if (left.length < groups) return undefined;
    const hand = drawEvenBand(left, groups, random);
    if (!isEven(hand)) return undefined;
    hands.push(hand);
    left = left.filter((instance) => !hand.includes(instance));
  }
  return hands;
}

function isComputed(source: QuestionSource): source is ComputedSource {
  return source.kind === 'computed';
}

function groupByKind(sources: readonly ComputedSource[]): Map<ComputedKind, ComputedSource[]> {
  const byKind = new Map<ComputedKind, ComputedSource[]>();
  for (const source of sources) byKind.set(source.ask, [...(byKind.get(source.ask) ?? []), source]);
  return byKind;
}

function reportTold(ask: ComputedKind, [source]: readonly ComputedSource[], { from, to }: QuizFacts, report: Report) {
  if (source === undefined) return;
  report({
    rule: 'quiz-question',
    severity: 'warning',
    place: source.place,
    message: `\`ask=${ask}\` finds too little to ask from \`${from}\` to \`${to}\` but nights that a handout or another question names, expected questions whose answers the learners do not have on paper; take nights out of the handouts or use another \`ask\`.`,
  });
}

function reportShortage(
  ask: ComputedKind,
  sources: readonly ComputedSource[],
  available: number,
  groups: number,
  facts: QuizFacts,
  report: Report,
): void {
  sources.forEach((source, row) => {
    const fault = describeShortage(ask, row, available, groups, `from \`${facts.from}\` to \`${facts.to}\``);
    if (fault === undefined) return;
    const expected = String(row >= available ? row + 1 : groups);
    report({ rule: 'quiz-question', place: source.place, found: String(available), expected, ...fault });
  });
}

function describeShortage(
  ask: ComputedKind,
  row: number,
  available: number,
  groups: number,
  dates: string,
): { severity: 'error' | 'warning'; message: string } | undefined {
  if (available === 0) {
    return {
      severity: 'error',
      message: `\`ask=${ask}\` finds nothing to ask ${dates}, expected at least one question; use another \`ask\` or write the question by hand.`,
    };
  }
  if (row >= available) {
    return {
      severity: 'error',
      message: `This quiz has \`ask=${ask}\` \`${row + 1}\` times up to here and \`${available}\` different questions for it ${dates}, expected one each time; take it out or use another \`ask\`.`,
    };
  }
  if (available < groups) {
    return {
      severity: 'warning',
      message: `\`ask=${ask}\` has \`${available}\` different questions ${dates}, expected \`${groups}\`, one a group; some groups get the same, so seat them apart, ask for fewer groups or use another \`ask\`.`,
    };
  }
  return undefined;
}
