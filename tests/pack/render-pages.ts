import { createHash } from 'node:crypto';
import type { Element, Root, Text } from 'hast';
import { visitParents } from 'unist-util-visit-parents';
import type { ResolvedWeek } from '../../src/lesson/model.ts';
import { computePackPaths } from '../../src/pack/pack-paths.ts';
import type { Digest } from '../../src/pack/page-shell.ts';
import { renderDayPage } from '../../src/pack/pages/day-page.ts';
import { renderGesturesPage } from '../../src/pack/pages/gestures-page.ts';
import { renderHandoutPage } from '../../src/pack/pages/handout-page.ts';
import { renderKeyListPage } from '../../src/pack/pages/key-list-page.ts';
import { renderKeyPage } from '../../src/pack/pages/key-page.ts';
import type { LearnerFrame } from '../../src/pack/pages/learner-page.ts';
import { renderLearnersPage } from '../../src/pack/pages/learners-page.ts';
import { createPageContext, listPlacedLessons } from '../../src/pack/pages/page-context.ts';
import { renderPaperPage } from '../../src/pack/pages/paper-page.ts';
import { renderScorePage } from '../../src/pack/pages/score-page.ts';
import { renderStartPage } from '../../src/pack/pages/start-page.ts';

/** The true digest, so that tests can hold a page's policy against its style and script. */
export const sha256: Digest = (text) => createHash('sha256').update(text, 'utf8').digest('base64');

/** What learners' pages of a week may know, for the first lesson's date. */
export function buildFrame(week: ResolvedWeek): LearnerFrame {
  const date = week.lessons[0]?.tonight.date ?? week.plan.begins;
  return {
    labels: week.labels,
    authorsLanguage: 'en',
    schoolName: week.school.name,
    date,
    digest: sha256,
  };
}

/** Every page of a week by path. */
export function renderPages(week: ResolvedWeek): Map<string, Root> {
  const paths = computePackPaths(week);
  const context = createPageContext(week, paths, sha256);
  const frame = buildFrame(week);
  const pages = new Map<string, Root>([
    [paths.start, renderStartPage(context)],
    [paths.key, renderKeyListPage(context)],
    [paths.score, renderScorePage(context)],
    [paths.gestures, renderGesturesPage(context)],
  ]);
  const days = listPlacedLessons(context).map((placed) => {
    const { lesson, paths: own } = placed;
    pages.set(own.page, renderDayPage(context, placed));
    if (own.key !== undefined) pages.set(own.key, renderKeyPage(context, placed));
    const papers = lesson.quizzes.map((quiz, index) => {
      const path = own.papers[index] ?? '';
      pages.set(path, renderPaperPage(quiz.papers, index + 1, frame));
      return { title: quiz.title, kind: 'papers', path };
    });
    const handouts = lesson.handouts.map((handout, index) => {
      const path = own.handouts[index] ?? '';
      pages.set(path, renderHandoutPage(handout, frame));
      return { title: handout.title, kind: 'handout', path };
    });
    return { date: lesson.tonight.date, sheets: [...papers, ...handouts] };
  });
  pages.set(paths.learners, renderLearnersPage({ ...frame, path: paths.learners, days }));
  return pages;
}

/** All elements of a tree in order, each with those around it, the outermost first. */
export function listElements(tree: Root): { element: Element; around: Element[] }[] {
  const found: { element: Element; around: Element[] }[] = [];
  visitParents(tree, 'element', (element, ancestors) => {
    found.push({ element, around: ancestors.filter((node) => node.type === 'element') });
  });
  return found;
}

/** Elements of one kind: a tag name, or a class with a dot before it. */
export function findAll(tree: Root, selector: string): Element[] {
  return listElements(tree).flatMap(({ element }) => {
    const { className } = element.properties;
    const fits = selector.startsWith('.')
      ? Array.isArray(className) && className.includes(selector.slice(1))
      : element.tagName === selector;
    return fits ? [element] : [];
  });
}

/** Elements of one kind within an element. */
export function findInside(element: Element, selector: string): Element[] {
  return findAll({ type: 'root', children: element.children }, selector);
}

/** All words in an element or page, style and script left out. */
export function readText(tree: Root | Element): string {
  return listTexts(tree)
    .map(({ text }) => text.value)
    .join('');
}

/** All texts with the elements around them, style and script left out. */
export function listTexts(tree: Root | Element): { text: Text; around: Element[] }[] {
  const found: { text: Text; around: Element[] }[] = [];
  visitParents(tree, 'text', (text, ancestors) => {
    const around = ancestors.filter((node) => node.type === 'element');
    if (!around.some(({ tagName }) => tagName === 'style' || tagName === 'script')) found.push({ text, around });
  });
  return found;
}
