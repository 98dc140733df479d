import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import { renderName } from '../../content/render-name.ts';
import { renderScoreSign } from '../../drawing/score-sign.ts';
import type { ViewContext } from '../definition.ts';
import { renderSharedFigure } from '../gestures/shared-figures.ts';
import { sayMoon } from '../say-moon.ts';
import type { ScoreStrip, StripGroup, StripNight } from './compute-score-strip.ts';

/** Class of a score on a page of words. */
export const SCORE_CLASS = 'score-strip';

/**
 * Gives a score as lists of nights, a list a group, that fill the lines of a page of any width. What the pictures show
 * stands in words too, for those who do not see them.
 */
export function renderScoreStrip({ groups, view: side, seasId }: ScoreStrip, view: ViewContext): ElementContent[] {
  return [
    h('div', { className: [SCORE_CLASS] }, [
      h('p.strip-side', view.labels.text(`figures-${side}`)),
      h(
        'div.strip-groups',
        groups.map((group, index) => renderGroup(group, index === 0, seasId, view)),
      ),
      ...listCredits(groups).map((credit) => h('p.strip-credit', view.labels.text('pictures-by', { credit }))),
    ]),
  ];
}

/** Who made the pictures that stand in for drawings, each once. */
function listCredits(groups: readonly StripGroup[]): string[] {
  const figures = groups.flatMap(({ nights }) => nights.flatMap(({ figure }) => figure ?? []));
  return [...new Set(figures.flatMap(({ gesture }) => gesture.picture?.credit ?? []))];
}

function renderGroup({ name, nights }: StripGroup, drawsSeas: boolean, seasId: string, view: ViewContext) {
  return h('div.strip-group', [
    h('p.strip-name', [renderName(name, view.namesLanguage)]),
    h(
      'ol.plain-list',
      nights.map((night, index) =>
        h(night.when?.isTonight === true ? 'li.strip-night.is-tonight' : 'li.strip-night', [
          renderScoreSign(night.sign, seasId, drawsSeas && index === 0),
          ...renderGesture(night, view),
        ]),
      ),
    ),
  ]);
}

function renderGesture({ name, sign, figure, when }: StripNight, { labels, namesLanguage }: ViewContext) {
  const words = [sayMoon(sign.moon, labels), ...(figure === undefined ? [] : [figure.gesture.cue])];
  return [
    h('div.strip-figure', figure === undefined ? [h('span.strip-rest')] : [renderSharedFigure(figure)]),
    h('p.strip-title', [renderName(name, namesLanguage)]),
    h('p.visually-hidden', words.join(' ')),
    ...(when === undefined
      ? []
      : [
          h('p.strip-date', [h('b', String(when.nightOfMonth)), ` · ${labels.date(when.date, 'short')}`]),
          ...(when.isTonight ? [h('p.strip-tonight', labels.text('tonight'))] : []),
        ]),
  ];
}
