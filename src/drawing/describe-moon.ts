import type { MoonView } from '../calendar/almanac-types.ts';

/** A direction as the observer sees it with the head upright. */
export type LitSide = 'top' | 'top-left' | 'left' | 'bottom-left' | 'bottom' | 'bottom-right' | 'right' | 'top-right';

/** The Moon in a few words' worth of facts, for pages to put into words. */
export type MoonDescription =
  | { readonly shape: 'dark' | 'full'; readonly waxing: boolean }
  | {
      readonly shape: 'crescent' | 'half' | 'gibbous';
      /** Where the middle of the lit edge points; no word about north or south is needed, it holds at any place. */
      readonly litSide: LitSide;
      readonly waxing: boolean;
    };

/**
 * Limits of the shapes, chosen by eye (no source): within a hundredth of nothing or all the edge cannot be told,
 * which is about a day from new or full Moon; within a twentieth of a half, about ten hours, it looks halved.
 */
const darkUpTo = 0.01;
const fullFrom = 0.99;
const halfMargin = 0.05;

/** Sides counter-clockwise from the top, as angles in the sky are counted; an eighth of a turn each. */
export const LIT_SIDES: readonly LitSide[] = [
  'top',
  'top-left',
  'left',
  'bottom-left',
  'bottom',
  'bottom-right',
  'right',
  'top-right',
];

/**
 * Tells the shape of the Moon and which side of it is lit, as this observer sees it.
 * @param view of it, the lit fraction (0 to 1), the direction of the bright limb (degrees, any turn) and `waxing`
 */
export function describeMoon(view: Pick<MoonView, 'litFraction' | 'brightLimbDegrees' | 'waxing'>): MoonDescription {
  const { litFraction, waxing } = view;
  if (litFraction <= darkUpTo) return { shape: 'dark', waxing };
  if (litFraction >= fullFrom) return { shape: 'full', waxing };
  return { shape: shapeOf(litFraction), litSide: findLitSide(view.brightLimbDegrees), waxing };
}

function shapeOf(litFraction: number): 'crescent' | 'half' | 'gibbous' {
  if (Math.abs(litFraction - 0.5) <= halfMargin) return 'half';
  return litFraction < 0.5 ? 'crescent' : 'gibbous';
}

/**
 * The side that a direction lies on: eight sectors of 45 degrees, each around its own direction.
 * @param brightLimbDegrees counter-clockwise from straight up, any turn
 * @throws RangeError when it is not finite
 */
export function findLitSide(brightLimbDegrees: number): LitSide {
  const sector = Math.round((((brightLimbDegrees % 360) + 360) % 360) / 45) % 8;
  const side = LIT_SIDES[sector];
  if (side === undefined) throw new RangeError(`an angle must be a finite number of degrees, not ${brightLimbDegrees}`);
  return side;
}
