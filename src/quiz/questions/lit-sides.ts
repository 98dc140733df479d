import { LIT_SIDES, type LitSide } from '../../drawing/describe-moon.ts';

/**
 * What a learner who takes a wrong side for the lit one likely thought. `mirror`: left and right changed over, as in the
 * other half of the month and as in pictures made on the other side of the equator; `dark-side`: the dark part taken for
 * the lit one; `upside-down`: left and right are right, top and bottom changed over; `lamp`: lit from above, as by a lamp;
 * `below`: lit from straight below, where the Sun has gone; `upright`: as the Moon stands far from the equator.
 */
type SideReason = 'mirror' | 'dark-side' | 'upside-down' | 'lamp' | 'below' | 'upright';

/** A wrong side and what it stands for. */
export interface WrongSide {
  readonly side: LitSide;
  readonly reason: SideReason;
}

/**
 * The three sides that lie a quarter turn, or two, from the lit one: so no two options can both be taken for right, and
 * the four are the same words whichever of them is.
 */
export function listWrongSides(right: LitSide): WrongSide[] {
  const place = LIT_SIDES.indexOf(right);
  return [2, 4, 6].flatMap((eighths) => {
    const side = LIT_SIDES[(place + eighths) % LIT_SIDES.length];
    return side === undefined ? [] : [{ side, reason: findReason(place, (place + eighths) % LIT_SIDES.length) }];
  });
}

/** @param right place of the lit side, @param wrong of the one taken for it; a quarter turn apart, or two. */
function findReason(right: number, wrong: number): SideReason {
  if ((right + wrong) % LIT_SIDES.length === 0) return 'mirror';
  if (Math.abs(right - wrong) === 4) return 'dark-side';
  if ((right + wrong) % LIT_SIDES.length === 4) return 'upside-down';
  if (wrong === 0) return 'lamp';
  return wrong === 4 ? 'below' : 'upright';
}
