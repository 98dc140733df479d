import fc from 'fast-check';
import type { Direction, Gesture, HandPlace, HandPose, HandShape, Hands, Move } from '../../../src/content/types.ts';

export const SHAPES: readonly HandShape[] = ['open', 'fist', 'curved', 'pointing', 'spread', 'pinch'];
export const PLACES: readonly HandPlace[] = ['above-head', 'brow', 'face', 'chest', 'waist', 'side', 'low'];
export const DIRECTIONS: readonly Direction[] = ['up', 'down', 'in', 'out', 'front', 'back'];
export const MOVES: readonly Move[] = ['hold', 'open', 'close', 'rise', 'fall', 'cross', 'turn', 'ripple'];

export const makeGesture = (hands: Hands, rest: Partial<Gesture> = {}): Gesture => ({
  move: 'hold',
  cue: 'Do it.',
  seated: 'Do it, seated.',
  ...hands,
  ...rest,
});

/** A gesture whose hands go on to a second pose. */
export const makeGoingOn = (hands: Hands, then: Hands, move: Move = 'hold'): Gesture =>
  makeGesture(hands, { move, then });

export const pose = (shape: HandShape, at: HandPlace, palm: Direction, fingers: Direction): HandPose => ({
  shape,
  at,
  palm,
  fingers,
});

/** All that can be written of one hand, the impossible (palm and fingers on one line) included. */
export const anyPose: fc.Arbitrary<HandPose> = fc.record({
  shape: fc.constantFrom(...SHAPES),
  at: fc.constantFrom(...PLACES),
  palm: fc.constantFrom(...DIRECTIONS),
  fingers: fc.constantFrom(...DIRECTIONS),
});

const anyHands: fc.Arbitrary<Hands> = fc.oneof(
  fc.record({ left: anyPose }),
  fc.record({ right: anyPose }),
  fc.record({ both: anyPose }),
  fc.record({ left: anyPose, right: anyPose }),
);

export const anyGesture: fc.Arbitrary<Gesture> = fc
  .tuple(anyHands, fc.constantFrom(...MOVES), fc.option(anyHands, { nil: undefined }))
  .map(([hands, move, then]) => (then ? makeGoingOn(hands, then, move) : makeGesture(hands, { move })));

/** The other hand does it. */
export const swapHands = ({ left, right, both }: Hands): Hands => ({
  ...(left && { right: left }),
  ...(right && { left: right }),
  ...(both && { both }),
});

export const swapGesture = ({ left, right, both, then, ...rest }: Gesture): Gesture => ({
  ...rest,
  ...swapHands({ ...(left && { left }), ...(right && { right }), ...(both && { both }) }),
  // biome-ignore lint/suspicious/noThenProperty: the word authors write; it is no function.
  ...(then && { then: swapHands(then) }),
});
