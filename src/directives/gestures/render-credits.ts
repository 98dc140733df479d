import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { fillLabel } from '../../content/fill-label.ts';
import type { Recording } from '../../content/types.ts';
import type { ViewContext } from '../definition.ts';
import type { GestureRun } from './gesture-run.ts';

/** Who is heard and who made the pictures of a run, on what terms; each line once. */
export function renderCredits({ parts, recording }: GestureRun, { labels }: ViewContext): Element[] {
  const cards = parts.flatMap((part) => part.cards);
  const spoken = cards.flatMap((card) => (card.spoken?.sound === undefined ? [] : [card.spoken]));
  const credits = cards.flatMap(({ figure }) => figure?.gesture.picture?.credit ?? []);
  const lines: ElementContent[][] = [
    ...(recording === undefined ? [] : [[text(labels.text('recording-by', toTerms(recording)))]]),
    ...(recording?.link === undefined
      ? []
      : [fillLabel(labels, 'hear-at', { link: [h('a', { href: recording.link }, recording.link)] })]),
    ...keepFirst(spoken.map((each) => labels.text('names-spoken-by', toTerms(each)))).map((line) => [text(line)]),
    ...keepFirst(credits.map((credit) => labels.text('pictures-by', { credit }))).map((line) => [text(line)]),
  ];
  return lines.map((line) => h('p.run-credit', line));
}

function toTerms({ credit, permission }: Recording) {
  return { credit, permission };
}

function keepFirst(lines: readonly string[]): string[] {
  return [...new Set(lines)];
}

function text(value: string): ElementContent {
  return { type: 'text', value };
}
