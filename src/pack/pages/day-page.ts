import type { Element, ElementContent, Root } from 'hast';
import { h } from 'hastscript';
import { fillLabel } from '../../content/fill-label.ts';
import { renderName } from '../../content/render-name.ts';
import { tagAuthors } from '../../content/tag-authors.ts';
import { listDateEclipses } from '../../directives/eclipse-notice.ts';
import { SCORE_CLASS } from '../../directives/score-strip/render-score-strip.ts';
import { renderPageShell } from '../page-shell.ts';
import { renderEclipseSection } from './eclipse-section.ts';
import { playSound, renderPlayerParts } from './gesture-player.ts';
import { holdsClass } from './holds-class.ts';
import { renderHowWeKnow } from './how-we-know.ts';
import { linkNames } from './link-names.ts';
import { createNameBook, type NameBook } from './name-book.ts';
import { NAMES_ID, renderNamesOnPage } from './names-on-page.ts';
import { renderPackNav, renderSheetLinks } from './pack-nav.ts';
import { joinWithDots, type PageContext, type PlacedLesson } from './page-context.ts';
import { styleLesson } from './page-styles.ts';
import { listSheets } from './sheet-links.ts';
import { renderStepTimes } from './step-times.ts';

/**
 * A lesson's page for the teacher: its steps and what it needs at a glance, the lesson itself, then what somebody may not
 * know: the names on the page, and how its night was found.
 */
export function renderDayPage(context: PageContext, placed: PlacedLesson): Root {
  const { week } = context;
  const { labels, plan, school } = week;
  const { lesson, paths } = placed;
  const day = labels.date(lesson.tonight.date, 'day');
  const book = createNameBook(week);
  const met = new Set([lesson.tonight.night.name]);
  const body = linkNames(lesson.body, book, met);
  return renderPageShell(
    {
      labels,
      title: `${lesson.head.title}: ${day}`,
      kind: 'day-page',
      styles: styleLesson({ runs: lesson.hasRun, scores: holdsClass(lesson.body, SCORE_CLASS) }),
      skipLabel: labels.text('skip-link'),
      ...playSound(lesson),
      runningLine: `${lesson.head.title} · ${day} · ${plan.title} · ${labels.text('teacher-only')}`,
      header: [renderPackNav(context, paths.page), renderLessonHead(context, placed, book)],
      main: [
        ...renderEclipseSection('date', listDateEclipses(week.almanac.place, lesson.tonight.date), week),
        renderOverview(context, placed),
        h('div', { className: ['lesson-body'], ...tagAuthors(labels.language, school.language) }, body),
        renderTurnPage(context, placed),
        renderNamesOnPage(context, book, met),
        ...renderPlayerParts(lesson, labels),
      ],
      footer: renderHowWeKnow(week, lesson),
    },
    context.digest,
  );
}

function renderLessonHead({ week, view }: PageContext, { lesson }: PlacedLesson, book: NameBook): Element {
  const { labels, plan, school } = week;
  const { head, tonight } = lesson;
  const night = linkNames([renderName(tonight.night.name, view.namesLanguage)], book, new Set());
  const begins = labels.clock(head.begins ?? school.classBegins);
  return h('div', { className: ['lesson-head'] }, [
    h('p', { className: ['teacher-mark', 'print-only'] }, labels.text('teacher-only')),
    h(
      'p',
      { className: ['eyebrow'] },
      joinWithDots([
        [h('time', { dateTime: tonight.date }, labels.date(tonight.date, 'long'))],
        fillLabel(labels, 'night-named', { night }),
      ]),
    ),
    h('h1', head.title),
    h(
      'p',
      { className: ['lesson-facts'] },
      joinWithDots([plan.for, labels.text('begins-at', { time: begins }), labels.count('minutes', head.minutes)]),
    ),
  ]);
}

