import fc from 'fast-check';
import type { Element, ElementContent, Root } from 'hast';
import rehypeStringify from 'rehype-stringify';
import { unified } from 'unified';
import { describe, expect, it } from 'vitest';
import { stringifyHast } from '../../src/lesson/stringify-hast.ts';

/** A general writer of HTML, told to write as ours does. */
const WRITER = unified()
  .use(rehypeStringify, { quote: '"', omitOptionalTags: false, closeSelfClosing: false, allowParseErrors: false })
  .freeze();

const text = fc.oneof(
  fc.string(),
  fc.string({ unit: 'binary' }),
  fc.constantFrom('<', '&amp;', '"\'`', '-->', '<!--', '->', '>', '</style>', '\0', 'é & ō'),
);
const value = fc.oneof(
  text,
  fc.array(text, { maxLength: 3 }),
  fc.boolean(),
  fc.integer(),
  fc.double(),
  fc.constant(null),
);
const property = fc.constantFrom(
  ...['className', 'id', 'hidden', 'download', 'disabled', 'viewBox', 'strokeWidth', 'ariaLabel', 'ariaHidden', 'href'],
  ...[
    'dateTime',
    'tabIndex',
    'httpEquiv',
    'charSet',
    'accept',
    'dataFoo',
    'xmlLang',
    'xLinkHref',
    'fillOpacity',
    'for',
  ],
  ...['colSpan', 'checked', 'srcSet', 'odd name', 'a=b', 'textAnchor', 'role', 'lang'],
);
const tagName = fc.constantFrom(
  ...['p', 'div', 'br', 'img', 'svg', 'path', 'title', 'desc', 'foreignObject', 'style', 'script', 'a', 'li', 'tbody'],
  ...['input', 'g', 'meta', 'h1', 'html', 'head', 'body', 'textarea', 'pre', 'lesson-slot'],
);
const content = fc.letrec<{ node: ElementContent; element: Element }>((tie) => ({
  node: fc.oneof(
    { depthSize: 'medium' },
    fc.record({ type: fc.constant('text' as const), value: text }),
    fc.record({ type: fc.constant('comment' as const), value: text }),
    fc.record({ type: fc.constant('raw'), value: text }) as unknown as fc.Arbitrary<ElementContent>,
    tie('element'),
  ),
  element: fc.record({
    type: fc.constant('element' as const),
    tagName,
    properties: fc.dictionary(property, value, { maxKeys: 4 }),
    children: fc.array(tie('node'), { maxLength: 4 }),
  }),
})).node;

describe('stringifyHast', () => {
  it('writes any tree as the general writer does', () => {
    fc.assert(
      fc.property(fc.array(content, { maxLength: 4 }), (children) => {
        const tree: Root = { type: 'root', children: [{ type: 'doctype' }, ...children] };
        expect(stringifyHast(tree)).toBe(WRITER.stringify(tree));
      }),
      { numRuns: 1000 },
    );
  });

  it('writes nodes in a row', () => {
    expect(
      stringifyHast([
        { type: 'text', value: 'a < b' },
        { type: 'text', value: ' & c' },
      ]),
    ).toBe('a &#x3C; b &#x26; c');
  });

  it('refuses nodes that are no content of a page', () => {
    const node = { type: 'root', children: [] } as unknown as ElementContent;
    expect(() => stringifyHast([node])).toThrow('`root`');
  });
});
