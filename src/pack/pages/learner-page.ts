import type { ElementContent, Root } from 'hast';
import { h } from 'hastscript';
import type { CivilDate } from '../../calendar/rules.ts';
import type { Labels } from '../../content/labels.ts';
import { type Digest, renderPageShell } from '../page-shell.ts';

/** What a learners' page may know of the pack: nothing that could hold an answer. */
export interface LearnerFrame {
  readonly labels: Labels;
  /** BCP 47 tag of the pack's fixed words. */
  readonly language: string;
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
  page: {
    readonly title: string;
    readonly kind: string;
    readonly styles: string;
    readonly main: readonly ElementContent[];
  },
): Root {
  const { labels } = frame;
  return renderPageShell(
    {
      language: frame.language,
      title: `${page.title}: ${labels.date(frame.date, 'day')}`,
      kind: page.kind,
      styles: page.styles,
      skipLabel: labels.text('skip-link'),
      header: [
        h('nav', { className: ['pack-nav'], ariaLabel: labels.text('pack-pages') }, [
          h('ul', [h('li', [h('a', { href: LIST }, labels.text('for-learners'))])]),
        ]),
      ],
      main: page.main,
      footer: [h('p', [frame.schoolName, ' · ', labels.date(frame.date, 'long')])],
    },
    frame.digest,
  );
}
