import type { Element, Root } from 'hast';
import { describe, expect, it } from 'vitest';
import { partStore, shareElement } from '../../src/drawing/shared-elements.ts';
import { svgElement } from '../../src/drawing/svg-element.ts';
import { stringifyHast } from '../../src/lesson/stringify-hast.ts';

const part = (): Element =>
  svgElement('g', { className: ['part'], strokeWidth: 2, strokeLinecap: 'round' }, [
    svgElement('path', { d: 'M0 0h1', vectorEffect: 'non-scaling-stroke' }),
    svgElement('title', {}, ['Fish & "net" <one>']),
  ]);

const page = (drawing: Element): Root => ({
  type: 'root',
  children: [
    { type: 'element', tagName: 'p', properties: {}, children: [{ type: 'text', value: 'a < b' }] },
    svgElement('svg', { viewBox: '0 0 1 1' }, [drawing, svgElement('defs', {}, [drawing])]),
  ],
});

describe('stringifyHast', () => {
  it('writes a shared element as it writes any other, each time it stands in a tree', () => {
    const shared = shareElement(part());
    const expected = stringifyHast(page(part()));
    expect(expected).toContain('stroke-linecap="round"');
    expect(stringifyHast(page(shared))).toBe(expected);
    expect(stringifyHast(page(shared))).toBe(expected);
  });

  it('writes an element that holds a shared one, and is shared itself', () => {
    const inner = shareElement(part());
    const outer = (child: Element) => svgElement('g', { fill: 'none' }, [child]);
    expect(stringifyHast(page(shareElement(outer(inner))))).toBe(stringifyHast(page(outer(part()))));
  });

  it('writes shared elements of one text once where there is a store, whichever objects they are', () => {
    const [one, other] = [shareElement(part()), shareElement(part())];
    const alone = stringifyHast(page(one));
    const stored: Root = { type: 'root', children: [...page(one).children, ...page(other).children, partStore] };
    const text = stringifyHast(stored);
    expect(text.match(/M0 0h1/g)).toHaveLength(1);
    expect(text.match(/<use href="#drawn-1"\/>/g)).toHaveLength(4);
    expect(text).toMatch(/<svg class="figure-store" aria-hidden="true"><g id="drawn-1" class="part".*<\/g><\/svg>$/);
    expect(stringifyHast(stored)).toBe(text);
    expect(stringifyHast(page(one))).toBe(alone);
  });

  it('leaves the store out where nothing stands twice', () => {
    const once: Root = { type: 'root', children: [svgElement('svg', {}, [shareElement(part())]), partStore] };
    expect(stringifyHast(once)).toBe(stringifyHast({ type: 'root', children: once.children.slice(0, 1) }));
  });

  it('does not let raw nodes through, and changes nothing that is given', () => {
    const tree: Root = {
      type: 'root',
      children: [
        {
          type: 'element',
          tagName: 'div',
          properties: {},
          children: [{ type: 'raw', value: '<script>alert(1)</script>' }, shareElement(part())],
        },
        { type: 'raw', value: '<b>' },
      ],
    };
    const before = structuredClone(tree);
    const text = stringifyHast(tree);
    expect(text).not.toMatch(/<script|<b>/);
    expect(text).toContain('&#x3C;script>');
    expect(tree).toEqual(before);
  });
});
