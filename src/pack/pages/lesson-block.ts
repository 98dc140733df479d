import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { tagAuthors } from '../../content/tag-authors.ts';
import type { ResolvedLesson } from '../../lesson/model.ts';
import { renderSeats } from './lesson-seats.ts';
import { NAMES_ID } from './names-on-page.ts';
import { renderSheetLinks } from './pack-nav.ts';
import {
  countQuizzesBefore,
  joinWithDots,
  listPlacedLessons,
  type PageContext,
  type PlacedLesson,
} from './page-context.ts';
import { hasWeekNotes, listReliefCases, RELIEF_ID, renderReliefCases } from './relief-notes.ts';
import { listSheets } from './sheet-links.ts';
import { renderStepTimes } from './step-times.ts';

/**
 * A lesson on the sheet of its day: what to do, what it needs, who sits where, the answers, what to do when something fails.
 * @param earlier Lessons of the same day that stand before it: what they say need not be said again.
 */
export function renderLessonBlock(
  context: PageContext,
  placed: PlacedLesson,
  earlier: readonly ResolvedLesson[],
): Element {
  const { labels, school } = context.week;
  const { lesson, paths } = placed;
  const { head } = lesson;
  const begins = labels.text('begins-at', { time: labels.clock(head.begins ?? school.classBegins) });
  const parts = [
    ...renderWho(context, lesson, earlier),
    ...renderAnswers(context, placed),
    ...renderFails(context, lesson, earlier),
  ];
  return h('section', { className: ['lesson-block'] }, [
    h('header', { className: ['lesson-block-head'] }, [
      h('h3', [h('a', { href: paths.page, className: ['named-in-print'] }, head.title)]),
      h('p', joinWithDots([begins, labels.count('minutes', head.minutes)])),
    ]),
    h('div', { className: ['lesson-columns'] }, [
      h('div', { className: ['to-do'] }, [
        h('h4', labels.text('what-to-do')),
        renderStepTimes(lesson.steps, labels, paths.page),
        renderHelp(context, placed),
      ]),
      h('div', { className: ['needs'] }, [...renderBring(context, placed), ...renderSheets(context, placed)]),
    ]),
    ...(parts.length === 0 ? [] : [h('div', { className: ['lesson-parts'] }, parts)]),
  ]);
}

/** For who has never seen this calendar: its names, and for a run its gestures. */
function renderHelp({ week, paths: { gestures } }: PageContext, { lesson, paths }: PlacedLesson): Element {
  const { labels } = week;
  const link = (href: string, words: string, page: string) => h('li', [h('a', { href }, words), renderPageName(page)]);
  return h('ul', { className: ['link-list', 'help-links'] }, [
    link(`${paths.page}#${NAMES_ID}`, labels.text('names-of-day'), paths.page),
    ...(lesson.hasRun ? [link(gestures, labels.text('how-gestures-go'), gestures)] : []),
  ]);
}

function renderBring({ week }: PageContext, { lesson }: PlacedLesson): ElementContent[] {
  const { labels, school } = week;
  const { materials } = lesson.head;
  if (materials.length === 0) return [];
  const list = h(
    'ul',
    { className: ['check-list', 'plain-list'], ...tagAuthors(labels.language, school.language) },
    materials.map((item) => h('li', item)),
  );
  return [renderPart('bring', labels.text('bring'), [list])];
}

function renderSheets(context: PageContext, placed: PlacedLesson): ElementContent[] {
  const links = listSheets(context.week.labels, placed);
  if (links.length === 0) return [];
  return [renderPart('sheets', context.week.labels.text('to-print'), [renderSheetLinks(context.paths.start, links)])];
}

/** The groups are the same all day; their seats change from quiz to quiz. */
function renderWho(context: PageContext, lesson: ResolvedLesson, earlier: readonly ResolvedLesson[]): ElementContent[] {
  if (earlier.length > 0 && lesson.quizzes.length === 0) return [];
  const placed = listPlacedLessons(context);
  const seats = renderSeats(context, lesson, countQuizzesBefore(placed, lesson));
  return seats.length === 0 ? [] : [renderPart('who', context.week.labels.text('who-sits-where'), seats)];
}

/** Leads to the key, and says that it is not for learners. */
function renderAnswers({ week }: PageContext, placed: PlacedLesson): ElementContent[] {
  const { labels } = week;
  const { key, keyAnchors } = placed.paths;
  if (key === undefined) return [];
  const items = placed.lesson.quizzes.map((quiz, index) =>
    h('li', [
      h('a', { href: `${key}#${keyAnchors[index] ?? ''}` }, labels.text('key-to', { title: quiz.title })),
      renderPageName(key),
    ]),
  );
  return [
    renderPart('answers', labels.text('answers'), [
      h('ul', { className: ['link-list'] }, items),
      h('p', { className: ['fine'] }, labels.text('teacher-only')),
    ]),
  ];
}

/** On paper a link cannot be followed: it says which page it leads to. */
function renderPageName(page: string): Element {
  return h('span', { className: ['print-only', 'page-name'] }, [' (', h('bdi', page), ')']);
}

function renderFails(
  context: PageContext,
  lesson: ResolvedLesson,
  earlier: readonly ResolvedLesson[],
): ElementContent[] {
  const { labels } = context.week;
  const cases = listReliefCases(context.week, lesson, earlier);
  if (cases.length === 0) return [];
  const link = h('a', { href: `#${RELIEF_ID}` }, labels.text('notes-all-week'));
  const notes =
    earlier.length === 0 && hasWeekNotes(context.week) ? [h('p', { className: ['link-list'] }, [link])] : [];
  return [renderPart('fails', labels.text('if-something-fails'), [renderReliefCases(context, cases), ...notes])];
}

function renderPart(kind: string, heading: string, children: ElementContent[]): Element {
  return h('div', { className: ['part', kind] }, [h('h4', heading), ...children]);
}
