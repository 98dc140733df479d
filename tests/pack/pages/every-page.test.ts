import type { Element, Root } from 'hast';
import { HtmlValidate } from 'html-validate';
import { describe, expect, it } from 'vitest';
import { stringifyHast } from '../../../src/lesson/stringify-hast.ts';
import { CALENDAR_PATH } from '../../../src/pack/plan-calendar.ts';
import { buildFakeQuiz, buildFakeWeek, SECRET } from '../fake-week.ts';
import { findAll, listElements, listTexts, renderPages, sha256 } from '../render-pages.ts';

/** A week that has it all: two lessons of a day, two quizzes of a lesson, two months, no handout, names in French. */
const buildFullWeek = () =>
  buildFakeWeek({
    plan: { begins: '2026-08-10' },
    lessons: [
      { head: { day: 'monday', title: 'First & <last>' } },
      { head: { day: 'monday', begins: '13:30' }, slug: 'monday-2', quizzes: [buildFakeQuiz(1), buildFakeQuiz(2)] },
      { head: { day: 'friday', materials: [] }, quizzes: [], handouts: [] },
    ],
  });

const PAGES = renderPages(buildFullWeek());
const HTML = new Map(Array.from(PAGES, ([path, page]) => [path, stringifyHast(page)]));
const CALENDAR_NAME = /Eau (noire|claire|basse)|Mois du|Nuits du ruisseau/;
const LEARNERS = [...PAGES.keys()].filter((path) => path.startsWith('learners/'));

const VALIDATOR = new HtmlValidate({
  extends: ['html-validate:recommended', 'html-validate:document'],
  rules: { 'no-inline-style': 'error', 'doctype-style': ['error', { style: 'lowercase' }] },
});

describe.each([...PAGES.entries()])('%s', (path, page) => {
  it('is valid HTML', () => {
    const { results } = VALIDATOR.validateStringSync(HTML.get(path) ?? '');
    const messages = results.flatMap((result) => result.messages);
    expect(messages.map(({ line, column, ruleId, message }) => `${line}:${column} ${ruleId} ${message}`)).toEqual([]);
  });

  it('has one h1 and headings in order', () => {
    const levels = listElements(page).flatMap(({ element }) => /^h([1-6])$/.exec(element.tagName)?.[1] ?? []);
    expect(levels.filter((level) => level === '1')).toHaveLength(1);
    for (const [index, level] of levels.entries()) {
      expect(Number(level)).toBeLessThanOrEqual(Number(levels[index - 1] ?? 0) + 1);
    }
  });

  it('tags every calendar name with its language', () => {
    const untagged = listTexts(page).filter(
      ({ text, around }) => CALENDAR_NAME.test(text.value) && nearestLanguage(around) !== 'fr',
    );
    expect(untagged.map(({ text }) => text.value)).toEqual([]);
    const spoken = listElements(page).flatMap(({ element: { properties } }) => [
      properties['ariaLabel'],
      properties['alt'],
    ]);
    expect(spoken.filter((words) => CALENDAR_NAME.test(String(words)))).toEqual([]);
  });

  it('links only to pages and anchors that are there', () => {
    for (const link of findAll(page, 'a')) {
      const [file = '', anchor] = String(link.properties['href']).split('#');
      const target = file === '' ? path : resolveLink(path, file);
      expect([...PAGES.keys(), CALENDAR_PATH]).toContain(target);
      if (anchor !== undefined) expect(listIds(PAGES.get(target))).toContain(anchor);
    }
  });

  it('uses each id once and every reference leads to one', () => {
    const ids = listIds(page);
    expect(ids).toEqual([...new Set(ids)]);
    const references = listElements(page).flatMap(({ element }) => element.properties['ariaLabelledBy'] ?? []);
    for (const reference of references) expect(ids).toContain(reference);
  });

  it('allows its own style and script and no other', () => {
    const html = HTML.get(path) ?? '';
    const policy = String(findAll(page, 'meta')[0]?.properties['content']);
    for (const name of ['style', 'script']) {
      const texts = [...html.matchAll(new RegExp(`<${name}>([\\s\\S]*?)</${name}>`, 'g'))].map((match) => match[1]);
      const allowed = [...policy.matchAll(new RegExp(`${name}-src 'sha256-([^']+)'`, 'g'))].map((match) => match[1]);
      expect(allowed).toEqual(texts.map((text) => sha256(text ?? '')));
    }
    expect(listElements(page).filter(({ element }) => 'style' in element.properties)).toEqual([]);
  });
});

describe('pages of a week', () => {
  it('come out the same each time', () => {
    const again = renderPages(buildFullWeek());
    for (const [path, html] of HTML)
      expect(stringifyHast(again.get(path) ?? { type: 'root', children: [] })).toBe(html);
  });

  it('have titles of their own', () => {
    const titles = Array.from(PAGES, ([path, page]) => `${path.startsWith('learners/')} ${readTitle(page)}`);
    const days = titles.filter((title) => !title.startsWith('true'));
    expect(days).toEqual([...new Set(days)]);
  });
});

describe('learners’ pages', () => {
  it('hold no answer and no link out of their folder', () => {
    expect(LEARNERS.length).toBeGreaterThan(3);
    for (const path of LEARNERS) {
      expect(HTML.get(path)).not.toContain(SECRET);
      expect(HTML.get(path)).not.toMatch(/key[\w-]*\.html|href="\.\./);
    }
    expect([...HTML].filter(([path]) => path.startsWith('key-')).join()).toContain(SECRET);
  });
});

function nearestLanguage(around: readonly Element[]): unknown {
  return around.findLast(({ properties }) => 'lang' in properties)?.properties['lang'];
}

function listIds(page: Root | undefined): string[] {
  if (page === undefined) return [];
  return listElements(page).flatMap(({ element }) => {
    const { id } = element.properties;
    return typeof id === 'string' ? id : [];
  });
}

function resolveLink(from: string, link: string): string {
  return new URL(link, `https://pack.invalid/${from}`).pathname.slice(1);
}

function readTitle(page: Root): string {
  const title = findAll(page, 'title')[0]?.children[0];
  return title?.type === 'text' ? title.value : '';
}
