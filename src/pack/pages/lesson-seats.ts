import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { fillLabel } from '../../content/fill-label.ts';
import type { Labels } from '../../content/labels.ts';
import type { ResolvedLesson } from '../../lesson/model.ts';
import { listRoles } from './group-roles.ts';
import type { PageContext } from './page-context.ts';

/**
 * Who sits where: the names of the groups and, for each quiz, what each seat does in it. Nothing where no group has a name.
 * @param quizzesBefore Quizzes of the week before this lesson's own.
 */
export function renderSeats({ week }: PageContext, lesson: ResolvedLesson, quizzesBefore: number): Element[] {
  const { labels, school } = week;
  const inQuizzes = lesson.quizzes.flatMap((quiz) => quiz.papers.map(({ group }) => group));
  const groups = [...new Set([...school.groups, ...inQuizzes])];
  if (groups.length === 0) return [];
  return [
    h('ul', { className: ['seats', 'plain-list'] }, [
      h('li', labels.text('table-groups', { groups: labels.list(groups) })),
      ...lesson.quizzes.map((quiz, index) => {
        const seats = renderRoles(labels, quizzesBefore + index + 1);
        return h('li', fillLabel(labels, 'seats-in-quiz', { quiz: quiz.title, seats }));
      }),
    ]),
  ];
}

/** "Seat 1: Reader · Seat 2: Writer", each in one piece. */
function renderRoles(labels: Labels, quizOfWeek: number): ElementContent[] {
  const roles = listRoles(quizOfWeek).map((role, index) =>
    labels.text('key-seat-role', { n: index + 1, role: labels.text(role) }),
  );
  return roles.flatMap((words, index) => [
    h('span', { className: ['seat-role'] }, index === roles.length - 1 ? words : `${words} ·`),
    ...(index === roles.length - 1 ? [] : [{ type: 'text' as const, value: ' ' }]),
  ]);
}
