import { describe, expect, it } from 'vitest';
import { checkSyntax } from '../../src/lesson/check-syntax.ts';
import { findDeepMarks, MOST_LEVELS } from '../../src/lesson/find-too-deep.ts';
import { createLessonParser } from '../../src/lesson/parse-lesson.ts';
import { KNOWN } from './known-directives.ts';

const parse = createLessonParser(['night']);

/** Blocks in one another, the outermost with the most colons, after a line of text. */
function nestBlocks(levels: number): string {
  const opening = Array.from({ length: levels }, (_, index) => `${':'.repeat(levels + 3 - index)}teacher\n`);
  const closing = Array.from({ length: levels }, (_, index) => `${':'.repeat(4 + index)}\n`);
  return `Text.\n\n${opening.join('')}a\n${closing.join('')}`;
}

const TOO_DEEP = [
  ['quotations', `Text.\n\n${'> '.repeat(3000)}a`, 3],
  ['list items', `Text.\n\n${'- '.repeat(3000)}a`, 3],
  ['numbered items', `Text.\r\n\r\n${'1. '.repeat(3000)}a`, 3],
  ['quotations and items', `Text.\r\r${'>- '.repeat(3000)}a`, 3],
  ['emphasis', `Text.\n\n${'*a '.repeat(300)}${'b*'.repeat(300)}`, 3],
  ['blocks', nestBlocks(300), 3 + MOST_LEVELS],
  ['blocks that are not closed', ':::teacher\n'.repeat(3000), 1 + MOST_LEVELS],
] as const;

describe('a lesson', () => {
  it.each(TOO_DEEP)('with %s in one another is refused at its line, and soon', (_name, text, line) => {
    const found = checkSyntax(parse(text), 'a.md', KNOWN).filter(({ rule }) => rule === 'nesting');
    expect(found).toMatchObject([{ severity: 'error', place: { file: 'a.md', line } }]);
    expect(found[0]?.message).toContain('Nested more than 100 deep');
  });

  it.each([
    ['quotations', `${'> '.repeat(20)}a`],
    ['list items', `${'- '.repeat(20)}a`],
    ['blocks', nestBlocks(20)],
    ['many blocks, one after another', ':::teacher\na\n:::\n\n'.repeat(300)],
    ['a line across the page', `a\n\n${'* '.repeat(200)}\n\n${'- '.repeat(200)}`],
    ['a long row of signs', `\`\`\`\n${'>'.repeat(300)}\n\`\`\``],
  ])('with %s is as it was', (_name, text) => {
    const parsed = parse(text);
    expect(checkSyntax(parsed, 'a.md', KNOWN).filter(({ rule }) => rule === 'nesting')).toEqual([]);
    expect(parsed.tree.children.length).toBeGreaterThan(0);
  });
});

describe('findDeepMarks', () => {
  it('is not slowed down by long lines that come near', () => {
    const near = `${'- '.repeat(MOST_LEVELS)}a\n`.repeat(2000) + ' '.repeat(100_000);
    // Fails by running out of time.
    expect(findDeepMarks(near)).toBeUndefined();
  });
});
