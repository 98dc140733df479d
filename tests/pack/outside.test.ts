import Ajv2020 from 'ajv/dist/2020.js';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import type { WeekFiles } from '../../src/lesson/resolve-week.ts';
import { pageStyles } from '../../src/pack/pages/page-styles.ts';
import {
  buildWeek,
  DEMO_CONTENT,
  FIXED_CONTENT,
  listTexts,
  makeWeek,
  openContent,
  readWeekFolder,
  writeLesson,
} from '../directives/build-week.ts';
import { readIcsStrictly } from './check-ics.ts';
import { findDataFaults, readData } from './judges/find-data-faults.ts';
import { findLanguageFaults, listLanguages } from './judges/find-language-faults.ts';
import { findPolicyFaults } from './judges/find-policy-faults.ts';
import { findStyleFaults } from './judges/find-style-faults.ts';

/*
 * Packs before judges that know nothing of this kit: csp_evaluator 1.1.8 on content policies, css-tree 3.2.1 on styles,
 * bcp-47 2.1.2 with IANA's registry (language-subtag-registry 0.4.2) on languages, schema-dts 2.1.0 (the vocabulary of
 * schema.org) on JSON-LD, ical.js 2.2.1 on events, ajv 8.20.0 on the manifest. Each is shown below to see faults.
 */
const LESSONS = new URL('../../lessons/', import.meta.url);

const readDemo = (name: string) => readWeekFolder(new URL(`${name}/`, LESSONS), name);

/** A week of odd words: marks that end a script, a string or a line, an emoji, two lessons and sheets of one title. */
const ODD: WeekFiles = {
  ...makeWeek(
    {
      'a.md': writeLesson(':::handout[Sky slip]\n[web](https://example.org/) ![](été (1).png)\n:::', { day: 'monday' }),
      'b.md': writeLesson(':::handout[Sky slip]\nOne.\n:::\n\n:::handout[Sky slip]\nTwo.\n:::', {
        day: 'monday',
        more: 'begins: "13:30"\n',
      }),
      'c.md': `---\ntitle: "</script><!-- \\"quoted\\" & \\\\ 🌘"\nday: thursday\nminutes: 10\nintentions: ["<script>alert(1)</script>", "Same", "Same"]\nsuccess: [I can]\nmaterials: []\n---\n\nText.\n`,
    },
    {
      week: 'title: "Sky <b>; A, B\\\\"\nbegins: 2026-07-27\ndays: [monday, thursday]\nschool: saltgrass-point\nfor: "3 < 4 & \\"older\\""\n',
    },
  ),
  pictures: ['été (1).png'],
};

const WEEKS: readonly [string, URL, WeekFiles][] = [
  ['round-moon', DEMO_CONTENT, readDemo('round-moon')],
  ['vers-la-nuit-noire', DEMO_CONTENT, readDemo('vers-la-nuit-noire')],
  ['a week of odd words', FIXED_CONTENT, ODD],
  [
    'a week of one day, at a French school',
    FIXED_CONTENT,
    makeWeek({ 'a.md': writeLesson('Text.') }, { school: 'ormevire' }),
  ],
];

describe.each(WEEKS)('the pack of %s', (_name, content, files) => {
  const { plan, week, diagnostics } = buildWeek(files, openContent(content));
  if (plan === undefined || week === undefined) throw new Error(diagnostics.map(({ message }) => message).join('\n'));
  const texts = listTexts(plan);
  const pages = [...texts].filter(([path]) => path.endsWith('.html'));
  const manifest = JSON.parse(texts.get('pack.json') ?? '');
  const [start = {}, ...others] = readData(texts.get('index.html') ?? '');

  it('has content policies without a finding', () => {
    expect(pages.length).toBeGreaterThan(5);
    for (const [path, html] of pages) expect(findPolicyFaults(html), path).toEqual([]);
  });

  it('has styles that the standards know', () => {
    const styles = new Map(pages.map(([path, html]) => [/<style>(.*?)<\/style>/s.exec(html)?.[1] ?? '', path]));
    for (const [css, path] of styles) {
      expect(css.length, path).toBeGreaterThan(1000);
      expect(findStyleFaults(css), path).toEqual([]);
    }
  });

  it('names languages that are registered', () => {
    const events = [...(texts.get('calendar.ics') ?? '').matchAll(/;LANGUAGE=([^:;]*)/g)].map(([, tag = '']) => tag);
    const named = [manifest.language, manifest.calendar.language, ...[start['inLanguage']].flat().map(String)];
    const tags = [...pages.flatMap(([, html]) => listLanguages(html)), ...events, ...named];
    expect(tags.length).toBeGreaterThan(pages.length);
    expect(findLanguageFaults(tags)).toEqual([]);
  });

  it('says on the start page, and there alone, what it is, in words of schema.org', () => {
    expect(others).toEqual([]);
    expect(start['@context']).toBe('https://schema.org');
    expect(findDataFaults(start)).toEqual([]);
    const elsewhere = pages.filter(([path, html]) => path !== 'index.html' && html.includes('ld+json'));
    expect(elsewhere.map(([path]) => path)).toEqual([]);
    expect(start['name']).toBe(week.plan.title);
    const parts = [start['hasPart']].flat();
    expect(parts).toMatchObject(
      manifest.lessons.map(({ title, date, page }: Record<string, string>) => ({
        name: title,
        url: page,
        temporalCoverage: date,
      })),
    );
    for (const { page } of manifest.lessons) expect(texts.has(page)).toBe(true);
  });

  it('has a manifest as its schema describes it, which lies beside it', () => {
    const schema = JSON.parse(texts.get(manifest.$schema) ?? '');
    const validate = new Ajv2020({ strict: true, allErrors: true }).compile(schema);
    validate(manifest);
    expect(validate.errors).toBe(null);
  });

  it('has the nights from its first to its last date as events', () => {
    const file = texts.get('calendar.ics') ?? '';
    const strict = readIcsStrictly(new TextEncoder().encode(file));
    const read = new ICAL.Component(ICAL.parse(file)).getAllSubcomponents('vevent').map((each) => new ICAL.Event(each));
    expect(read.map(({ startDate, summary }) => [startDate.toString().replaceAll('-', ''), summary])).toEqual(
      strict.map(({ start, summary }) => [start, summary]),
    );
    const dates = week.lessons.map(({ tonight }) => tonight.date);
    expect(read.at(0)?.startDate.toString()).toBe(dates[0]);
    expect(read.at(-1)?.startDate.toString()).toBe(dates.at(-1));
    for (const [index, { start }] of strict.entries()) expect(start).toBe(strict[index - 1]?.end ?? start);
    for (const { tonight } of week.lessons) {
      const event = read.find(({ startDate }) => startDate.toString() === tonight.date);
      expect(event?.summary).toBe(tonight.night.name);
      expect(event?.description).toContain(
        week.labels.text('night-of-month', { n: tonight.nightOfMonth, length: tonight.month.length }),
      );
    }
  });

  it('has a title of its own for each page', () => {
    const titles = pages.map(([, html]) => /<title>([^<]*)<\/title>/.exec(html)?.[1] ?? '');
    expect(titles).not.toContain('');
    expect(new Set(titles).size).toBe(titles.length);
  });

  it('has day pages and sheets whose names sort by day', () => {
    const lessonPages = manifest.lessons.map(({ page }: { page: string }) => page);
    expect(lessonPages.toSorted()).toEqual(lessonPages);
    const order = (path: string) =>
      lessonPages.findIndex((page: string) => path.startsWith(`learners/${page.replace('.html', '')}`));
    const sheets = pages
      .map(([path]) => path)
      .filter((path) => /^learners\/\d/.test(path))
      .sort();
    expect(sheets.map(order)).toEqual(sheets.map(order).toSorted());
    expect(sheets.map(order)).not.toContain(-1);
  });
});

