import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { createLabels } from '../../../src/content/labels.ts';
import { stringifyHast } from '../../../src/lesson/stringify-hast.ts';
import { openBlanks } from '../../../src/pack/pages/open-blanks.ts';

const open = (...nodes: ElementContent[]) =>
  stringifyHast({ type: 'root', children: openBlanks(nodes, createLabels('en'), {}) });

const VOICE = '<span class="visually-hidden">Write here:</span>';

describe('openBlanks', () => {
  it('makes a line of underscores in a sentence, as long as they are', () => {
    expect(open(h('p', 'The Sun is ________ today.'))).toBe(
      `<p>The Sun is ${VOICE}<span class="blank" aria-hidden="true">________</span> today.</p>`,
    );
  });

  it('makes a whole line where a paragraph is nothing else', () => {
    expect(open(h('p', '________'))).toBe(`<p>${VOICE}<span class="blank-line"></span></p>`);
  });

  it('makes a box of a cell that is nothing else', () => {
    expect(open(h('table', [h('tr', [h('td', ' ____ '), h('td', 'by ____')])]))).toContain(`<td></td><td>by ${VOICE}`);
  });

  it('leaves few underscores, code and drawings as they are', () => {
    const nodes: Element[] = [h('p', 'a ___ b'), h('p', [h('code', '_____')]), h('svg', [h('title', '_____')])];
    expect(open(...nodes)).toBe(stringifyHast({ type: 'root', children: nodes }));
  });
});
