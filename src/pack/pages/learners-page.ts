import type { Element, Root } from 'hast';
import { h } from 'hastscript';
import type { CivilDate } from '../../calendar/rules.ts';
import type { Labels } from '../../content/labels.ts';
import { linkBetween } from '../pack-paths.ts';
import { type Digest, renderPageShell } from '../page-shell.ts';
import { pageStyles } from './page-styles.ts';

/** A day's pages for learners: titles and paths, nothing else. */
export interface LearnersDay {
  readonly date: CivilDate;
  readonly sheets: readonly {
    readonly title: string /** What it is, such as "handout". */;
    readonly kind: string;
    readonly path: string;
  }[];
}

/** What the list is made from. */
export interface LearnersList {
  readonly labels: Labels;
  readonly schoolName: string;
  /** Path of the list itself. */
  readonly path: string;
  /** In order; days without a page are left out, and a date that comes twice stands once. */
  readonly days: readonly LearnersDay[];
  readonly digest: Digest;
}

/** The list of what learners may have, in order of days. It links to pages of the learners' folder alone. */
export function renderLearnersPage(list: LearnersList): Root {
  const { labels } = list;
  const days = mergeDays(list.days);
  return renderPageShell(
    {
      labels,
      title: labels.text('for-learners'),
      kind: 'learners-page',
      styles: pageStyles.learners,
      skipLabel: labels.text('skip-link'),
      header: [h('p', { className: ['eyebrow'] }, list.schoolName), h('h1', labels.text('for-learners'))],
      main: days.length === 0 ? [h('p', labels.text('no-sheets'))] : days.map((day) => renderDay(day, list)),
      footer: [h('p', labels.text('print-these'))],
    },
    list.digest,
  );
}

/** Days with pages; two lessons of one date stand under one heading. */
function mergeDays(days: readonly LearnersDay[]): LearnersDay[] {
  const merged = new Map<CivilDate, LearnersDay>();
  for (const { date, sheets } of days) {
    if (sheets.length > 0) merged.set(date, { date, sheets: [...(merged.get(date)?.sheets ?? []), ...sheets] });
  }
  return [...merged.values()];
}

function renderDay(day: LearnersDay, { labels, path }: LearnersList): Element {
  return h('section', { className: ['learners-day'] }, [
    h('h2', [h('time', { dateTime: day.date }, labels.date(day.date, 'day'))]),
    h(
      'ul',
      { className: ['sheet-list', 'plain-list'] },
      day.sheets.map((sheet) =>
        h('li', [
          h('a', { href: linkBetween(path, sheet.path) }, sheet.title),
          h('span', { className: ['sheet-kind'] }, sheet.kind),
        ]),
      ),
    ),
  ]);
}
