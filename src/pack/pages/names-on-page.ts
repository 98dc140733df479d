import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { fillLabel } from '../../content/fill-label.ts';
import { renderName } from '../../content/render-name.ts';
import { tagAuthors } from '../../content/tag-authors.ts';
import { addressSound } from '../../directives/gestures/run-sound.ts';
import { nameNightAnchor } from '../../directives/page-names.ts';
import type { BookEntry, NameBook } from './name-book.ts';
import { joinWithDots, type PageContext } from './page-context.ts';

/** Anchor of the names on a lesson's page. */
export const NAMES_ID = 'names';

/**
 * The one place of a page that tells of the calendar's names: how each is said, what it means, how its gesture is done.
 * Nights stand under their group, months at the end.
 * @param met Names that the page shows; their groups come with them.
 */
export function renderNamesOnPage(context: PageContext, book: NameBook, met: ReadonlySet<string>): Element {
  const entries = [...book.values()];
  const shown = entries.filter(({ name }) => met.has(name));
  const nights = shown.filter(({ kind }) => kind === 'night');
  const months = shown.filter(({ kind }) => kind === 'month');
  const groups = context.week.calendar.groups.flatMap(({ name }, index) => {
    const own = nights.filter(({ groupNumber }) => groupNumber === index + 1);
    if (own.length === 0 && !met.has(name)) return [];
    const entry = entries.find(({ kind, groupNumber }) => kind === 'group' && groupNumber === index + 1);
    return [renderGroup(context, { name, entry, nights: own })];
  });
  return h('section', { className: ['names'], id: NAMES_ID, ariaLabelledBy: `${NAMES_ID}-title` }, [
    h('h2', { id: `${NAMES_ID}-title` }, context.week.labels.text('names-on-page')),
    h('div', { className: ['name-groups'] }, [
      ...groups,
      ...(months.length === 0
        ? []
        : [
            h('div', { className: ['name-group'] }, [
              h('h3', context.week.labels.text('names-months')),
              renderList(context, months),
            ]),
          ]),
    ]),
  ]);
}

interface ShownGroup {
  readonly name: string;
  /** Absent where the calendar tells nothing of it. */
  readonly entry: BookEntry | undefined;
  readonly nights: readonly BookEntry[];
}

function renderGroup(context: PageContext, { name, entry, nights }: ShownGroup): Element {
  return h('div', { className: ['name-group'] }, [
    h('h3', entry === undefined ? {} : { id: entry.id }, [renderName(name, context.view.namesLanguage)]),
    ...(entry === undefined ? [] : renderWords(context, entry, [])),
    ...(nights.length === 0 ? [] : [renderList(context, nights)]),
  ]);
}

function renderList(context: PageContext, entries: readonly BookEntry[]): Element {
  return h(
    'ul',
    { className: ['name-list', 'plain-list'] },
    entries.map((entry) =>
      h(
        'li',
        { id: entry.id },
        renderWords(context, entry, [h('strong', [renderName(entry.name, context.view.namesLanguage)])]),
      ),
    ),
  );
}

/** A line with how a name is said and, on a screen, ways to hear it and to see its gesture; then what it means. */
function renderWords(context: PageContext, entry: BookEntry, name: readonly Element[]): ElementContent[] {
  const { labels, namesLanguage, explainedIn = labels.language } = context.view;
  const say =
    entry.say === undefined
      ? []
      : fillLabel(labels, 'say-name', { say: [h('span', { lang: namesLanguage }, entry.say)] });
  const words = joinWithDots([[...name], say]);
  const ways = renderWays(context, entry);
  const line =
    ways.length === 0
      ? words
      : [...words, h('span', { className: ['screen-only'] }, [{ type: 'text', value: ' · ' }, ...joinWithDots(ways)])];
  return [
    ...(line.length === 0 ? [] : [h('p', line)]),
    ...(entry.meaning === undefined ? [] : [h('p', tagAuthors(labels.language, explainedIn), entry.meaning)]),
  ];
}

function renderWays({ week, paths, view }: PageContext, { name, nightNumber }: BookEntry): ElementContent[][] {
  if (nightNumber === undefined) return [];
  const { labels, calendar, gestures, almanac } = week;
  const hidden = h('span', { className: ['visually-hidden'] }, [renderName(name, view.namesLanguage)]);
  const sound = calendar.spokenNames.get(nightNumber)?.sound;
  const key = almanac.run[nightNumber - 1]?.gesture;
  const hasGesture = key !== undefined && gestures.gestures[key] !== undefined;
  return [
    ...(sound === undefined
      ? []
      : [[h('a', { href: addressSound(sound) }, fillLabel(labels, 'hear-name', { name: [hidden] }))]]),
    ...(hasGesture
      ? [[h('a', { href: `${paths.gestures}#${nameNightAnchor(nightNumber)}` }, labels.text('see-gesture'))]]
      : []),
  ];
}
