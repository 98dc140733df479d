import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { tagAuthors } from '../../src/content/tag-authors.ts';
import { buildWeek, DEMO_CONTENT, listTexts, makeWeek, openContent, writeLesson } from '../directives/build-week.ts';

const LESSON = makeWeek({ 'a.md': writeLesson('::tonight\n\n:night{} is a name.') });
const [, meaning = ''] =
  /name: Round Moon\n\s+say: .*\n\s+meaning: (.*)\n/.exec(
    readFileSync(new URL('calendars/estuary.yaml', DEMO_CONTENT), 'utf8'),
  ) ?? [];

/** Elements of all pages that hold what the name of the night means, as their opening tags. */
function listHolders(line: string): string[] {
  const changeCalendars = (text: string) => text.replace('\nlanguage: en\n', `\nlanguage: en\n${line}`);
  const { plan } = buildWeek(LESSON, openContent(DEMO_CONTENT, undefined, { changeCalendars }));
  if (plan === undefined) throw new Error('The week has mistakes.');
  const pages = [...listTexts(plan)].filter(([path]) => path.endsWith('.html'));
  return pages
    .flatMap(([, html]) => html.split(meaning).slice(0, -1))
    .map((before) => before.slice(before.lastIndexOf('<')));
}

describe('explained-in', () => {
  it('tags what names mean with its language, on every page that says it', () => {
    const tagged = listHolders('explained-in: cy\n');
    expect(tagged.length).toBeGreaterThan(1);
    expect(tagged.filter((tag) => !tag.includes('lang="cy" dir="auto"'))).toEqual([]);
  });

  it('is the language of the school where the calendar does not say it', () => {
    const tagged = listHolders('');
    expect(tagged.length).toBeGreaterThan(1);
    expect(tagged.filter((tag) => tag.includes('lang='))).toEqual([]);
  });
});

describe('tagAuthors', () => {
  it('says nothing where the page has the same language', () => {
    expect(tagAuthors('fr', 'fr')).toEqual({});
    expect(tagAuthors('en', 'sv')).toEqual({ lang: 'sv', dir: 'auto' });
  });
});
