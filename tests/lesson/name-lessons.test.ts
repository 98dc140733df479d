import { describe, expect, it } from 'vitest';
import { WEEK_DAYS } from '../../src/content/civil-date.ts';
import type { WeekDay } from '../../src/content/types.ts';
import { listLessonPages, nameLessons } from '../../src/lesson/name-lessons.ts';

/** How systems put names in order: by code, by letters with signs passed over, by letters with signs first, by numbers. */
const ORDERS: readonly (readonly [string, (a: string, b: string) => number])[] = [
  ['by code', (a, b) => (a < b ? -1 : 1)],
  ['by letter', new Intl.Collator('en', { ignorePunctuation: true }).compare],
  ['signs first', new Intl.Collator('en').compare],
  ['by number', new Intl.Collator('en', { numeric: true }).compare],
];

const DAY_LISTS: readonly (readonly [string, readonly WeekDay[]])[] = [
  ['every day', WEEK_DAYS],
  ['two lessons of a day', ['monday', 'wednesday', 'wednesday', 'friday']],
  ['twelve lessons of a day', Array.from({ length: 12 }, () => 'sunday' as const)],
];

describe('nameLessons', () => {
  it('names a lesson after its day, its files with the number of the day before it', () => {
    expect(nameLessons(['tuesday', 'sunday'])).toEqual([
      { slug: 'tuesday', stem: '2-tuesday' },
      { slug: 'sunday', stem: '7-sunday' },
    ]);
  });

  it('tells lessons of one day apart; the first keeps its slug', () => {
    expect(nameLessons(['friday', 'friday'])).toEqual([
      { slug: 'friday', stem: '5-friday-lesson-1' },
      { slug: 'friday-lesson-2', stem: '5-friday-lesson-2' },
    ]);
  });

  describe.each(DAY_LISTS)('of %s', (_what, days) => {
    const stems = nameLessons(days).map(({ stem }) => stem);

    it.each(ORDERS)('gives names of pages that sort %s as the lessons come', (_how, compare) => {
      const pages = stems.map((stem) => `${stem}.html`);
      expect(pages.toReversed().sort(compare)).toEqual(pages);
    });

    it.each(ORDERS)('gives names of sheets that sort %s as the lessons come', (_how, compare) => {
      const sheets = stems.flatMap((stem) => [`${stem}-1-sky-slip.html`, `${stem}-quiz-1.html`]);
      expect(sheets.toReversed().sort(compare)).toEqual(sheets);
    });
  });
});

describe('listLessonPages', () => {
  it('knows a page by its slug and by its file, with or without the number', () => {
    const pages = listLessonPages(nameLessons(['monday', 'friday', 'friday']));
    expect(Object.fromEntries(pages)).toEqual({
      'monday.html': '1-monday.html',
      '1-monday.html': '1-monday.html',
      'friday.html': '5-friday-lesson-1.html',
      'friday-lesson-1.html': '5-friday-lesson-1.html',
      '5-friday-lesson-1.html': '5-friday-lesson-1.html',
      'friday-lesson-2.html': '5-friday-lesson-2.html',
      '5-friday-lesson-2.html': '5-friday-lesson-2.html',
    });
  });
});
