import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { renderName } from '../../content/render-name.ts';
import { tagAuthors } from '../../content/tag-authors.ts';
import { renderMoon } from '../../drawing/moon.ts';
import { joinWithDots, type PageContext, type PlacedLesson } from './page-context.ts';
import { listSheets } from './sheet-links.ts';

/** Anchor of the week at a glance. */
export const WEEK_ID = 'week';

const MOON_RADIUS_PX = 18;

/** The week at a glance: a row a lesson, with its day and night, its steps, what to gather and what to print. */
export function renderWeekTable(context: PageContext, days: readonly PlacedLesson[][]): Element {
  const { labels } = context.week;
  const heads = (['day-column', 'lesson-column', 'bring-column', 'print-column'] as const).map((key) =>
    labels.text(key),
  );
  return h('section', { className: ['week'], id: WEEK_ID, ariaLabelledBy: `${WEEK_ID}-title` }, [
    h('h2', { id: `${WEEK_ID}-title` }, labels.text('whole-week')),
    h('table', { className: ['week-table'] }, [
      h('thead', [
        h(
          'tr',
          heads.map((head) => h('th', { scope: 'col' }, head)),
        ),
      ]),
      ...days.map((day) =>
        h(
          'tbody',
          day.map((placed, index) => renderRow(context, placed, { isFirst: index === 0, ofDay: day.length, heads })),
        ),
      ),
    ]),
  ]);
}

interface RowSetting {
  readonly isFirst: boolean;
  /** Lessons of the day. */
  readonly ofDay: number;
  readonly heads: readonly string[];
}

function renderRow(context: PageContext, placed: PlacedLesson, { isFirst, ofDay, heads }: RowSetting): Element {
  const { labels, school } = context.week;
  const { head } = placed.lesson;
  const sheets = listSheets(labels, placed);
  // On a small screen the row is laid out as a list, with the head of the column over each cell.
  const cell = (column: number, children: ElementContent[]) =>
    h('td', children.length === 0 ? {} : { dataHead: heads[column] ?? '' }, children);
  return h('tr', [
    ...(isFirst ? [renderDayHead(context, placed, ofDay)] : []),
    cell(1, renderLesson(context, placed)),
    cell(2, renderList(head.materials, tagAuthors(labels.language, school.language))),
    cell(3, renderList(sheets.map(({ title, kind }) => `${title} (${kind})`))),
  ]);
}

function renderDayHead({ week, view }: PageContext, { lesson }: PlacedLesson, ofDay: number): Element {
  const { tonight, head } = lesson;
  return h('th', { scope: 'rowgroup', ...(ofDay > 1 ? { rowSpan: ofDay } : {}) }, [
    h('a', { href: `#${head.day}` }, [h('time', { dateTime: tonight.date }, week.labels.date(tonight.date, 'short'))]),
    h('span', { className: ['week-night'] }, [
      renderMoon(week.almanac.moonBestSeen(tonight), { radius: MOON_RADIUS_PX }),
      renderName(tonight.night.name, view.namesLanguage),
    ]),
  ]);
}

function renderLesson({ week }: PageContext, { lesson, paths }: PlacedLesson): ElementContent[] {
  const { labels, school } = week;
  const { head, steps } = lesson;
  const begins = labels.clock(head.begins ?? school.classBegins);
  return [
    h('p', { className: ['week-lesson'] }, [
      h('a', { href: paths.page }, head.title),
      ' ',
      h('span', joinWithDots([begins, labels.count('minutes', head.minutes)])),
    ]),
    ...(steps.length === 0
      ? []
      : [
          h(
            'ol',
            { className: ['plain-list', 'week-steps'] },
            steps.map(({ title, minutes }) =>
              h('li', [h('span', title), ' ', h('span', { className: ['for'] }, labels.count('minutes', minutes))]),
            ),
          ),
        ]),
  ];
}

function renderList(items: readonly string[], properties: { readonly lang?: string } = {}): ElementContent[] {
  if (items.length === 0) return [];
  return [
    h(
      'ul',
      properties,
      items.map((item) => h('li', item)),
    ),
  ];
}
