import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { pageStyles } from '../../src/pack/pages/page-styles.ts';
import { buildWeek, DEMO_CONTENT, listTexts, openContent, readWeekFolder } from '../directives/build-week.ts';
import { listEnglishWords, listWords, readWords } from './english-words.ts';

const LESSONS = new URL('../../lessons/', import.meta.url);
const week = readWeekFolder(new URL('vers-la-nuit-noire/', LESSONS), 'vers-la-nuit-noire');
const read = (path: string) => readFileSync(new URL(path, DEMO_CONTENT), 'utf8');

/** What is English in content files and lessons: keys, words with one of a set of meanings, directives, comments. */
const SYNTAX =
  /^\s*#.*$|[\w-]+:(?=\s)|:{1,5}[a-z-]+|\b[a-z-]+=[a-z-]*|\b(?:shape|at|palm|fingers|move|gesture|day): .*/gm;

/** All that is French: the labels, and what people wrote for this week. */
const FRENCH = [
  ...['labels/fr', 'calendars/moulin', 'gestures/moulin', 'questions/moulin', 'schools/ormevire'].map((name) =>
    read(`${name}.yaml`),
  ),
  ...[week.week, ...week.lessons].map(({ text }) => text),
]
  .join('\n')
  .replace(SYNTAX, ' ');

const english = listEnglishWords(FRENCH);
const { plan } = buildWeek(week, openContent(DEMO_CONTENT));
const pages = plan === undefined ? [] : [...listTexts(plan)].filter(([path]) => path.endsWith('.html'));

describe('the pages of a school that speaks French', () => {
  it('are many', () => {
    expect(pages.length).toBeGreaterThan(8);
  });

  it.each(pages)('have no fixed word of English: %s', (_path, html) => {
    expect(listWords(readWords(html)).filter((word) => english.has(word))).toEqual([]);
  });

  it('would show a word that came from elsewhere', () => {
    expect([...english].length).toBeGreaterThan(500);
    const words = listWords(readWords('<p>La nuit</p><img alt="The night"><style>p { color: red }</style>'));
    expect(words.filter((word) => english.has(word))).toEqual(['the', 'night']);
  });
});

describe('styles', () => {
  it.each(Object.entries(pageStyles))('of %s put no words on a page', (_kind, styles) => {
    const texts = [...styles.matchAll(/content:\s*([^;}]*)/g)].flatMap(([, value = '']) =>
      [...value.matchAll(/"([^"]*)"/g)].map(([, text = '']) => text.replace(/\\[0-9a-f]{1,6} ?/gi, '')),
    );
    expect(texts.filter((text) => /\p{L}/u.test(text))).toEqual([]);
  });
});
