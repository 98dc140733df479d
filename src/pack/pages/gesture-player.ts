import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { fillLabel } from '../../content/fill-label.ts';
import type { Labels } from '../../content/labels.ts';
import { svgElement } from '../../drawing/svg-element.ts';
import type { PageParts } from '../page-shell.ts';
import script from './gesture-player.js?raw';

/** What a page says of its runs on the beat. */
interface MayHaveRun {
  readonly hasRun: boolean;
}

/** The speeds that the player's script knows, in its order. */
const SPEEDS = [0.75, 1, 1.25];

/** For the page's shell: the player's script and leave to play sound, where there is a run. */
export function playSound({ hasRun }: MayHaveRun): Pick<PageParts, 'script' | 'playsSound'> {
  return hasRun ? { script, playsSound: true } : {};
}

/**
 * For the end of the page's main part: the player as a template, which the script puts into each run. Without scripts
 * it shows nothing, and the browser's own player stands in each run.
 */
export function renderPlayerParts({ hasRun }: MayHaveRun, labels: Labels): Element[] {
  if (!hasRun) return [];
  return [
    h('template', { className: ['player-template'] }, [
      h('div', { className: ['run-player', 'screen-only'], role: 'group' }, [
        renderStage(labels),
        h('p', { className: ['player-progress'] }, [
          h('progress', { className: ['player-line'], ariaHidden: 'true', value: 0, max: 1 }),
          h('span', { className: ['player-time'] }),
        ]),
        renderButtons(labels),
        h('p', { className: ['player-silent'], hidden: true }, labels.text('player-silent')),
        h('p', { className: ['player-says', 'visually-hidden'], ariaLive: 'polite' }),
      ]),
      h('span', { className: ['word-rest'] }, labels.text('player-rest')),
      h('span', { className: ['word-end'] }, labels.text('player-end')),
    ]),
  ];
}

/** Large enough to be seen across a room: the beat, the gesture, the name, and what comes next. */
function renderStage(labels: Labels): Element {
  const place = (name: string) => [h('span', { className: [name] })];
  const beat = fillLabel(labels, 'player-beat', { n: place('beat-now'), length: place('beat-of') });
  return h('div', { className: ['player-stage'] }, [
    h('div', { className: ['player-disc'], ariaHidden: 'true' }),
    h('div', { className: ['player-drawing'], ariaHidden: 'true' }),
    h('div', { className: ['player-words'] }, [
      h('p', { className: ['player-group'] }),
      h('p', { className: ['player-name'] }),
      h('p', { className: ['player-how'] }),
      h('p', { className: ['player-place'] }, [
        ...place('place-now'),
        h('span', { className: ['player-beat'], hidden: true }, [{ type: 'text', value: ' · ' }, ...beat]),
      ]),
      h('p', { className: ['player-next'] }, fillLabel(labels, 'player-next', { name: place('next-name') })),
    ]),
  ]);
}

function renderButtons(labels: Labels): Element {
  const speeds = SPEEDS.map((speed) =>
    labels.text('player-speed', { speed: labels.number(speed, speed === 1 ? 0 : 2) }),
  );
  return h('div', { className: ['player-buttons'] }, [
    renderButton('player-play', [
      h('span', { className: ['when-still'] }, [renderIcon('M5 3 17 10 5 17Z'), labels.text('player-play')]),
      h('span', { className: ['when-playing'], hidden: true }, [
        renderIcon('M4 3H8V17H4ZM12 3H16V17H12Z'),
        labels.text('player-pause'),
      ]),
    ]),
    renderButton('player-back', [labels.text('player-back')]),
    renderButton('player-on', [labels.text('player-on')]),
    renderButton('player-start', [labels.text('player-start')]),
    h('span', { className: ['player-speed'] }, [
      renderButton('player-slower', [labels.text('player-slower')]),
      h(
        'output',
        speeds.map((speed) => h('span', { hidden: true }, speed)),
      ),
      renderButton('player-faster', [labels.text('player-faster')]),
    ]),
    renderButton('player-mirror', [labels.text('player-mirror')], { ariaPressed: 'false' }),
    renderButton('player-seated', [labels.text('player-seated')], { ariaPressed: 'false' }),
  ]);
}

function renderButton(
  name: string,
  content: readonly (ElementContent | string)[],
  more: { readonly ariaPressed?: string } = {},
): Element {
  return h('button', { type: 'button', className: [name], ...more }, [...content]);
}

function renderIcon(path: string): Element {
  return svgElement('svg', { viewBox: '0 0 20 20', className: ['player-icon'], ariaHidden: 'true' }, [
    svgElement('path', { d: path }),
  ]);
}
