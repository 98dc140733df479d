import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Labels } from '../../content/labels.ts';
import type { KeyAnswer } from '../../quiz/model.ts';
import { renderExpected } from './key-expected.ts';

/** A question with its answer, how to find it, what wrong answers mean, and its marks. @param id Unique on the page. */
export function renderKeyAnswer(answer: KeyAnswer, id: string, labels: Labels): Element {
  const { expected, working, hint } = answer;
  return h('li', { value: answer.number, id }, [
    h('div', { className: ['key-answer'] }, [
      h('div', { className: ['key-words'] }, [
        h('div', { className: ['key-prompt'] }, answer.prompt),
        ...renderExpected(expected, labels),
        ...renderLed('key-say', labels.text('key-say'), 'key-working', working),
        ...renderLed('key-hint', labels.text('key-hint'), 'key-hint-words', toContent(hint)),
      ]),
      h('p', { className: ['marks'] }, labels.count('marks', answer.marks)),
    ]),
  ]);
}

/** What is for the teacher to say, after a word for when to say it; nothing where there is nothing to say. */
function renderLed(className: string, lead: string, innerName: string, words: ElementContent[]): Element[] {
  if (words.length === 0) return [];
  return [h('div', { className: [className] }, [h('b', lead), ' ', h('div', { className: [innerName] }, words)])];
}

function toContent(text: string | undefined): ElementContent[] {
  return text === undefined ? [] : [{ type: 'text', value: text }];
}