/** First what is needed at once: the steps, what to bring and to print. Then what the lesson is for. */
function renderOverview(context: PageContext, placed: PlacedLesson): Element {
  const { labels } = context.week;
  const { lesson, paths } = placed;
  const sheets = listSheets(labels, placed);
  return h('div', { className: ['overview'] }, [
    h('div', { className: ['overview-column'] }, [
      ...(lesson.steps.length === 0
        ? []
        : [renderPart('steps', labels.text('steps'), [renderStepTimes(lesson.steps, labels, '')])]),
    ]),
    h('div', { className: ['overview-column'] }, [
      ...renderWords(context, 'bring', lesson.head.materials),
      ...(sheets.length === 0
        ? []
        : [renderPart('sheets', labels.text('to-print'), [renderSheetLinks(paths.page, sheets)])]),
      ...renderKeyLink(context, placed),
    ]),
    renderHelp(context, placed),
    ...renderWords(context, 'intentions', lesson.head.intentions),
    ...renderWords(context, 'success', lesson.head.success),
  ]);
}

/** Ways to what the page does not say itself. Nothing of it is of use on paper. */
function renderHelp({ week, paths }: PageContext, { lesson }: PlacedLesson): Element {
  const { labels } = week;
  const day = labels.date(lesson.tonight.date, 'day');
  const links = [
    h('a', { href: `#${NAMES_ID}` }, labels.text('names-of-day')),
    ...(lesson.hasRun ? [h('a', { href: paths.gestures }, labels.text('how-gestures-go'))] : []),
    h('a', { href: `${paths.start}#${lesson.head.day}` }, labels.text('day-sheet-of', { day })),
  ];
  return h(
    'ul',
    { className: ['link-list', 'help-links', 'screen-only'] },
    links.map((link) => h('li', [link])),
  );
}

function renderKeyLink({ week }: PageContext, placed: PlacedLesson): Element[] {
  const { labels } = week;
  const { key, keyAnchors } = placed.paths;
  if (key === undefined) return [];
  const href = `${key}#${keyAnchors[0] ?? ''}`;
  return [
    renderPart('answers', labels.text('answers'), [
      h('p', { className: ['link-list'] }, [
        h('a', { href }, labels.text('answer-key')),
        ` (${labels.text('teacher-only')})`,
      ]),
    ]),
  ];
}

function renderWords(
  { week: { labels, school } }: PageContext,
  kind: 'bring' | 'intentions' | 'success',
  items: readonly string[],
): Element[] {
  if (items.length === 0) return [];
  const list = h(
    'ul',
    tagAuthors(labels.language, school.language),
    items.map((item) => h('li', item)),
  );
  return [renderPart(kind, labels.text(kind), [list])];
}

function renderPart(kind: string, heading: string, children: ElementContent[]): Element {
  return h('section', { className: ['overview-part', kind] }, [h('h2', heading), ...children]);
}

/** The lessons before and after this one. */
function renderTurnPage({ week, paths }: PageContext, { lesson }: PlacedLesson): Element {
  const { labels, lessons } = week;
  const index = lessons.indexOf(lesson);
  const link = (offset: -1 | 1, words: 'lesson-before' | 'lesson-after') => {
    const other = lessons[index + offset];
    const page = paths.lessons[index + offset]?.page;
    if (other === undefined || page === undefined) return [];
    const day = labels.date(other.tonight.date, 'short');
    const rel = offset < 0 ? 'prev' : 'next';
    return [
      h('li', { className: [rel] }, [
        h('span', { className: ['turn-way'] }, `${labels.text(words)} `),
        h('a', { href: page, rel: [rel] }, `${day}: ${other.head.title}`),
      ]),
    ];
  };
  return h('nav', { className: ['turn-page'], ariaLabel: labels.text('other-lessons') }, [
    h('ul', { className: ['plain-list'] }, [...link(-1, 'lesson-before'), ...link(1, 'lesson-after')]),
  ]);
}