describe('the styles of every kind of page', () => {
  it.each(Object.entries(pageStyles))('are known to the standards: %s', (_kind, css) => {
    expect(findStyleFaults(css)).toEqual([]);
  });
});

describe('the judges see', () => {
  it.each([
    ["default-src 'none'; script-src 'unsafe-inline'", 'unsafe-inline'],
    ["default-src 'none'; script-src https:", 'https:'],
    ["default-src 'none'; script-src 'nonce-abcdefgh'", 'base-uri'],
    ["script-src 'none'", 'object-src'],
    ["default-src 'none' script-src 'none'", 'semicolon'],
  ])('what is wrong with the policy %s', (policy, word) => {
    const page = `<head><meta http-equiv="Content-Security-Policy" content="${policy}">`;
    expect(findPolicyFaults(page).join()).toContain(word);
  });

  it('a policy that is missing, doubled or late', () => {
    const meta =
      '<meta http-equiv="Content-Security-Policy" content="default-src &#x27;none&#x27;; base-uri &#x27;none&#x27;">';
    expect(findPolicyFaults('<head>')).toEqual(['the page has 0 policies']);
    expect(findPolicyFaults(`<head>${meta}${meta}`)).toEqual(['the page has 2 policies']);
    expect(findPolicyFaults(`<head><style></style>${meta}`)).toEqual(['something stands before the policy']);
    expect(findPolicyFaults(`<head>${meta}`)).toEqual([]);
  });

  it.each([
    ['a { color: red; b }', 'does not parse'],
    ['a { colour: red }', 'colour'],
    ['a { color: 4px }', 'color: 4px'],
    ['a { color: var(--gone) }', 'is set nowhere'],
    ['@font-face { font-display: sometimes }', 'font-display'],
  ])('what is wrong with the style %s', (css, word) => {
    expect(findStyleFaults(css).join()).toContain(word);
  });

  it.each([
    ['en_NZ', 'is no language tag'],
    ['', 'is no language tag'],
    ['qq', 'language qq is not registered'],
    ['en-XX', 'region XX is not registered'],
    ['iw', 'deprecated'],
  ])('what is wrong with the language %j', (tag, words) => {
    expect(findLanguageFaults(listLanguages(`<p lang="${tag}">`)).join()).toContain(words);
    expect(findLanguageFaults(['en', 'fr-CA', 'zh-Hant-TW', 'x-estuary'])).toEqual([]);
  });

  it.each([
    [{ '@type': 'LearningResourc' }, 'no type'],
    [{ '@type': 'LearningResource', duration: 'PT1H', teech: 'x' }, 'teech: LearningResource has no such property'],
    [{ '@type': 'LearningResource', hasPart: [{ '@type': 'LearningResource', name: ' ' }] }, '/hasPart/name is empty'],
    [{ '@type': 'LearningResource', teaches: [] }, '/teaches is empty'],
    [{ '@context': 'https://example.org', '@type': 'LearningResource' }, '@context'],
  ])('what is wrong with %j', (node, words) => {
    expect(findDataFaults(node).join()).toContain(words);
  });

  it('data that is no JSON', () => {
    expect(() => readData('<script type="application/ld+json">{"a":</script>')).toThrow(SyntaxError);
  });
});
