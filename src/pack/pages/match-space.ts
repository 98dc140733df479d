import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Labels } from '../../content/labels.ts';
import type { AnswerSpace, LetteredContent } from '../../quiz/model.ts';
import { type Arrangement, arrangeContents, nameArrangement } from './arrange-lettered.ts';
import { holdsPicture } from './holds-picture.ts';
import { renderLetterBox } from './letter-box.ts';

type MatchSpace = Extract<AnswerSpace, { readonly kind: 'match' }>;

/**
 * Numbered things with a box each, and lettered ones. Words stand side by side, row by row; where a side has pictures it
 * stands below the other, so that they get the whole width.
 */
export function renderMatchSpace({ headings, left, right }: MatchSpace, labels: Labels): Element {
  const rightContents = right.map(({ content }) => content);
  const isStacked = [...left, ...rightContents].some(holdsPicture);
  return h('div', { className: isStacked ? ['match', 'stacked'] : ['match'] }, [
    h('div', { className: ['match-side'] }, [
      ...renderHeading(headings?.[0]),
      h(
        'ol',
        { className: ['match-left', 'plain-list', ...nameColumns(left, isStacked)] },
        left.map((content, index) => renderNumbered(content, index + 1, labels)),
      ),
    ]),
    h('div', { className: ['match-side'] }, [
      ...renderHeading(headings?.[1]),
      h(
        'ul',
        { className: ['match-right', 'plain-list', ...nameColumns(rightContents, isStacked)] },
        right.map(renderLettered),
      ),
    ]),
  ]);
}

/** Beside each other, each side is one column. Stacked, words have room for two and their boxes. */
function nameColumns(contents: readonly ElementContent[][], isStacked: boolean): string[] {
  const { columns, pictures } = arrangeContents(contents);
  const stacked: Arrangement = { columns: pictures || columns === 1 ? columns : 2, pictures };
  return nameArrangement(isStacked ? stacked : { columns: 1, pictures });
}

function renderHeading(heading: ElementContent[] | undefined): Element[] {
  return heading === undefined || heading.length === 0 ? [] : [h('p', { className: ['match-heading'] }, heading)];
}

/** The box stands before the words, beside its number; those who hear the page hear the words first. */
function renderNumbered(content: ElementContent[], number: number, labels: Labels): Element {
  return h('li', [
    h('span', { className: ['match-number'] }, `${number}. `),
    h('div', { className: ['option'] }, content),
    renderLetterBox(labels),
  ]);
}

function renderLettered({ letter, content }: LetteredContent): Element {
  return h('li', [h('span', { className: ['letter'] }, `${letter} `), h('div', { className: ['option'] }, content)]);
}
