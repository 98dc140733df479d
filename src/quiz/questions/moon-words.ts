import type { Element } from 'hast';
import type { MoonView } from '../../calendar/almanac-types.ts';
import type { Labels } from '../../content/labels.ts';
import { describeMoon, findLitSide, type LitSide } from '../../drawing/describe-moon.ts';
import { renderMoonParts } from '../../drawing/moon.ts';
import { svgElement } from '../../drawing/svg-element.ts';

/** What the words of questions about the Moon go by. */
type SeenMoon = Pick<MoonView, 'litFraction' | 'brightLimbDegrees' | 'northPoleDegrees' | 'waxing'>;

/** How much of the Moon is lit, finer than `describeMoon` has it: each word is a shape that a child draws differently. */
type LitAmount = 'dark' | 'hair' | 'thin' | 'broad' | 'half' | 'over-half' | 'most' | 'nearly-whole' | 'whole';

/** Lit fractions up to which each word goes, chosen by eye; the first, the last and the half are those of `describeMoon`. */
const AMOUNTS: readonly (readonly [upTo: number, amount: LitAmount])[] = [
  [0.01, 'dark'],
  [0.08, 'hair'],
  [0.25, 'thin'],
  [0.45, 'broad'],
  [0.55, 'half'],
  [0.7, 'over-half'],
  [0.88, 'most'],
  [0.99, 'nearly-whole'],
];

/** @param litFraction 0 to 1. */
export function nameLitAmount(litFraction: number): LitAmount {
  return AMOUNTS.find(([upTo]) => litFraction <= upTo)?.[1] ?? 'whole';
}

const ACROSS: Readonly<Record<LitSide, LitSide>> = {
  top: 'bottom',
  'top-left': 'bottom-right',
  left: 'right',
  'bottom-left': 'top-right',
  bottom: 'top',
  'bottom-right': 'top-left',
  right: 'left',
  'top-right': 'bottom-left',
};

/** The side opposite. */
function turnAcross(side: LitSide): LitSide {
  return ACROSS[side];
}

/**
 * What a picture of the Moon shows, in a sentence: how much of the disc is lit, and where. The same for each night that
 * looks so, without the name of a night or of a phase, for those who hear a question and do not see it.
 */
export function describeDisc(moon: SeenMoon, labels: Labels): string {
  const amount = nameLitAmount(moon.litFraction);
  if (amount === 'dark' || amount === 'whole') return labels.text(`quiz-disc-${amount}`);
  const lit = findLitSide(moon.brightLimbDegrees);
  const side = labels.text(`side-${lit}`);
  switch (amount) {
    case 'over-half':
    case 'most':
    case 'nearly-whole':
      return labels.text(`quiz-disc-${amount}`, { side, dark: labels.text(`side-${turnAcross(lit)}`) });
    default:
      return labels.text(`quiz-disc-${amount}`, { side });
  }
}

/** What the Moon is called from its shape and whether it grows, such as "a growing crescent"; tells no side. */
export function namePhase(moon: Pick<MoonView, 'litFraction' | 'waxing'>, labels: Labels): string {
  const { shape, waxing } = describeMoon({ ...moon, brightLimbDegrees: 0 });
  if (shape === 'dark' || shape === 'full') return labels.text(`quiz-phase-${shape}`);
  return labels.text(`quiz-phase-${waxing ? 'growing' : 'shrinking'}-${shape}`);
}

/** Half the width of a picture in CSS pixels: 21 mm across on paper, where a fifth of the disc is 4 mm. */
const RADIUS_PX = 40;
const RIM_WIDTH_PX = 1.2;

/**
 * The Moon as it stands, a picture in ink and white alone, with {@link describeDisc} for those who do not see it. One that
 * the words call all dark or all lit is drawn so.
 */
export function renderMoonPicture(moon: SeenMoon, labels: Labels): Element {
  const amount = nameLitAmount(moon.litFraction);
  const litFraction = amount === 'dark' ? 0 : amount === 'whole' ? 1 : moon.litFraction;
  return svgElement(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `${-RADIUS_PX} ${-RADIUS_PX} ${2 * RADIUS_PX} ${2 * RADIUS_PX}`,
      width: 2 * RADIUS_PX,
      height: 2 * RADIUS_PX,
      className: ['moon', 'quiz-moon'],
      role: 'img',
      ariaLabel: describeDisc(moon, labels),
    },
    renderMoonParts({ ...moon, litFraction }, { radius: RADIUS_PX, rimWidth: RIM_WIDTH_PX, detail: 'none' }),
  );
}
