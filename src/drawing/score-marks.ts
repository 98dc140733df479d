import type { Element } from 'hast';
import type { FittedLabel } from './fit-label.ts';
import { roundTo } from './round.ts';
import type { ScoreText } from './score-model.ts';
import { svgElement } from './svg-element.ts';

/** Colours for a score that stands alone; the classes let a page's styles change them. */
export const scoreColours = {
  ink: '#1D2433',
  soft: '#565F6E',
  accent: '#9C3F12',
  wash: '#F6E3CF',
  paper: '#FFFEFB',
} as const;

/** How a text looks. */
export interface TextLook {
  readonly bold?: boolean;
  /** `ink` when absent. */
  readonly tone?: 'ink' | 'soft' | 'accent';
  /** Which part of the text stands at its x; `middle` when absent. */
  readonly anchor?: 'start' | 'middle' | 'end';
  /** BCP 47 tag, when all of it is in another language than the page. */
  readonly language?: string;
  /** The whole text, where what is shown was cut off: what a pointer that rests on it is told. */
  readonly whole?: string;
}

/** Rounds millimetres to hundredths, finer than any printer. */
export function mm(value: number): number {
  return roundTo(value, 2);
}

function textProperties(fontSize: number, look: TextLook) {
  const tone = look.tone ?? 'ink';
  return {
    className: [`score-${tone}`],
    fill: scoreColours[tone],
    fontSize: roundTo(fontSize, 2),
    textAnchor: look.anchor ?? 'middle',
    ...(look.bold === true ? { fontWeight: 700 } : {}),
    ...(look.language === undefined ? {} : { lang: look.language }),
  };
}

/** Gives one line of words and names, each name tagged with `namesLanguage`; x, y (of the baseline) and size in millimetres. */
export function renderText(
  x: number,
  y: number,
  fontSize: number,
  runs: readonly ScoreText[],
  namesLanguage: string,
  look: TextLook,
): Element {
  return svgElement(
    'text',
    { x: mm(x), y: mm(y), ...textProperties(fontSize, look) },
    runs.map((run) => (typeof run === 'string' ? run : svgElement('tspan', { lang: namesLanguage }, [run.name]))),
  );
}

/**
 * Gives lines below one another, the first baseline at y; a space without width between them keeps the words apart
 * when the text is copied.
 * @param leading millimetres from line to line
 */
export function renderLabel(x: number, y: number, leading: number, label: FittedLabel, look: TextLook): Element {
  const lines = label.lines.flatMap((line, index) => {
    const shown = svgElement('tspan', { x: mm(x), y: mm(y + index * leading) }, [line]);
    return index === 0 ? [shown] : [svgElement('tspan', { fontSize: 0 }, [' ']), shown];
  });
  const title = look.whole === undefined ? [] : [svgElement('title', {}, [look.whole])];
  return svgElement('text', textProperties(label.fontSize, look), [...title, ...lines]);
}

/** Gives a number in bold ink with a soft text after it, all around the middle x. */
export function renderNumberedText(x: number, y: number, fontSize: number, number: string, rest: string): Element {
  return svgElement('text', { x: mm(x), y: mm(y), ...textProperties(fontSize, { tone: 'soft' }) }, [
    svgElement('tspan', { className: ['score-ink'], fill: scoreColours.ink, fontWeight: 700 }, [number]),
    rest,
  ]);
}

/** Gives a beat with its count: white on a filled disc for a strong one, in a ring for the others. */
export function renderBeat(x: number, y: number, radius: number, count: number, strong: boolean): Element {
  const { ink, paper } = scoreColours;
  const disc = { cx: mm(x), cy: mm(y), r: mm(radius), stroke: ink, strokeWidth: 0.35 };
  const number = { x: mm(x), y: mm(y + radius * 0.52), fontSize: mm(radius * 1.45), textAnchor: 'middle' };
  return svgElement('g', { className: [strong ? 'score-strong' : 'score-beat'] }, [
    svgElement('circle', { ...disc, fill: strong ? ink : 'none' }),
    svgElement('text', { ...number, fontWeight: strong ? 700 : 400, fill: strong ? paper : ink }, [String(count)]),
  ]);
}
