import { describe, expect, it } from 'vitest';
import type { Diagnostic } from '../../src/content/diagnostic.ts';
import { createLessonParser } from '../../src/lesson/parse-lesson.ts';
import { renderMarkdown } from '../../src/lesson/render-markdown.ts';
import { resolveReferences } from '../../src/lesson/resolve-references.ts';
import { stringifyHast } from '../../src/lesson/stringify-hast.ts';
import { INLINE_NAMES } from './known-directives.ts';

const parse = createLessonParser(INLINE_NAMES);

const PAGES = new Map([
  ['key.html', 'key.html'],
  ['friday.html', '5-friday.html'],
  ['5-friday.html', '5-friday.html'],
]);

function resolve(text: string): { html: string; messages: string[] } {
  const { tree, definitions } = parse(text);
  const found: Diagnostic[] = [];
  resolveReferences(tree, definitions, { pictures: [], pages: PAGES }, 'a.md', (each) => found.push(each));
  const html = stringifyHast(renderMarkdown(tree.children, { slot: () => [], tickTaskLists: false, definitions }));
  return { html, messages: found.map(({ message }) => message) };
}

describe('links to pages of the pack', () => {
  it.each([
    ['[a](friday.html)', '<p><a href="5-friday.html">a</a></p>'],
    ['[a](friday.html#step-2)', '<p><a href="5-friday.html#step-2">a</a></p>'],
    ['[a](friday.html?x#y)', '<p><a href="5-friday.html?x#y">a</a></p>'],
    ['[a](5-friday.html)', '<p><a href="5-friday.html">a</a></p>'],
    ['[a](key.html#friday-quiz-1)', '<p><a href="key.html#friday-quiz-1">a</a></p>'],
    ['[a](#friday.html)', '<p><a href="#friday.html">a</a></p>'],
    ['[a](https://example.org/friday.html)', '<p><a href="https://example.org/friday.html">a</a></p>'],
    [
      '[a][f] and [b][F]\n\n[f]: friday.html#x',
      '<p><a href="5-friday.html#x">a</a> and <a href="5-friday.html#x">b</a></p>',
    ],
  ])('are turned to their files: %s', (text, html) => {
    expect(resolve(text)).toEqual({ html, messages: [] });
  });

  it('that is none are reported with the names that authors write, each page once', () => {
    expect(resolve('[a](fryday.html)').messages).toEqual([
      'The link `fryday.html` leads to no page of the pack; expected a web address or one of `key.html`, `friday.html`; did you mean `friday.html`?',
    ]);
  });
});
