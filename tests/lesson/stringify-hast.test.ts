import type { Element, Root } from 'hast';
import { describe, expect, it } from 'vitest';
import { shareElement } from '../../src/drawing/shared-elements.ts';
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
