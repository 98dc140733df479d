import type { Element, Root } from 'hast';
import { h } from 'hastscript';
import { renderKeyShell } from './key-shell.ts';
import { joinWithDots, listPlacedLessons, type PageContext, type PlacedLesson } from './page-context.ts';
import { pageStyles } from './page-styles.ts';

/** Where the answers are: the week's quizzes by lessons, each with a link to its key. It holds no answer itself. */
export function renderKeyListPage(context: PageContext): Root {
  const { labels, plan } = context.week;
  const lessons = listPlacedLessons(context).flatMap((placed) => renderLesson(context, placed));
  return renderKeyShell(context, {
    path: context.paths.key,
    of: plan.title,
    styles: pageStyles.keyList,
    main: lessons.length === 0 ? [h('p', labels.text('no-quiz-this-week'))] : lessons,
  });
}

function renderLesson({ week: { labels } }: PageContext, { lesson, paths }: PlacedLesson): Element[] {
  const { key, keyAnchors } = paths;
  if (key === undefined) return [];
  const day = h('time', { dateTime: lesson.tonight.date }, labels.date(lesson.tonight.date, 'day'));
  return [
    h('section', { className: ['learners-day'] }, [
      h('h2', joinWithDots([[day], lesson.head.title])),
      h(
        'ul',
        { className: ['sheet-list', 'plain-list'] },
        lesson.quizzes.map(({ title, papers }, index) =>
          h('li', { id: keyAnchors[index] ?? '' }, [
            h('a', { href: `${key}#${keyAnchors[index] ?? ''}` }, title),
            h('span', { className: ['sheet-kind'] }, labels.count('papers', papers.length)),
          ]),
        ),
      ),
    ]),
  ];
}
