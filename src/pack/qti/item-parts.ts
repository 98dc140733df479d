import type { ElementContent } from 'hast';
import type { Labels } from '../../content/labels.ts';
import type { AnswerSpace, ExpectedAnswer, LearnerQuestion } from '../../quiz/model.ts';
import type { ResponseFacts } from './declarations.ts';
import type { PictureStore } from './picture-store.ts';
import { renderFlow } from './render-flow.ts';
import { type XmlContent, type XmlElement, xmlElement } from './xml-element.ts';

/** What items are made with. */
export interface ItemContext {
  readonly labels: Labels;
  readonly pictures: PictureStore;
}

/** A question with its answer, both of one kind. */
export interface QuestionOf<Kind extends AnswerSpace['kind']> {
  readonly question: LearnerQuestion;
  readonly space: Extract<AnswerSpace, { readonly kind: Kind }>;
  readonly expected: Extract<ExpectedAnswer, { readonly kind: Kind }>;
}

/** A text that an answer brings: what a wrong answer means. */
export interface FeedbackText {
  /** The value of the outcome that shows it. */
  readonly identifier: string;
  readonly content: readonly ElementContent[];
}

/** What a kind of question brings to its item; the rest is the same for all. */
export interface ItemParts {
  readonly response: ResponseFacts;
  readonly body: readonly XmlContent[];
  /** Rules that give the marks and the feedback; none where a person marks. */
  readonly processing: readonly XmlElement[];
  readonly feedback: readonly FeedbackText[];
}

/** The question's own words, within what a learner answers in. */
export function renderPrompt(content: readonly ElementContent[], pictures: PictureStore): XmlElement {
  return xmlElement('qti-prompt', {}, renderFlow(content, pictures));
}

/** Names of the things to choose from: by their place as shown, which tells nothing of what is right. */
export function nameChoice(index: number): string {
  return `choice-${index + 1}`;
}

/** The place, from 0, of a letter among lettered things; both come from one paper. */
export function requirePlace(letter: string, among: readonly { readonly letter: string }[]): number {
  const place = among.findIndex((each) => each.letter === letter);
  if (place < 0) throw new Error(`The key names ${letter}, which is not on the paper.`);
  return place;
}
