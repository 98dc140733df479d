import type { Root } from 'hast';
import { h } from 'hastscript';
import type { CivilDate } from '../../calendar/rules.ts';
import type { Labels } from '../../content/labels.ts';
import { type Digest, type PageParts, renderPageShell } from '../page-shell.ts';

/** What a learners' page may know of the pack: nothing that could hold an answer. */
export interface LearnerFrame {
  readonly labels: Labels;
  /** BCP 47 tag of what the author wrote: another one where there are no labels for the school's language. */
  readonly authorsLanguage: string;
  readonly schoolName: string;
  readonly date: CivilDate;
  readonly digest: Digest;
}

/** The list of learners' pages, which stands beside each of them. */
const LIST = 'index.html';

/** A page of the learners' folder. It links to the list beside it and to nothing else. */
export function renderLearnerPage(
  frame: LearnerFrame,
  page: Pick<PageParts, 'title' | 'kind' | 'styles' | 'script' | 'playsSound' | 'main'>,
): Root {
  const { labels } = frame;
  return renderPageShell(
    {
      ...page,
      labels,
      title: `${page.title}: ${labels.date(frame.date, 'day')}`,
      skipLabel: labels.text('skip-link'),
      header: [
        h('nav', { className: ['pack-nav'], ariaLabel: labels.text('pack-pages') }, [
          h('ul', [h('li', [h('a', { href: LIST }, labels.text('for-learners'))])]),
        ]),
      ],
      footer: [h('p', [frame.schoolName, ' · ', labels.date(frame.date, 'long')])],
    },
    frame.digest,
  );
}
