import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Labels } from '../../content/labels.ts';
import type { Gesture } from '../../content/types.ts';
import { renderSharedFigure, type SharedFigure, seatFigure } from '../../directives/gestures/shared-figures.ts';

/** Samples are no gestures of anybody's calendar: each shows one thing that a drawing can say. */
const WORDS = { cue: '', seated: '' };
const lift: Gesture = { right: { shape: 'open', at: 'face', palm: 'front', fingers: 'up' }, move: 'hold', ...WORDS };
const rise: Gesture = { right: { shape: 'open', at: 'waist', palm: 'front', fingers: 'up' }, move: 'rise', ...WORDS };
const turn: Gesture = { right: { shape: 'open', at: 'chest', palm: 'front', fingers: 'up' }, move: 'turn', ...WORDS };
const wave: Gesture = {
  right: { shape: 'spread', at: 'side', palm: 'front', fingers: 'up' },
  move: 'ripple',
  ...WORDS,
};
const part: Gesture = { right: { shape: 'pinch', at: 'face', palm: 'front', fingers: 'up' }, move: 'open', ...WORDS };

const facing: SharedFigure = { id: 'sample-lift-facing', gesture: lift, view: 'facing' };

/** A drawing and what it tells; those of the views have the name that stands under each drawing of the page. */
const SAMPLES = [
  { figure: facing, name: 'view-facing', says: ['figures-facing', 'sign-palm'] },
  {
    figure: { id: 'sample-lift-own', gesture: lift, view: 'own' },
    name: 'view-own',
    says: ['figures-own', 'sign-back'],
  },
  { figure: { ...facing, view: 'mirror' }, name: 'view-mirror', says: ['figures-mirror'] },
  { figure: seatFigure(facing), name: 'view-seated', says: ['sign-table'] },
  { figure: { id: 'sample-rise', gesture: rise, view: 'facing' }, says: ['sign-way'] },
  { figure: { id: 'sample-turn', gesture: turn, view: 'facing' }, says: ['sign-turn'] },
  { figure: { id: 'sample-ripple', gesture: wave, view: 'facing' }, says: ['sign-ripple'] },
  { figure: { id: 'sample-part', gesture: part, view: 'facing' }, says: ['sign-part'] },
] as const satisfies readonly { figure: SharedFigure; name?: string; says: readonly string[] }[];

/** The drawings that the legend shows, for the page's store. */
export const legendFigures: readonly SharedFigure[] = SAMPLES.map(({ figure }) => figure);

/** How to read a drawing: the views by one gesture, then the signs of moves. */
export function renderGestureLegend(labels: Labels): Element {
  return h('section', { className: ['how-legend'], ariaLabelledBy: 'read-a-drawing' }, [
    h('h2', { id: 'read-a-drawing' }, labels.text('read-a-drawing')),
    h(
      'ul',
      { className: ['plain-list'] },
      SAMPLES.map((sample) =>
        h('li', [
          renderSharedFigure(sample.figure),
          h('p', [
            ...('name' in sample ? [h('strong', labels.text(sample.name))] : []),
            sample.says.map((key) => labels.text(key)).join(' '),
          ]),
        ]),
      ),
    ),
  ]);
}
