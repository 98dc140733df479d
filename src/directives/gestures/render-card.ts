import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { fillLabel } from '../../content/fill-label.ts';
import { renderName } from '../../content/render-name.ts';
import { formatElapsed } from '../../rhythm/format-elapsed.ts';
import type { RunGroup } from '../../rhythm/timeline-types.ts';
import type { ViewContext } from '../definition.ts';
import type { RunCard } from './gesture-run.ts';
import { addressSound } from './run-sound.ts';
import { renderSharedFigure } from './shared-figures.ts';

/** A card of a run: the drawing, the count and the name, what to do, standing and seated, and when. */
export function renderCard(card: RunCard, group: RunGroup, view: ViewContext): Element {
  const { item, place, strong, figure, startsAtSeconds } = card;
  const { labels, namesLanguage } = view;
  return h(strong ? 'li.gesture-card.strong-beat' : 'li.gesture-card', [
    ...(figure === undefined ? [] : [h('div.gesture-drawing', [renderSharedFigure(figure)])]),
    h('p.gesture-name', [
      h('span.gesture-count', { ariaHidden: 'true' }, String(place)),
      renderName(item.name, namesLanguage),
    ]),
    ...renderSay(card, view),
    ...renderHow(card, view),
    h('p.gesture-time', [
      h('span.gesture-place', labels.text('place-of', { n: place, length: group.wholeLength })),
      ` · ${labels.text('from-time', { time: formatElapsed(startsAtSeconds) })}`,
    ]),
  ]);
}

/** How the name is said, and somebody who says it. */
function renderSay({ say, spoken, item }: RunCard, { labels, namesLanguage }: ViewContext): Element[] {
  const parts: ElementContent[] = [];
  if (say !== undefined)
    parts.push(...fillLabel(labels, 'say-name', { say: [h('span', { lang: namesLanguage }, say)] }));
  if (spoken?.sound !== undefined) {
    const name = h('span.visually-hidden', [renderName(item.name, namesLanguage)]);
    const words = fillLabel(labels, 'hear-name', { name: [name] });
    if (parts.length > 0) parts.push({ type: 'text', value: ' ' });
    parts.push(h('a', { className: ['hear-name', 'screen-only'], href: addressSound(spoken.sound) }, words));
  }
  return parts.length === 0 ? [] : [h('p.gesture-say', parts)];
}

function renderHow({ item, figure }: RunCard, { labels }: ViewContext): Element[] {
  if (figure === undefined) return item.kind === 'month' ? [] : [h('p.gesture-cue', labels.text('gesture-none'))];
  return [
    h('p.gesture-cue', figure.gesture.cue),
    h('p.gesture-seated', labels.text('gesture-seated', { how: figure.gesture.seated })),
  ];
}
