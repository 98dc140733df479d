import type { Report } from '../content/diagnostic.ts';
import type { ComputedKind, QuestionSource, QuizFacts } from './model.ts';
import type { QuestionInstance } from './questions/question-instance.ts';
import { QUESTION_KINDS } from './questions/question-kinds.ts';
import { createRandom, shuffle } from './random.ts';

type ComputedSource = QuestionSource & { kind: 'computed' };

/** The instances of each computed question, one a group, in the order of the groups. */
export type DealtInstances = ReadonlyMap<QuestionSource, readonly QuestionInstance[]>;

/**
 * Deals the instances of the computed questions to the groups. No paper gets an instance twice, and groups get different
 * ones as far as there are enough; where there are not, some groups share one and a warning `quiz-question` says so.
 * A question whose paper could not get an instance of its own is an error, and has no entry.
 * An instance whose answer stands in the words of another question of the quiz is used only when there is no other.
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
  const told = new Set(Array.from(listed.values()).flatMap((instances) => instances.flatMap(({ tells }) => tells)));
  const dealt = new Map<QuestionSource, readonly QuestionInstance[]>();
  for (const [ask, sameKind] of byKind) {
    const all = listed.get(ask) ?? [];
    const kept = all.filter((instance) => !told.has(instance.asks));
    const pool = shuffle(kept.length > 0 ? kept : all, createRandom(`${seed}\n${ask}`));
    reportShortage(ask, sameKind, pool.length, groups, facts, report);
    const usable = sameKind.slice(0, pool.length);
    // Enough for all: no instance is seen twice in the room. Else neighbouring rows of a Latin square.
    const step = pool.length >= usable.length * groups ? groups : 1;
    usable.forEach((source, row) => {
      const hand = Array.from({ length: groups }, (_, group) => pool[(group + row * step) % pool.length]);
      dealt.set(
        source,
        hand.filter((instance) => instance !== undefined),
      );
    });
  }
  return dealt;
}

function isComputed(source: QuestionSource): source is ComputedSource {
  return source.kind === 'computed';
}

function groupByKind(sources: readonly ComputedSource[]): Map<ComputedKind, ComputedSource[]> {
  const byKind = new Map<ComputedKind, ComputedSource[]>();
  for (const source of sources) byKind.set(source.ask, [...(byKind.get(source.ask) ?? []), source]);
  return byKind;
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
    const fault = describeShortage(ask, row, available, groups, `\`${facts.from}\` to \`${facts.to}\``);
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
      message: `\`ask=${ask}\` finds nothing to ask in the week ${dates}, expected at least one question; use another \`ask\` or write the question by hand.`,
    };
  }
  if (row >= available) {
    return {
      severity: 'error',
      message: `This quiz has \`ask=${ask}\` \`${row + 1}\` times up to here and \`${available}\` different questions for it in the week ${dates}, expected one each time; take it out or use another \`ask\`.`,
    };
  }
  if (available < groups) {
    return {
      severity: 'warning',
      message: `\`ask=${ask}\` has \`${available}\` different questions in the week ${dates}, expected \`${groups}\`, one a group; some groups get the same, so seat them apart, ask for fewer groups or use another \`ask\`.`,
    };
  }
  return undefined;
}
