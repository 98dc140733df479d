import type { ElementContent } from 'hast';
import type { Calendar } from '../content/types.ts';
import { foldText } from './fold-text.ts';
import type { ComputedSource, Forgiveness, MatchedPair, RubricRow, Slip, WrittenSource } from './model.ts';
import type { QuestionInstance, WrongOption } from './questions/question-instance.ts';
import { pick, type Random } from './random.ts';
import { tagAllOrNone, tagName, tagNames } from './tag-names.ts';

/** The answer to a question, before anything is put in the order of a paper. */
export type DrawnAnswer =
  | { readonly kind: 'options'; readonly right: readonly ElementContent[][]; readonly wrong: readonly WrongOption[] }
  | {
      readonly kind: 'line';
      readonly unit?: string;
      readonly forgive: Forgiveness;
      readonly accepted: readonly (readonly ElementContent[])[];
      readonly slips: readonly Slip[];
    }
  | { readonly kind: 'order'; readonly items: readonly ElementContent[][] }
  | {
      readonly kind: 'match';
      readonly headings: readonly [left: ElementContent[], right: ElementContent[]] | undefined;
      readonly pairs: readonly MatchedPair[];
    }
  | { readonly kind: 'lines'; readonly lines: number; readonly rubric: readonly RubricRow[] }
  | { readonly kind: 'disc'; readonly renderDrawing: () => ElementContent[]; readonly description: string };

/** A question with all that a paper and its key need, before its parts are put in order. */
export interface DrawnQuestion {
  readonly prompt: ElementContent[];
  readonly marks: number;
  readonly working: ElementContent[];
  readonly hint?: string;
  readonly answer: DrawnAnswer;
}

/** Marks of a drawing where the author gives none: one for the shape, one for the side. Our own choice. */
const DRAWING_MARKS = 2;

/** A handwritten question as drawn; it passed `checkQuestion`. */
export function drawWritten(source: WrittenSource, calendar: Calendar): DrawnQuestion {
  const { prompt, working } = source;
  const answer = drawAnswer(source, calendar);
  return {
    prompt,
    marks: source.marks ?? countMarks(answer),
    working: working ? [{ type: 'text', value: working }] : [],
    ...keepHint(source),
    answer,
  };
}

function drawAnswer(source: WrittenSource, calendar: Calendar): DrawnAnswer {
  switch (source.kind) {
    case 'choice': {
      const options = tagAllOrNone(source.options, calendar);
      const right = options.filter((option) => option.right).map(({ content }) => content);
      const wrong = options.filter((option) => !option.right);
      return { kind: 'options', right, wrong: wrong.map(({ content, means = [] }) => ({ content, means })) };
    }
    case 'short': {
      const accepted = listSpellings(source.answers).map((spelling) => [tagName(spelling, calendar)]);
      return { kind: 'line', forgive: source.forgive, accepted, slips: [] };
    }
    case 'order':
      return { kind: 'order', items: source.items.map((item) => tagNames(item, calendar)) };
    case 'match': {
      const pairs = source.pairs.map(({ left, right }) => ({
        left: tagNames(left, calendar),
        right: tagNames(right, calendar),
      }));
      return { kind: 'match', headings: source.headings, pairs };
    }
    case 'open':
      return { kind: 'lines', lines: source.lines, rubric: source.rubric };
    case 'draw':
      return { kind: 'disc', renderDrawing: source.renderDrawing, description: source.description };
  }
}

/** What a question is worth where nobody says: a mark for each thing that can be right. */
function countMarks(answer: DrawnAnswer): number {
  switch (answer.kind) {
    case 'options':
      return answer.right.length;
    case 'match':
      return answer.pairs.length;
    case 'lines':
      return answer.rubric[0]?.marks ?? 1;
    case 'disc':
      return DRAWING_MARKS;
    default:
      return 1;
  }
}

/** A computed question as drawn. The set of wrong options is drawn too. */
export function drawComputed(source: ComputedSource, instance: QuestionInstance, random: Random): DrawnQuestion {
  const answer = drawInstance(instance, random);
  return {
    prompt: instance.renderPrompt(),
    marks: source.marks ?? countMarks(answer),
    working: instance.renderWorking(),
    ...keepHint(source),
    answer,
  };
}

function drawInstance(instance: QuestionInstance, random: Random): DrawnAnswer {
  switch (instance.kind) {
    case 'choice':
      return { kind: 'options', right: [instance.renderRight()], wrong: pick(instance.listWrongSets(), random) };
    case 'line': {
      const { unit, forgive } = instance;
      const answer = { kind: 'line', forgive, accepted: instance.listAnswers(), slips: instance.listSlips() } as const;
      return unit === undefined ? answer : { ...answer, unit };
    }
    case 'order':
      return { kind: 'order', items: instance.renderItems() };
    case 'match':
      return { kind: 'match', headings: undefined, pairs: instance.renderPairs() };
  }
}

function keepHint({ hint }: { readonly hint?: string }): { readonly hint?: string } {
  return hint === undefined ? {} : { hint };
}

/** Spellings that differ to a marker; the first of equal ones is kept. */
function listSpellings(answers: readonly string[]): string[] {
  const spellings = new Map<string, string>();
  for (const answer of answers) {
    const folded = foldText(answer);
    if (folded !== '' && !spellings.has(folded)) spellings.set(folded, answer.trim());
  }
  return [...spellings.values()];
}
