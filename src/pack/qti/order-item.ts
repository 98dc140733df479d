import { renderChoice } from './choice-item.ts';
import { RESPONSE, SCORE } from './declarations.ts';
import {
  type ItemContext,
  type ItemParts,
  nameChoice,
  type QuestionOf,
  renderPrompt,
  requirePlace,
} from './item-parts.ts';
import { isSame, readVariable, setOutcome, shareMarks, when, writeIdentifier, writeNumber } from './processing.ts';
import { type XmlElement, xmlElement } from './xml-element.ts';

/** Things to put in order, shown as on the paper. For one mark all must be right; else each right place is a point. */
export function renderOrderItem({ question, space, expected }: QuestionOf<'order'>, context: ItemContext): ItemParts {
  const correct = expected.items.map(({ letter }) => nameChoice(requirePlace(letter, space.items)));
  return {
    response: { cardinality: 'ordered', baseType: 'identifier', correct },
    body: [
      xmlElement('qti-order-interaction', { 'response-identifier': RESPONSE, shuffle: false }, [
        renderPrompt(question.prompt, context.pictures),
        ...space.items.map((item, index) => renderChoice(item, index, context)),
      ]),
    ],
    processing: question.marks === 1 ? scoreAll() : scorePlaces(correct, question.marks),
    feedback: [],
  };
}

function scoreAll(): XmlElement[] {
  const isRight = isSame(readVariable(RESPONSE), xmlElement('qti-correct', { identifier: RESPONSE }));
  return [when(isRight, [setOutcome(SCORE, writeNumber(1))], [setOutcome(SCORE, writeNumber(0))])];
}

function scorePlaces(correct: readonly string[], marks: number): XmlElement[] {
  const { worth, settle } = shareMarks(marks, correct.length);
  const onePoint = setOutcome(SCORE, xmlElement('qti-sum', {}, [readVariable(SCORE), writeNumber(worth)]));
  const places = correct.map((identifier, index) => {
    const there = xmlElement('qti-index', { n: index + 1 }, [readVariable(RESPONSE)]);
    return when(isSame(there, writeIdentifier(identifier)), [onePoint]);
  });
  const settled = settle === undefined ? [] : [setOutcome(SCORE, settle(readVariable(SCORE)))];
  return [setOutcome(SCORE, writeNumber(0)), ...places, ...settled];
}
