import type { Element } from 'hast';
import { h } from 'hastscript';
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
        const roles = listRoles(quizzesBefore + index + 1).map((role, seat) =>
          labels.text('key-seat-role', { n: seat + 1, role: labels.text(role) }),
        );
        return h('li', labels.text('seats-in-quiz', { quiz: quiz.title, seats: roles.join(' · ') }));
      }),
    ]),
  ];
}
