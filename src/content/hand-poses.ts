import type { HandPose, Hands } from './types.ts';

/** Left and right, whatever is known of each. */
export interface HandPair<Pose> {
  readonly left?: Pose;
  readonly right?: Pose;
}

/** Hands by the names that a gesture may give them. */
export interface WrittenHands<Pose> extends HandPair<Pose> {
  readonly both?: Pose;
}

/** `both` written out as left and right: the directions count from the middle of the body, so the words are the same. */
export function splitHands<Pose>({ left, right, both }: WrittenHands<Pose>): HandPair<Pose> {
  const leftPose = left ?? both;
  const rightPose = right ?? both;
  return { ...(leftPose !== undefined && { left: leftPose }), ...(rightPose !== undefined && { right: rightPose }) };
}

/**
 * The whole second pose, hand by hand: one that `then` does not name stays as it was, and so does what it does not say
 * of a hand. Of a hand that rests at first it says everything: that is checked apart.
 */
export function completeThen(first: Hands, then: WrittenHands<Partial<HandPose>>): HandPair<HandPose> {
  const from = splitHands(first);
  const to = splitHands(then);
  const left = completePose(from.left, to.left);
  const right = completePose(from.right, to.right);
  return { ...(left && { left }), ...(right && { right }) };
}

function completePose(from: HandPose | undefined, to: Partial<HandPose> | undefined): HandPose | undefined {
  const { shape, at, palm, fingers } = { ...from, ...to };
  const isWhole = shape !== undefined && at !== undefined && palm !== undefined && fingers !== undefined;
  return isWhole ? { shape, at, palm, fingers } : undefined;
}
