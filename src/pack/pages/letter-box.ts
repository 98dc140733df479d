import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Labels } from '../../content/labels.ts';

/** A box to write a letter in. */
export function renderLetterBox(labels: Labels): Element {
  return h('span', { className: ['letter-box'] }, [renderUnseen(`${labels.text('letter-box')} `)]);
}

/** Words for those who hear the page: what a blank space on it is for. */
export function renderUnseen(words: string): Element {
  return h('span', { className: ['visually-hidden'] }, words);
}
