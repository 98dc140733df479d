import { describe, expect, it } from 'vitest';
import { openContent } from '../../directives/build-week.ts';
import { openLeakLesson } from './leak-week.ts';

const SENTENCE = 'Butter Moon stands next to it on the wall.';

const opened = openLeakLesson(
  `:::group-quiz[Moon quiz]{groups=2 seed=files}
1. What follows Round Moon?

   ::answer[Butter Moon]{working="${SENTENCE}"}
:::
`,
  openContent(),
);

/** A drawing of a page may be said in words that stand in the key too; there the search knows what it is. */
const content = new TextEncoder().encode(`%PDF-1.7\n1 0 obj\n<</Alt (${SENTENCE})>>\nendobj\n`);

describe('a PDF file for learners', () => {
  it('is not searched as bytes where it is as the kit has made it from pages that are searched', () => {
    const path = 'learners/pdf/week-papers.pdf';
    expect(opened.find([...opened.files, { path, content, isKept: true }], 'built')).toEqual([]);
  });

  it.each([
    ['changed by hand', { path: 'learners/pdf/week-papers.pdf', content, isKept: false }],
    ['put elsewhere', { path: 'learners/week-papers.pdf', content, isKept: true }],
    ['something else', { path: 'learners/pdf/week-papers.txt', content, isKept: true }],
  ])('is searched where it is %s', (_name, file) => {
    const found = opened.find([...opened.files, file], 'built');
    expect(found.map(({ rule, place }) => [rule, place.file])).toEqual([['learner-leak', `pack/${file.path}`]]);
  });
});
