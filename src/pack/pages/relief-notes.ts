import type { Element } from 'hast';
import { h } from 'hastscript';
import { RELIEF_CASES } from '../../content/schemas/week.ts';
import { tagAuthors } from '../../content/tag-authors.ts';
import type { ReliefCase } from '../../content/types.ts';
import type { ResolvedLesson, ResolvedWeek } from '../../lesson/model.ts';
import type { PageContext } from './page-context.ts';

/** Anchor of the notes for the whole week. */
export const RELIEF_ID = 'good-to-know';

/**
 * What to do in a lesson when something fails: the author's words, and the kit's own where the author has none and the
 * lesson uses what may fail.
 */
export function renderReliefCases({ week }: PageContext, lesson: ResolvedLesson): Element {
  const { labels, school } = week;
  const items = RELIEF_CASES.flatMap((what) => {
    const lead = [h('strong', labels.text(`if-${what}`)), ' '];
    const written = week.plan.reliefNotes.filter(({ when }) => when === what);
    if (!mayFail(what, lesson, written.length > 0)) return [];
    if (written.length === 0) return [h('li', [...lead, labels.text(`do-${what}`)])];
    const words = written.map(({ text }) => text).join(' ');
    return [h('li', [...lead, h('span', tagAuthors(labels.language, school.language), words)])];
  });
  return h('ul', { className: ['relief-cases', 'plain-list'] }, items);
}

/** Rain keeps a class from more than the sky, so what the author says of it counts every day. */
function mayFail(what: ReliefCase, lesson: ResolvedLesson, isWritten: boolean): boolean {
  switch (what) {
    case 'no-sound':
      return lesson.hasRun;
    case 'no-projector':
      return true;
    case 'no-copies':
      return lesson.quizzes.length > 0 || lesson.handouts.length > 0;
    case 'rain':
      return lesson.outdoors || isWritten;
  }
}

/** Whether the author left notes that count all week. */
export function hasWeekNotes({ plan }: ResolvedWeek): boolean {
  return plan.reliefNotes.some(({ when }) => when === undefined);
}

/** The author's notes that count all week, once; each day leads here. */
export function renderWeekNotes({ week }: PageContext): Element[] {
  if (!hasWeekNotes(week)) return [];
  const { labels, plan, school } = week;
  const notes = plan.reliefNotes.filter(({ when }) => when === undefined);
  return [
    h('section', { className: ['relief'], id: RELIEF_ID, ariaLabelledBy: `${RELIEF_ID}-title` }, [
      h('h2', { id: `${RELIEF_ID}-title` }, labels.text('relief-notes')),
      h(
        'ul',
        tagAuthors(labels.language, school.language),
        notes.map(({ text }) => h('li', text)),
      ),
    ]),
  ];
}
