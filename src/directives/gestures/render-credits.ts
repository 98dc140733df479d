import type { Element } from 'hast';
import { h } from 'hastscript';
import { fillLabel } from '../../content/fill-label.ts';
import { markLeavingLink } from '../../content/mark-leaving-link.ts';
import type { Recording } from '../../content/types.ts';
import { renderCode } from '../../drawing/code.ts';
import type { ViewContext } from '../definition.ts';
import type { GestureRun } from './gesture-run.ts';

/** Who is heard and who made the pictures of a run, on what terms; each line once. */
export function renderCredits({ parts, recording }: GestureRun, { labels }: ViewContext): Element[] {
  const cards = parts.flatMap((part) => part.cards);
  const spoken = cards.flatMap((card) => (card.spoken?.sound === undefined ? [] : [card.spoken]));
  const credits = cards.flatMap(({ figure }) => figure?.gesture.picture?.credit ?? []);
  const lines = [
    ...(recording === undefined ? [] : [labels.text('recording-by', toTerms(recording))]),
    ...new Set(spoken.map((each) => labels.text('names-spoken-by', toTerms(each)))),
    ...new Set(credits.map((credit) => labels.text('pictures-by', { credit }))),
  ];
  return lines.map((line) => h('p.run-credit', line));
}

/** The address of a run's recording in words; the teacher has it as a code too, for a class to scan from the page. */
export function renderRecordingLink(
  { recording }: GestureRun,
  { labels }: ViewContext,
  reader: 'learner' | 'teacher',
): Element[] {
  const link = recording?.link;
  if (link === undefined) return [];
  const words = h('p', fillLabel(labels, 'hear-at', { link: [markLeavingLink(h('a', { href: link }, link), labels)] }));
  return [h('div.run-link', [...(reader === 'teacher' ? [renderCode(link)] : []), words])];
}

function toTerms({ credit, permission }: Recording) {
  return { credit, permission };
}
