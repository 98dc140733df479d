import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { fillLabel } from '../../content/fill-label.ts';
import { markLeavingLink } from '../../content/mark-leaving-link.ts';
import { renderName } from '../../content/render-name.ts';
import type { Recording } from '../../content/types.ts';
import { renderCode } from '../../drawing/code.ts';
import type { ResolvedWeek } from '../../lesson/model.ts';
import { joinWithDots, type PageContext } from './page-context.ts';
import type { ScoreMonth } from './score-months.ts';

/** An address, and what is heard there. */
interface HeardLink {
  readonly link: string;
  readonly terms: Pick<Recording, 'credit' | 'permission'>;
  /** Names of nights, and titles of runs. */
  readonly heard: ElementContent[][];
}

/** A sheet with a code for each address at which names of the months' nights, or whole runs, are heard; nothing when there is none. */
export function renderScoreCodes({ week, view }: PageContext, months: readonly ScoreMonth[]): Element[] {
  const links = listLinks(week, months, view.namesLanguage);
  if (links.length === 0) return [];
  const { labels } = week;
  return [
    h('section', { className: ['score-codes'], ariaLabelledBy: 'codes-title' }, [
      h('h2', { id: 'codes-title' }, labels.text('hear-it')),
      h('p', labels.text('scan-code')),
      h(
        'ul',
        { className: ['plain-list'] },
        links.map(({ link, terms, heard }) =>
          h('li', { className: ['code-entry'] }, [
            renderCode(link),
            h('div', { className: ['code-words'] }, [
              h('p', { className: ['code-heard'] }, joinWithDots(heard)),
              h('p', fillLabel(labels, 'hear-at', { link: [markLeavingLink(h('a', { href: link }, link), labels)] })),
              h('p', { className: ['code-terms'] }, labels.text('recording-by', terms)),
            ]),
          ]),
        ),
      ),
    ]),
  ];
}

/** Recordings at one address on the same terms stand together. */
function listLinks({ calendar, gestures, labels }: ResolvedWeek, months: readonly ScoreMonth[], language: string) {
  const links = new Map<string, HeardLink>();
  const add = ({ link, credit, permission }: Recording, heard: ElementContent[]) => {
    if (link === undefined) return;
    const key = JSON.stringify([link, credit, permission]);
    const entry = links.get(key) ?? { link, terms: { credit, permission }, heard: [] };
    entry.heard.push(heard);
    links.set(key, entry);
  };
  for (const night of listNights(months)) {
    const spoken = calendar.spokenNames.get(night.number);
    if (spoken !== undefined) add(spoken, [renderName(night.name, language)]);
  }
  for (const [name, recording] of Object.entries(gestures.recordings)) {
    add(recording, [{ type: 'text', value: `${labels.text('gesture-run')}: ${name}` }]);
  }
  return [...links.values()];
}

/** Each night of the months once, in the order of the calendar's list. */
function listNights(months: readonly ScoreMonth[]) {
  const nights = months.flatMap(({ groups }) => groups.flatMap((group) => group.nights.map(({ night }) => night)));
  return [...new Map(nights.map((night) => [night.number, night])).values()].sort((a, b) => a.number - b.number);
}
