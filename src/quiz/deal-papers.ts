import type { ElementContent } from 'hast';
import type { Report } from '../content/diagnostic.ts';
import { checkQuestion } from './check-question.ts';
import { copyContent } from './copy-content.ts';
import { type DealtInstances, dealInstances } from './deal-instances.ts';
import { type DrawnQuestion, drawComputed, drawWritten } from './draw-question.ts';
import type {
  AnswerSpace,
  KeyAnswer,
  KeyPaper,
  LearnerPaper,
  LearnerQuestion,
  QuestionSource,
  QuizFacts,
  QuizSheet,
} from './model.ts';
import { orderOptions } from './option-order.ts';
import type { QuestionInstance } from './questions/question-instance.ts';
import { createRandom } from './random.ts';

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
  const dealt = groups.map((name, group) => {
    const random = createRandom(`${seed}\npaper ${group + 1}`);
    const drawn = asked.map(
      (source) => written.get(source) ?? drawComputed(source, requireInstance(instances, source, group), facts, random),
    );
    return dealPaper(request, name, drawn, orderAllOptions(asked, drawn, seed, group));
  });
  return {
    title: request.title,
    number: request.number,
    ...keepMinutes(request),
    papers: dealt.map(({ paper }) => paper),
    key: dealt.map(({ key }) => key),
  };
}

function keepMinutes({ minutes }: DealRequest): { readonly minutes?: number } {
  return minutes === undefined ? {} : { minutes };
}

/** Handwritten questions are the same for all groups, so they are drawn once. */
function drawIfWritten(source: QuestionSource, facts: QuizFacts): (readonly [QuestionSource, DrawnQuestion])[] {
  return source.kind === 'computed' ? [] : [[source, drawWritten(source, facts.calendar)]];
}

function requireInstance(instances: DealtInstances, source: QuestionSource, group: number): QuestionInstance {
  const instance = instances.get(source)?.[group];
  if (instance === undefined) throw new Error(`No instance of a computed question was dealt to group ${group + 1}.`);
  return instance;
}

function dealPaper(
  request: DealRequest,
  group: string,
  drawn: readonly DrawnQuestion[],
  ordered: readonly PlacedOption[][],
): { paper: LearnerPaper; key: KeyPaper } {
  const totalMarks = drawn.reduce((sum, { marks }) => sum + marks, 0);
  const questions = drawn.map((question, place) => renderLearnerQuestion(question, place + 1, ordered[place] ?? []));
  const answers = drawn.map((question, place) => renderKeyAnswer(question, place + 1, ordered[place] ?? []));
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

/** An option in its place on the paper. Never handed to a learner's model as it is. */
interface PlacedOption {
  readonly letter: string;
  readonly content: ElementContent[];
  readonly right: boolean;
}

/** The options of each question in the order of a paper; none for a written answer. */
function orderAllOptions(
  asked: readonly QuestionSource[],
  drawn: readonly DrawnQuestion[],
  seed: string,
  paper: number,
): PlacedOption[][] {
  return drawn.map(({ answer }, question) => {
    if (answer.kind === 'line') return [];
    const right = answer.right.map((content) => ({ content: copyContent(content), right: true }));
    const wrong = answer.wrong.map((content) => ({ content: copyContent(content), right: false }));
    const shared = asked[question]?.kind !== 'computed';
    const ordered = orderOptions([...right, ...wrong], { seed, question, paper, shared });
    return ordered.map((option, place) => ({ ...option, letter: String.fromCharCode(FIRST_LETTER + place) }));
  });
}

/** Code of "A". */
const FIRST_LETTER = 65;

function renderLearnerQuestion(
  question: DrawnQuestion,
  number: number,
  placed: readonly PlacedOption[],
): LearnerQuestion {
  return { number, prompt: copyContent(question.prompt), marks: question.marks, space: renderSpace(question, placed) };
}

function renderSpace({ answer }: DrawnQuestion, placed: readonly PlacedOption[]): AnswerSpace {
  if (answer.kind === 'line') return answer.unit === undefined ? { kind: 'line' } : { kind: 'line', unit: answer.unit };
  const options = placed.map(({ letter, content }) => ({ letter, content: copyContent(content) }));
  return { kind: 'options', several: answer.right.length > 1, options };
}

function renderKeyAnswer(question: DrawnQuestion, number: number, placed: readonly PlacedOption[]): KeyAnswer {
  const right = placed.filter((option) => option.right);
  const answers = question.answer.kind === 'line' ? question.answer.accepted : right.map(({ content }) => content);
  return {
    number,
    prompt: copyContent(question.prompt),
    letters: right.map(({ letter }) => letter),
    answers: answers.map(copyContent),
    working: copyContent(question.working),
    marks: question.marks,
  };
}
