import type { ElementContent } from 'hast';
import { USUAL_LINES } from '../../content/question-words.ts';
import type { BankOption, BankPair, BankQuestion } from '../../content/types.ts';
import { quote } from '../../content/wording.ts';
import type { MatchedPair, WrittenOption, WrittenSource } from '../../quiz/model.ts';
import type { ResolveContext, WrittenDirective } from '../definition.ts';
import { requireDrawnNight } from './find-night.ts';
import type { GivenValues } from './read-common.ts';
import { drawNight } from './read-drawing.ts';
import { readForgiveness } from './read-short.ts';
import { reportQuestion } from './report-question.ts';

/** How a lesson uses a question of a questions file; what it gives goes before what the file says. */
export interface BankUse extends GivenValues {
  /** File and question, as in `estuary/hidden-moon`. */
  readonly name: string;
  readonly written: WrittenDirective;
}

/** A question of a questions file as a lesson asks it; undefined where it cannot, which is then reported. */
export function convertBankQuestion(
  question: BankQuestion,
  use: BankUse,
  context: ResolveContext,
): WrittenSource | undefined {
  const { working } = question;
  const marks = use.marks ?? question.marks;
  const hint = use.hint ?? question.hint;
  const common = {
    place: use.written.place,
    prompt: toContent(question.ask),
    ...(marks === undefined ? {} : { marks }),
    ...(working === undefined ? {} : { working }),
    ...(hint === undefined ? {} : { hint }),
  };
  switch (question.kind) {
    case 'choice':
      return { kind: 'choice', ...common, options: question.options.map(convertOption) };
    case 'short':
      return { kind: 'short', ...common, answers: question.answers, forgive: readForgiveness(question.forgive) };
    case 'order':
      return { kind: 'order', ...common, items: question.order.map(toContent) };
    case 'match': {
      const { left, right } = convertPair(question.headings);
      return { kind: 'match', ...common, headings: [left, right], pairs: question.pairs.map(convertPair) };
    }
    case 'open': {
      const { rubric, lines = USUAL_LINES } = question;
      if (reportOtherMarks(rubric[0]?.marks, use, context)) return undefined;
      return { kind: 'open', ...common, lines, rubric };
    }
    case 'draw': {
      const called = `${quote(`draw: ${question.draw}`)} of \`${use.name}\``;
      const record = requireDrawnNight(
        { text: question.draw, place: use.written.attributePlace('use'), called },
        context,
      );
      return record && { kind: 'draw', ...common, ...drawNight(record, context) };
    }
  }
}

function toContent(text: string): ElementContent[] {
  return [{ type: 'text', value: text }];
}

function convertOption({ text, right, means }: BankOption): WrittenOption {
  return { content: toContent(text), right, ...(means === undefined ? {} : { means: toContent(means) }) };
}

function convertPair({ left, right }: BankPair): MatchedPair {
  return { left: toContent(left), right: toContent(right) };
}

function reportOtherMarks(most: number | undefined, { marks, written }: BankUse, context: ResolveContext): boolean {
  if (marks === undefined || marks === most) return false;
  const found = `\`marks=${marks}\` for a question whose rubric gives \`${most}\` at most`;
  reportQuestion(context, written.attributePlace('marks'), found, 'the marks of the rubric', 'take `marks` out');
  return true;
}
