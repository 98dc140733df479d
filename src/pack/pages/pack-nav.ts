import type { Element } from 'hast';
import { h } from 'hastscript';
import { linkBetween, listKeys } from '../pack-paths.ts';
import { groupByDate, listPlacedLessons, type PageContext } from './page-context.ts';
import type { SheetLink } from './sheet-links.ts';

/** The way round the pack, on top of every page of the teacher's part; the page it stands on is marked. */
export function renderPackNav(context: PageContext, current: string): Element {
  const { paths, week } = context;
  const { labels } = week;
  const days = groupByDate(listPlacedLessons(context)).flatMap((day) =>
    day.map(({ lesson, paths: { page } }) => {
      const date = labels.date(lesson.tonight.date, 'short');
      // Lessons of one day have the same date: their titles tell them apart.
      return renderItem(current, page, day.length === 1 ? date : `${date}: ${lesson.head.title}`);
    }),
  );
  return h('nav', { className: ['pack-nav'], ariaLabel: labels.text('pack-pages') }, [
    h('ul', [
      renderItem(current, paths.start, labels.text('start-here')),
      ...days,
      renderItem(current, paths.score, labels.text('month-for-wall')),
      renderItem(current, paths.gestures, labels.text('how-gestures-go')),
      renderItem(current, paths.key, labels.text('answer-key'), listKeys(paths)),
      renderItem(current, paths.learners, labels.text('for-learners')),
    ]),
  ]);
}

/** @param inside Paths of pages that the page leads to and that have no item of their own: on one of them, it is marked. */
function renderItem(current: string, path: string, words: string, inside: readonly string[] = []): Element {
  const here = path === current ? 'page' : inside.includes(current) ? 'true' : undefined;
  const mark = here === undefined ? {} : { ariaCurrent: here };
  return h('li', [h('a', { href: linkBetween(current, path), ...mark }, words)]);
}

/** Links to papers and handouts, with what each is. */
export function renderSheetLinks(current: string, sheets: readonly SheetLink[]): Element {
  return h(
    'ul',
    { className: ['link-list'] },
    sheets.map(({ title, kind, path }) =>
      h('li', [
        h('a', { href: linkBetween(current, path) }, title),
        ' ',
        h('span', { className: ['sheet-kind'] }, kind),
      ]),
    ),
  );
}
