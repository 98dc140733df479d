import type { HandShape } from '../../content/types.ts';
import { add, type Vector } from './vector.ts';

/** A place in a hand: along the fingers from the wrist, towards the thumb, out of the palm; in drawing units. */
type HandPoint = Vector;

/** A shape that can be asked for, or that of a hand that hangs by the side. */
export type DrawnShape = HandShape | 'resting';

/** A finger or thumb as a line from its root to its tip. */
export interface DigitBones {
  readonly points: readonly HandPoint[];
  readonly thumb: boolean;
  /** True when it goes on from the flat of the hand, false when it is folded or stands up from it. */
  readonly straight: boolean;
}

/** How a finger is held: the bends at knuckle, middle and end joint, and its slant towards the thumb, in degrees. */
type FingerPose = readonly [knuckle: number, middle: number, end: number, slant: number];

interface ShapePose {
  /** The index first. */
  readonly fingers: readonly FingerPose[];
  readonly thumb: readonly HandPoint[];
}

/** Knuckles and the lengths of the three bones of each finger, the index first; drawn by eye from a hand. */
const fingerBones: readonly { readonly knuckle: HandPoint; readonly lengths: readonly number[] }[] = [
  { knuckle: [27, 11, 0], lengths: [13.5, 9, 5.5] },
  { knuckle: [28.5, 3.7, 0], lengths: [14.5, 10, 6] },
  { knuckle: [27, -3.7, 0], lengths: [13.5, 9.5, 5.5] },
  { knuckle: [24, -11, 0], lengths: [10.5, 7, 5] },
];

/** Round the heel of the hand and the knuckles and back through the middle; half of the flat's thickness inside of it. */
export const flatBones: readonly HandPoint[] = [
  [3, 3, 0],
  [12, 6.4, 0],
  [23.5, 8.7, 0],
  [25, 3, 0],
  [23.5, -3.5, 0],
  [19.5, -8.7, 0],
  [9, -6.6, 0],
  [3, -3, 0],
];

/** The middle of the flat, to the end of the palm. */
export const palmEnd: HandPoint = [21, 0, 0];

/** The line round the ball of the thumb. */
export const creaseBones: readonly HandPoint[] = [
  [22, 6.5, 3],
  [16.5, 2.5, 3],
  [10, 0.5, 3],
  [6, 1, 3],
];

/** The back of a hand that is seen on its edge. */
export const ridgeBones: readonly HandPoint[] = [
  [7, 0, -6],
  [27, 0, -6],
];

const shapes: Readonly<Record<DrawnShape, ShapePose>> = {
  resting: {
    fingers: [
      [12, 14, 12, 0],
      [14, 16, 12, 0],
      [16, 18, 12, 0],
      [18, 20, 12, 0],
    ],
    thumb: [
      [7, 6, 1],
      [17, 9, 3],
      [27, 9, 4],
    ],
  },
  open: {
    fingers: [
      [4, 4, 3, 3.5],
      [2, 4, 3, 0.5],
      [3, 4, 3, -2.5],
      [5, 5, 4, -6.5],
    ],
    thumb: [
      [7, 6, 2],
      [16, 13.5, 4],
      [26, 18.5, 4],
    ],
  },
  spread: {
    fingers: [
      [2, 4, 3, 15],
      [0, 4, 3, 3],
      [2, 4, 3, -10],
      [4, 5, 4, -25],
    ],
    thumb: [
      [7, 6, 2],
      [14, 15, 3],
      [21, 24, 3],
    ],
  },
  curved: {
    fingers: [
      [32, 34, 24, 2],
      [30, 36, 24, 0],
      [32, 36, 24, -2],
      [36, 36, 26, -5],
    ],
    thumb: [
      [7, 6, 2],
      [15, 11, 10],
      [24, 12, 16],
    ],
  },
  fist: {
    fingers: [
      [86, 98, 62, 0],
      [88, 100, 62, 0],
      [90, 100, 62, 0],
      [92, 100, 62, 0],
    ],
    thumb: [
      [7, 7, 3],
      [15, 12, 9],
      [20.5, 6, 15],
      [20.5, -1, 15.5],
    ],
  },
  pointing: {
    fingers: [
      [2, 3, 3, 0],
      [88, 100, 62, 0],
      [90, 100, 62, 0],
      [92, 100, 62, 0],
    ],
    thumb: [
      [7, 7, 3],
      [15, 11, 9],
      [19.5, 4, 15],
      [19, -2, 15.5],
    ],
  },
  pinch: {
    fingers: [
      [48, 46, 26, -2],
      [46, 40, 24, -1],
      [36, 32, 20, -5],
      [26, 26, 18, -12],
    ],
    thumb: [
      [7, 6, 3],
      [17, 11.5, 11],
      [28, 9, 18.5],
    ],
  },
};

const made = new Map<DrawnShape, readonly DigitBones[]>();

/** Gives the four fingers of a hand in a shape, the index first, and the thumb. */
export function findDigits(shape: DrawnShape): readonly DigitBones[] {
  const known = made.get(shape);
  if (known !== undefined) return known;
  const { fingers, thumb } = shapes[shape];
  const digits = fingers.map((pose, index) => bendFinger(pose, index));
  digits.push({ points: thumb, thumb: true, straight: (thumb.at(-1)?.[1] ?? 0) > 13 });
  made.set(shape, digits);
  return digits;
}

function bendFinger(pose: FingerPose, index: number): DigitBones {
  const { knuckle, lengths } = fingerBones[index] ?? { knuckle: [0, 0, 0] as const, lengths: [] };
  const slant = (pose[3] * Math.PI) / 180;
  const points = [knuckle];
  let [bend, at] = [0, knuckle];
  lengths.forEach((length, joint) => {
    bend += ((pose[joint] ?? 0) * Math.PI) / 180;
    at = add(at, [Math.cos(bend) * Math.cos(slant), Math.cos(bend) * Math.sin(slant), Math.sin(bend)], length);
    points.push(at);
  });
  return { points, thumb: false, straight: at[0] > knuckle[0] + 15 };
}
