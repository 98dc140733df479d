import type { Element, ElementContent } from 'hast';
import { describe, expect, it } from 'vitest';
import { shareElement } from '../../src/drawing/shared-elements.ts';
import { copyContent } from '../../src/quiz/copy-content.ts';
import { text } from './quiz-helpers.ts';

const element = (properties: Element['properties'], children: ElementContent[] = []): Element => {
  return { type: 'element', tagName: 'span', properties, children };
};

describe('copyContent', () => {
  it('shares no object with what it copies', () => {
    const original = [element({ className: ['a', 'b'], lang: 'x-fake' }, [element({}, text('Round Moon'))])];
    const copies = copyContent(original);
    expect(copies).toEqual(original);
    const listObjects = (value: unknown): object[] =>
      typeof value === 'object' && value !== null ? [value, ...Object.values(value).flatMap(listObjects)] : [];
    const all = [...listObjects(original), ...listObjects(copies)];
    expect(new Set(all).size).toBe(all.length);
  });

  it('leaves out all that tells how it was written', () => {
    const position = { start: { line: 7, column: 1 }, end: { line: 7, column: 9 } };
    const telling: ElementContent[] = [
      { type: 'comment', value: 'right' },
      { type: 'element', tagName: 'input', properties: { type: 'checkbox', checked: true }, children: [] },
      {
        ...element({ checked: true, selected: true, value: '2', dataRight: 'yes', title: 'kept' }),
        position,
        data: {},
      },
      { type: 'text', value: 'the Sun', position },
    ];
    expect(copyContent(telling)).toEqual([element({ title: 'kept' }), ...text('the Sun')]);
  });

  it('keeps a shared drawing as it is, so that its text is written once for all papers', () => {
    const drawing = shareElement(element({ fill: 'none' }));
    const [copy] = copyContent([element({}, [drawing])]);
    expect(copy?.type === 'element' && copy.children[0]).toBe(drawing);
  });
});
