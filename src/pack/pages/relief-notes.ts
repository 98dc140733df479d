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
 * What may fail in a lesson and is to be spoken of: what the lesson uses.
 * @param earlier Lessons of the same day, which have spoken of theirs.
 */
export function listReliefCases(
  { plan }: ResolvedWeek,
  lesson: ResolvedLesson,
  earlier: readonly ResolvedLesson[],
): ReliefCase[] {
  const isWritten = (what: ReliefCase) => plan.reliefNotes.some(({ when }) => when === what);
  const fails = (one: ResolvedLesson, what: ReliefCase) => mayFail(what, one, isWritten(what));
  return RELIEF_CASES.filter((what) => fails(lesson, what) && !earlier.some((one) => fails(one, what)));
}

/** What to do in each case: the author's words, and the kit's own where the author has none. */
export function renderReliefCases({ week }: PageContext, cases: readonly ReliefCase[]): Element {
  const { labels, school } = week;
  const items = cases.map((what) => {
    const lead = [h('strong', labels.text(`if-${what}`)), ' '];
    const written = week.plan.reliefNotes.filter(({ when }) => when === what);
    if (written.length === 0) return h('li', [...lead, labels.text(`do-${what}`)]);
    const words = written.map(({ text }) => text).join(' ');
    return h('li', [...lead, h('span', tagAuthors(labels.language, school.language), words)]);
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
