import { tests as EXAMPLES } from 'commonmark-spec';
import remarkParse from 'remark-parse';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';
import { describe, expect, it } from 'vitest';
import { createLessonParser } from '../../src/lesson/parse-lesson.ts';
import { renderMarkdown } from '../../src/lesson/render-markdown.ts';
import { stringifyHast } from '../../src/lesson/stringify-hast.ts';
import { INLINE_NAMES } from './known-directives.ts';

/**
 * Source of the examples: CommonMark 0.31.2, the text of the specification, as packed in `commonmark-spec`.
 * The examples whose output may differ from that of the bare parser, each with its reason. The list is exact.
 */
const REASONS: Readonly<Record<number, string>> = {
  96: 'it begins with `---`, text and `---`, which is front matter',
  98: 'it begins with `---` and `---`, which is empty front matter',
  500: 'the link target `foo):` reads as an unknown scheme and is left out',
  596: '`irc:` is no scheme that lessons may link to',
  598: '`a+b+c:` is no scheme that lessons may link to',
  599: '`made-up-scheme:` is no scheme that lessons may link to',
  601: '`localhost:` reads as an unknown scheme and is left out',
};

const parse = createLessonParser(INLINE_NAMES);
const bare = unified().use(remarkParse).use(remarkRehype).freeze();

function renderLesson(text: string): string {
  return stringifyHast(renderMarkdown(parse(text).tree.children, { slot: () => [], tickTaskLists: false }));
}

describe('examples of CommonMark 0.31.2', () => {
  it('are all there', () => {
    expect(EXAMPLES).toHaveLength(652);
  });

  for (const { number, section, markdown } of EXAMPLES) {
    const reason = REASONS[number];
    it(`${number} (${section}) ${reason === undefined ? 'comes out as from the bare parser' : `differs: ${reason}`}`, () => {
      const expected = stringifyHast(bare.runSync(bare.parse(markdown)));
      if (reason === undefined) expect(renderLesson(markdown)).toBe(expected);
      else expect(renderLesson(markdown)).not.toBe(expected);
    });
  }
});
