import type { Element, ElementContent, Root } from 'hast';
import { h } from 'hastscript';
import { fillLabel } from '../../content/fill-label.ts';
import { renderName } from '../../content/render-name.ts';
import { listDateEclipses } from '../../directives/eclipse-notice.ts';
import { renderPageShell } from '../page-shell.ts';
import { renderEclipseSection } from './eclipse-section.ts';
import { playSound, renderPlayerParts } from './gesture-player.ts';
import { renderHowWeKnow } from './how-we-know.ts';
import { renderPackNav, renderSheetLinks } from './pack-nav.ts';
import { joinWithDots, type PageContext, type PlacedLesson } from './page-context.ts';
import { pageStyles } from './page-styles.ts';
import { listSheets } from './sheet-links.ts';
import { renderStepTimes } from './step-times.ts';
import { tagAuthors } from './tag-authors.ts';

/** A lesson's page for the teacher: what it is for, its steps at a glance, then the lesson itself. */
export function renderDayPage(context: PageContext, placed: PlacedLesson): Root {
  const { week } = context;
  const { labels, plan, school } = week;
  const { lesson, paths } = placed;
  const day = labels.date(lesson.tonight.date, 'day');
  return renderPageShell(
    {
      language: labels.language,
      title: `${lesson.head.title}: ${day}`,
      kind: 'day-page',
      styles: pageStyles.lesson,
      skipLabel: labels.text('skip-link'),
      ...playSound(lesson),
      runningLine: `${lesson.head.title} · ${day} · ${plan.title}`,
      header: [renderPackNav(context, paths.page), renderLessonHead(context, placed)],
      main: [
        ...renderEclipseSection('date', listDateEclipses(week.almanac.place, lesson.tonight.date), week),
        renderOverview(context, placed),
        h('div', { className: ['lesson-body'], ...tagAuthors(labels.language, school.language) }, lesson.body),
        renderTurnPage(context, placed),
        ...renderPlayerParts(lesson, labels),
      ],
      footer: renderHowWeKnow(week, lesson),
    },
    context.digest,
  );
}

function renderLessonHead({ week, view }: PageContext, { lesson }: PlacedLesson): Element {
  const { labels, plan, school } = week;
  const { head, tonight } = lesson;
  const night = renderName(tonight.night.name, view.namesLanguage);
  const begins = labels.clock(head.begins ?? school.classBegins);
  return h('div', { className: ['lesson-head'] }, [
    h(
      'p',
      { className: ['eyebrow'] },
      joinWithDots([
        [h('time', { dateTime: tonight.date }, labels.date(tonight.date, 'long'))],
        fillLabel(labels, 'night-named', { night: [night] }),
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

function renderOverview(context: PageContext, placed: PlacedLesson): Element {
  const { labels } = context.week;
  const { lesson, paths } = placed;
  const sheets = listSheets(context.week.labels, placed);
  const steps =
    lesson.steps.length === 0
      ? []
      : [renderPart('steps', labels.text('steps'), [renderStepTimes(lesson.steps, labels, '')])];
  return h('div', { className: ['overview'] }, [
    ...renderWords('intentions', labels.text('intentions'), lesson.head.intentions),
    ...renderWords('success', labels.text('success'), lesson.head.success),
    ...steps,
    ...renderWords('bring', labels.text('bring'), lesson.head.materials),
    ...(sheets.length === 0
      ? []
      : [renderPart('sheets', labels.text('to-print'), [renderSheetLinks(paths.page, sheets)])]),
    ...renderKeyLink(context, placed),
  ]);
}

function renderKeyLink({ week, paths }: PageContext, placed: PlacedLesson): Element[] {
  const { labels } = week;
  if (placed.lesson.quizzes.length === 0) return [];
  const href = `${paths.key}#${placed.paths.keyAnchors[0] ?? ''}`;
  return [
    renderPart('answers', labels.text('answers'), [
      h('p', { className: ['link-list'] }, [
        h('a', { href }, labels.text('answer-key')),
        ` (${labels.text('teacher-only')})`,
      ]),
    ]),
  ];
}

function renderWords(kind: string, heading: string, items: readonly string[]): Element[] {
  if (items.length === 0) return [];
  return [
    renderPart(kind, heading, [
      h(
        'ul',
        items.map((item) => h('li', item)),
      ),
    ]),
  ];
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
