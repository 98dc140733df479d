import fc from 'fast-check';
import type { Root } from 'mdast';
import { toString as readPlainText } from 'mdast-util-to-string';
import remarkParse from 'remark-parse';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';
import { describe, expect, it } from 'vitest';
import { createLessonParser } from '../../src/lesson/parse-lesson.ts';
import { renderMarkdown } from '../../src/lesson/render-markdown.ts';
import { stringifyHast } from '../../src/lesson/stringify-hast.ts';
import { readWrittenSyntax } from '../../src/lesson/written-directive.ts';
import { INLINE_NAMES } from './known-directives.ts';

const parse = createLessonParser(INLINE_NAMES);
const bare = unified().use(remarkParse).use(remarkRehype).freeze();

function renderAsProse(tree: Root): string {
  return stringifyHast(
    renderMarkdown(tree.children, {
      slot: ({ name }) => [{ type: 'text', value: `DIRECTIVE ${name}` }],
      tickTaskLists: false,
    }),
  );
}

function renderBare(text: string): string {
  return stringifyHast(bare.runSync(bare.parse(text)));
}

describe('prose with colons', () => {
  const lines = [
    'We begin at 9:30 and end at 10:15pm.',
    'Read John 3:16.',
    'A ratio of 3:2.',
    'Note:see below.',
    'Open https://x.org:80/a:b today.',
    'Then :night falls.',
    ':night',
    ':night :month',
    'Text :night [see] and :night {x}.',
    'Text :nights{x} and :Night{x} and :nigh[x].',
    'Text ::night{on=friday} and :::month{}',
    'std::step and a ::: b',
    ':',
    '\\:night{on=friday}',
    '`:night{on=friday}`',
  ];
  for (const line of lines) {
    it(`stays as written: ${line}`, () => {
      expect(renderAsProse(parse(line).tree)).toBe(renderBare(line));
    });
  }

  it('stays as written, whatever it is made of', () => {
    const piece = fc.oneof(
      {
        weight: 3,
        arbitrary: fc.constantFrom('9', '30', 'pm', 'word', 'John', 'night', 'sea', 'x.org', 'https', '//'),
      },
      { weight: 3, arbitrary: fc.constantFrom(':', '::', ':::') },
      fc.constantFrom(' ', ' ', '{', '}', '[', ']', '(', ')', '=', '"', '.', '-', '\n', 'é', '“'),
    );
    const prose = fc
      .array(piece, { maxLength: 40 })
      .map((pieces) => pieces.join(''))
      // A known name with a bracket right after it is a directive, and so may be a line that begins with colons.
      .filter((text) => !/:(?:night|month|sentence)[{[]/.test(text))
      .map((text) => `Word ${text.replace(/\n[ \t]*(?=:)/g, '\nword ')}`);
    fc.assert(
      fc.property(prose, (text) => {
        const { tree } = parse(text);
        expect(readPlainText(tree)).toBe(readPlainText(bare.parse(text)));
        expect(renderAsProse(tree)).toBe(renderBare(text));
      }),
      { seed: 20260727, numRuns: 2000 },
    );
  });
});

describe('directives', () => {
  it('are read in a line when a known name with braces or brackets follows the colon', () => {
    const { tree } = parse('On :night{on=friday}, :month[x] and Friday:sentence{}.');
    expect(renderAsProse(tree)).toBe('<p>On DIRECTIVE night, DIRECTIVE month and FridayDIRECTIVE sentence.</p>');
  });

  it('tell how they were written, with the place of every name and value, repeats included', () => {
    const { tree } = parse(
      'Text.\n\n:::step[Warm *up*]{minutes=5 minutes="six &amp; a half" .wide #one empty="" bare}\n:::\n',
    );
    const step = tree.children[1];
    if (step?.type !== 'containerDirective') throw new Error('Expected a container');
    const at = (column: number) => ({ line: 3, column, offset: column + 6 });
    expect(readWrittenSyntax(step)).toEqual({
      colons: 3,
      labelAt: at(8),
      closingAt: { line: 4, column: 1, offset: 89 },
      attributes: [
        { name: 'minutes', nameAt: at(20), value: '5', valueAt: at(28), valueEnd: 35, quoted: false },
        { name: 'minutes', nameAt: at(30), value: 'six & a half', valueAt: at(39), valueEnd: 61, quoted: true },
        { name: '.wide', nameAt: at(57), value: '', quoted: false },
        { name: '#one', nameAt: at(63), value: '', quoted: false },
        { name: 'empty', nameAt: at(68), value: '', valueAt: at(74), valueEnd: 82, quoted: true },
        { name: 'bare', nameAt: at(77), value: '', quoted: false },
      ],
    });
  });

  it('cannot reach the prototype of objects', () => {
    const { tree } = parse('::tonight{__proto__=a constructor=b toString=c}');
    const [node] = tree.children;
    if (node?.type !== 'leafDirective') throw new Error('Expected a leaf');
    expect(readWrittenSyntax(node).attributes.map(({ name, value }) => `${name}=${value}`)).toEqual([
      '__proto__=a',
      'constructor=b',
      'toString=c',
    ]);
    expect(Object.getPrototypeOf({})).toBe(Object.prototype);
  });

  it('have no closing fence noted when there is none', () => {
    const [node] = parse(':::teacher\nText.\n').tree.children;
    if (node?.type !== 'containerDirective') throw new Error('Expected a container');
    expect(readWrittenSyntax(node).closingAt).toBeUndefined();
  });
});

describe('createLessonParser', () => {
  it('gives the front matter and the line it begins on', () => {
    expect(parse('---\ntitle: A\nday: friday\n---\nText').frontMatter).toEqual({
      text: 'title: A\nday: friday',
      line: 2,
    });
    expect(parse('\uFEFF---\ntitle: A\n---\n').frontMatter).toEqual({ text: 'title: A', line: 2 });
  });

  it('finds no front matter where there is none', () => {
    expect(parse('Text\n\n---\ntitle: A\n---\n').frontMatter).toBeUndefined();
    expect(parse('').frontMatter).toBeUndefined();
  });

  it('gives the text that offsets count in', () => {
    const { source, tree } = parse('\uFEFF# A');
    expect(source).toBe('# A');
    expect(tree.children[0]?.position?.end.offset).toBe(3);
  });

  it('gathers link reference definitions wherever they stand, in order', () => {
    const { definitions } = parse('[a]: /1\n\n> [b]: /2\n\n:::teacher\n- [A]: /3\n:::\n');
    expect(definitions.map(({ identifier, url }) => `${identifier} ${url}`)).toEqual(['a /1', 'b /2', 'a /3']);
    expect(parse('Text').definitions).toEqual([]);
  });

  it('reads tables and task lists, and nothing more of the wider dialect', () => {
    const { tree } = parse('| a |\n|---|\n| b |\n\n- [x] c\n\n~~d~~ www.x.org [^1]\n\n[^1]: e\n');
    expect(tree.children.map(({ type }) => type)).toEqual(['table', 'list', 'paragraph', 'definition']);
  });

  it('finds tables with few pipes or none', () => {
    const types = (text: string) => parse(text).tree.children.map(({ type }) => type);
    expect(types('| a |\n| - |\n')).toEqual(['table']);
    expect(types('a\n:-\nb\n')).toEqual(['table']);
    expect(types('a\n-:\n')).toEqual(['table']);
    expect(types('a\n|-\n')).toEqual(['table']);
    expect(types('a\n-\n\nb\n---\n')).toEqual(['heading', 'heading']);
  });

  it('keeps two parsers apart', () => {
    const other = createLessonParser(['tide']);
    expect(renderAsProse(other('It is :tide{} and :night{}.').tree)).toBe('<p>It is DIRECTIVE tide and :night{}.</p>');
    expect(renderAsProse(parse('It is :tide{} and :night{}.').tree)).toBe('<p>It is :tide{} and DIRECTIVE night.</p>');
  });
});
