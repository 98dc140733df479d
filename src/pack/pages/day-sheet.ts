import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { computeNightCard, renderNightCard } from '../../directives/night-card.ts';
import { renderKeeperLine } from './how-we-know.ts';
import { renderSheetLinks } from './pack-nav.ts';
import { joinWithDots, type PageContext, type PlacedLesson } from './page-context.ts';
import { listSheets } from './sheet-links.ts';
import { renderStepTimes } from './step-times.ts';

/** Anchor of the notes for the whole week. */
const RELIEF_ID = 'if-something-fails';

/** One day of the start page: the night, and for each lesson what to do, bring and print. Prints on a sheet of its own. */
export function renderDaySheet(context: PageContext, day: readonly PlacedLesson[]): Element {
  const first = day[0];
  if (first === undefined) throw new Error('A day without a lesson has no sheet.');
  const { week, view } = context;
  const { labels, plan, school } = week;
  const { head, tonight } = first.lesson;
  const card = computeNightCard(week.almanac, week.calendar, tonight.date, head.begins ?? school.classBegins);
  return h('section', { className: ['day-sheet'], id: head.day, ariaLabelledBy: `${head.day}-title` }, [
    h('p', { className: ['sheet-line', 'print-only'] }, joinWithDots([plan.title, school.name, plan.for])),
    h('h2', { id: `${head.day}-title` }, [
      h('span', { className: ['today-flag'], hidden: true }, `${labels.text('today')}, `),
      h('time', { dateTime: tonight.date }, labels.date(tonight.date, 'day')),
    ]),
    ...renderNightCard(card, view),
    ...day.map((placed) => renderLessonBlock(context, placed, day.length > 1)),
    h('p', { className: ['keeper-line', 'print-only'] }, renderKeeperLine(week)),
  ]);
}

function renderLessonBlock(context: PageContext, placed: PlacedLesson, several: boolean): Element {
  const { labels, school } = context.week;
  const { lesson, paths } = placed;
  const { head } = lesson;
  const begins = labels.text('begins-at', { time: labels.clock(head.begins ?? school.classBegins) });
  return h('section', { className: ['lesson-block'] }, [
    h('header', { className: ['lesson-block-head'] }, [
      h('h3', [h('a', { href: paths.page, className: ['named-in-print'] }, head.title)]),
      h('p', joinWithDots([...(several ? [begins] : []), labels.count('minutes', head.minutes)])),
    ]),
    h('div', { className: ['lesson-columns'] }, [
      h('div', { className: ['to-do'] }, [
        h('h4', labels.text('what-to-do')),
        renderStepTimes(lesson.steps, labels, paths.page),
        ...(lesson.hasRun ? [renderGesturesLink(context)] : []),
      ]),
      ...renderBring(context, head.materials),
    ]),
    h('div', { className: ['lesson-links'] }, [
      ...renderSheets(context, placed),
      ...renderAnswers(context, placed),
      ...renderReliefLink(context),
    ]),
  ]);
}

/** For who has a run to lead and has never seen the gestures. */
function renderGesturesLink({ week, paths }: PageContext): Element {
  const link = h('a', { href: paths.gestures, className: ['named-in-print'] }, week.labels.text('how-gestures-go'));
  return h('p', { className: ['link-list'] }, [link]);
}

function renderBring({ week }: PageContext, materials: readonly string[]): ElementContent[] {
  if (materials.length === 0) return [];
  return [
    renderPart(week.labels.text('bring'), [
      h(
        'ul',
        materials.map((item) => h('li', item)),
      ),
    ]),
  ];
}

/** Leads to the key, and says that it is not for learners. */
function renderAnswers({ week, paths }: PageContext, placed: PlacedLesson): ElementContent[] {
  const { labels } = week;
  const { quizzes } = placed.lesson;
  if (quizzes.length === 0) return [];
  const items = quizzes.map((quiz, index) =>
    h('li', [
      h(
        'a',
        { href: `${paths.key}#${placed.paths.keyAnchors[index] ?? ''}`, className: ['named-in-print'] },
        labels.text('key-to', { title: quiz.title }),
      ),
    ]),
  );
  return [
    renderPart(labels.text('answers'), [
      h('ul', { className: ['link-list'] }, items),
      h('p', { className: ['fine'] }, labels.text('teacher-only')),
    ]),
  ];
}

function renderSheets(context: PageContext, placed: PlacedLesson): ElementContent[] {
  const links = listSheets(context.week.labels, placed);
  if (links.length === 0) return [];
  return [renderPart(context.week.labels.text('to-print'), [renderSheetLinks(context.paths.start, links)])];
}

/** The notes for a relief teacher, once for the week; each day leads here. */
export function renderReliefNotes({ week }: PageContext): ElementContent[] {
  const { reliefNotes } = week.plan;
  if (reliefNotes.length === 0) return [];
  return [
    h('section', { className: ['relief'], id: RELIEF_ID, ariaLabelledBy: `${RELIEF_ID}-title` }, [
      h('h2', { id: `${RELIEF_ID}-title` }, week.labels.text('if-something-fails')),
      h(
        'ul',
        reliefNotes.map((note) => h('li', note)),
      ),
    ]),
  ];
}

function renderReliefLink({ week }: PageContext): ElementContent[] {
  if (week.plan.reliefNotes.length === 0) return [];
  const link = h('a', { href: `#${RELIEF_ID}` }, week.labels.text('notes-for-week'));
  return [renderPart(week.labels.text('if-something-fails'), [h('p', { className: ['link-list'] }, [link])])];
}

function renderPart(heading: string, children: ElementContent[]): Element {
  return h('div', { className: ['part'] }, [h('h4', heading), ...children]);
}
