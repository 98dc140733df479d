import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { fillLabel } from '../../content/fill-label.ts';
import { renderName } from '../../content/render-name.ts';
import { computeNightCard } from '../../directives/night-card.ts';
import { renderKeeperLine } from './how-we-know.ts';
import { renderSeats } from './lesson-seats.ts';
import { NAMES_ID } from './names-on-page.ts';
import { renderNightSummary } from './night-summary.ts';
import { renderSheetLinks } from './pack-nav.ts';
import {
  countQuizzesBefore,
  joinWithDots,
  listPlacedLessons,
  type PageContext,
  type PlacedLesson,
} from './page-context.ts';
import { hasWeekNotes, RELIEF_ID, renderReliefCases } from './relief-notes.ts';
import { listSheets } from './sheet-links.ts';
import { renderStepTimes } from './step-times.ts';
import { tagAuthors } from '../../content/tag-authors.ts';

/** What a day's sheet says of its week. */
export interface WeekFrame {
  readonly days: readonly PlacedLesson[][];
  /** For which dates the pack was made, in words. */
  readonly madeFor: string;
}

/**
 * One day of the start page: the night and what to say of it, and for each lesson what to do, in order, and all it needs.
 * Prints on a sheet of its own, with the other days of the week in a line.
 */
export function renderDaySheet(
  context: PageContext,
  { days, madeFor }: WeekFrame,
  day: readonly PlacedLesson[],
): Element {
  const first = day[0];
  if (first === undefined) throw new Error('A day without a lesson has no sheet.');
  const { week } = context;
  const { labels, plan, school } = week;
  const { head, tonight } = first.lesson;
  const classBegins = head.begins ?? school.classBegins;
  const card = computeNightCard(week.almanac, week.calendar, tonight.date, classBegins);
  const weekday = labels.weekday(head.day);
  return h('section', { className: ['day-sheet'], id: head.day, ariaLabelledBy: `${head.day}-title` }, [
    h('p', { className: ['sheet-line', 'print-only'] }, joinWithDots([plan.title, school.name, plan.for, madeFor])),
    h('h2', { id: `${head.day}-title` }, [
      h('span', { className: ['today-flag'], hidden: true }, `${labels.text('today')}: `),
      h('time', { dateTime: tonight.date }, renderDate(labels.date(tonight.date, 'day'), weekday)),
    ]),
    renderNightSummary(context, card, classBegins),
    ...day.map((placed) => renderLessonBlock(context, placed)),
    renderWeekLine(context, days, day),
    h('p', { className: ['keeper-line', 'print-only'] }, renderKeeperLine(week)),
  ]);
}

/** A date whose day of the week stands out, wherever in it the language puts that. */
function renderDate(date: string, weekday: string): ElementContent[] {
  const at = date.indexOf(weekday);
  if (at < 0) return [{ type: 'text', value: date }];
  const rest = (text: string): ElementContent[] => (text === '' ? [] : [h('span', { className: ['date-rest'] }, text)]);
  return [
    ...rest(date.slice(0, at)),
    h('span', { className: ['date-day'] }, weekday),
    ...rest(date.slice(at + weekday.length)),
  ];
}

/** A lesson of the day: what to do on the left, what it needs on the right. */
function renderLessonBlock(context: PageContext, placed: PlacedLesson): Element {
  const { labels, school } = context.week;
  const { lesson, paths } = placed;
  const { head } = lesson;
  const begins = labels.text('begins-at', { time: labels.clock(head.begins ?? school.classBegins) });
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
    h('div', { className: ['lesson-parts'] }, [
      ...renderWho(context, placed),
      ...renderAnswers(context, placed),
      renderPart('fails', labels.text('if-something-fails'), [
        renderReliefCases(context, lesson),
        ...renderNotesLink(context),
      ]),
    ]),
  ]);
}

/** For who has never seen this calendar: its names, and for a run its gestures. */
function renderHelp({ week, paths: { gestures } }: PageContext, { lesson, paths }: PlacedLesson): Element {
  const { labels } = week;
  const link = (href: string, words: string, page: string) =>
    h('li', [
      h('a', { href }, words),
      h('span', { className: ['print-only', 'page-name'] }, [' (', h('bdi', page), ')']),
    ]);
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

function renderWho(context: PageContext, { lesson }: PlacedLesson): ElementContent[] {
  const placed = listPlacedLessons(context);
  const seats = renderSeats(context, lesson, countQuizzesBefore(placed, lesson));
  return seats.length === 0 ? [] : [renderPart('who', context.week.labels.text('who-sits-where'), seats)];
}

/** Leads to the key, and says that it is not for learners. */
function renderAnswers({ week }: PageContext, placed: PlacedLesson): ElementContent[] {
  const { labels } = week;
  const { quizzes, tonight } = placed.lesson;
  const { key, keyAnchors } = placed.paths;
  if (key === undefined) return [];
  const day = labels.date(tonight.date, 'day');
  const items = quizzes.map((quiz, index) =>
    h('li', [
      h('a', { href: `${key}#${keyAnchors[index] ?? ''}` }, labels.text('key-to', { title: quiz.title })),
      h('span', { className: ['print-only', 'page-name'] }, [
        ' (',
        ...fillLabel(labels, 'key-in-print', { page: [h('bdi', key)], day }),
        ')',
      ]),
    ]),
  );
  return [
    renderPart('answers', labels.text('answers'), [
      h('ul', { className: ['link-list'] }, items),
      h('p', { className: ['fine'] }, labels.text('teacher-only')),
    ]),
  ];
}

function renderNotesLink({ week }: PageContext): ElementContent[] {
  if (!hasWeekNotes(week)) return [];
  return [
    h('p', { className: ['link-list'] }, [h('a', { href: `#${RELIEF_ID}` }, week.labels.text('notes-all-week'))]),
  ];
}

function renderPart(kind: string, heading: string, children: ElementContent[]): Element {
  return h('div', { className: ['part', kind] }, [h('h4', heading), ...children]);
}

/** The days and nights of the week in a line: on paper, the way to the other days. */
function renderWeekLine(
  { week, view }: PageContext,
  days: readonly PlacedLesson[][],
  own: readonly PlacedLesson[],
): Element {
  const items = days.flatMap((day) => {
    const tonight = day[0]?.lesson.tonight;
    if (tonight === undefined) return [];
    const words = [
      h('span', week.labels.date(tonight.date, 'short')),
      renderName(tonight.night.name, view.namesLanguage),
    ];
    return [h('li', day === own ? { className: ['is-this'] } : {}, words)];
  });
  return h('ol', { className: ['week-line', 'print-only', 'plain-list'] }, items);
}
