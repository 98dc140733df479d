import type { ElementContent, Root } from 'hast';
import { h } from 'hastscript';
import { type PageParts, renderPageShell } from '../page-shell.ts';
import { renderPackNav } from './pack-nav.ts';
import { joinWithDots, type PageContext } from './page-context.ts';

/** What the pages of the answer key do not have in common. */
interface KeyParts extends Pick<PageParts, 'styles' | 'script'> {
  readonly path: string;
  /** What its answers belong to, for titles. */
  readonly of: string;
  readonly main: readonly ElementContent[];
}

/** A page of the answer key. Its head, its foot and every sheet of its print say that it is the teacher's alone. */
export function renderKeyShell(context: PageContext, { path, of, ...parts }: KeyParts): Root {
  const { labels, plan } = context.week;
  return renderPageShell(
    {
      ...parts,
      labels,
      title: `${labels.text('answer-key')} · ${of}`,
      kind: 'key-page',
      skipLabel: labels.text('skip-link'),
      runningLine: `${labels.text('answer-key')} · ${labels.text('teacher-only')} · ${of}`,
      header: [
        renderPackNav(context, path),
        h('div', { className: ['key-head'] }, [
          h('p', { className: ['eyebrow'] }, joinWithDots([plan.title, plan.for])),
          h('h1', labels.text('answer-key')),
          h('p', { className: ['teacher-only'] }, labels.text('teacher-only')),
        ]),
      ],
      footer: [h('p', labels.text('key-stays-with-teacher'))],
    },
    context.digest,
  );
}
