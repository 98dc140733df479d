import type { ElementContent } from 'hast';
import type { Report } from '../content/diagnostic.ts';
import { checkQuestion } from './check-question.ts';
import { copyContent } from './copy-content.ts';
import { type DealtInstances, dealInstances } from './deal-instances.ts';
import { type DrawnQuestion, drawComputed, drawWritten } from './draw-question.ts';
import type { KeyPaper, LearnerPaper, QuestionSource, QuizFacts, QuizSheet } from './model.ts';
import { type Placing, placeAnswers } from './place-answers.ts';
import { createRandom, type Random } from './random.ts';
import { renderKeyAnswer, renderLearnerQuestion } from './render-question.ts';

/** What papers are dealt from. */
export interface DealRequest {
  readonly title: string;
  /** 1-based among the lesson's quizzes. */
  readonly number: number;
  readonly minutes?: number;
  /** For every group, before the first question; left out, there is none. */
  readonly introduction?: readonly ElementContent[];
  /** The questions in order. */
  readonly sources: readonly QuestionSource[];
  /** Names of the groups; a paper for each. */
  readonly groups: readonly string[];
  /** Any text; the same seed deals the same papers from the same questions. */
  readonly seed: string;
  readonly facts: QuizFacts;
  readonly report: Report;
}

/**
 * Deals a paper and a key for each group: the same kinds of question with the same marks, other instances of the computed
 * ones, options in another order. A question that cannot be asked is reported and left out of all papers.
 * Papers and keys share no part of any tree.
 */
export function dealPapers(request: DealRequest): QuizSheet {
  const { sources, groups, seed, facts, report } = request;
  const checked = sources.filter((source) => checkQuestion(source, report));
  const instances = dealInstances(checked, groups.length, facts, seed, report);
  const asked = checked.filter((source) => source.kind !== 'computed' || instances.has(source));
  const written = new Map(asked.flatMap((source) => drawIfWritten(source, facts)));
  let before: readonly Placing[] = [];
  const dealt = groups.map((name, group) => {
    const random = createRandom(`${seed}\npaper ${group + 1}`);
    const drawn = asked.map((source) => written.get(source) ?? drawDealt(source, instances, group, random));
    const beside = before.map((placing, place) => (isShared(asked[place], instances, group) ? placing : []));
    const placings = placeAnswers(drawn, `${seed}\nplaces of paper ${group + 1}`, beside);
    before = placings;
    return dealPaper(request, name, drawn, placings);
  });
  return {
    title: request.title,
    number: request.number,
    ...keepMinutes(request),
    papers: dealt.map(({ paper }) => paper),
    key: dealt.map(({ key }) => key),
  };
}

/** Whether a group is asked the same as the one before it. */
function isShared(source: QuestionSource | undefined, instances: DealtInstances, group: number): boolean {
  if (source?.kind !== 'computed') return true;
  const hand = instances.get(source);
  return hand?.[group] === hand?.[group - 1];
}

function keepMinutes({ minutes }: DealRequest): { readonly minutes?: number } {
  return minutes === undefined ? {} : { minutes };
}

/** Handwritten questions are the same for all groups, so they are drawn once. */
function drawIfWritten(source: QuestionSource, facts: QuizFacts): (readonly [QuestionSource, DrawnQuestion])[] {
  return source.kind === 'computed' ? [] : [[source, drawWritten(source, facts.calendar)]];
}

function drawDealt(source: QuestionSource, instances: DealtInstances, group: number, random: Random): DrawnQuestion {
  const instance = instances.get(source)?.[group];
  if (source.kind !== 'computed' || instance === undefined) {
    throw new Error(`No instance of a computed question was dealt to group ${group + 1}.`);
  }
  return drawComputed(source, instance, random);
}

function dealPaper(
  request: DealRequest,
  group: string,
  drawn: readonly DrawnQuestion[],
  placings: readonly Placing[],
): { paper: LearnerPaper; key: KeyPaper } {
  const totalMarks = drawn.reduce((sum, { marks }) => sum + marks, 0);
  const questions = drawn.map((question, place) => renderLearnerQuestion(question, place + 1, placings[place] ?? []));
  const answers = drawn.map((question, place) => renderKeyAnswer(question, place + 1, placings[place] ?? []));
  return {
    paper: {
      title: request.title,
      group,
      ...keepMinutes(request),
      introduction: copyContent(request.introduction ?? []),
      questions,
      totalMarks,
    },
    key: { group, answers, totalMarks },
  };
}
