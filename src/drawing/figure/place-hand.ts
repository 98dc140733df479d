import type { HandPose } from '../../content/types.ts';
import type { Posture } from './body.ts';

/** Where the middle of a hand is: outwards from the middle of the body, down, and to the front; in drawing units. */
export type Place = readonly [out: number, down: number, front: number];

/** Half a hand and a little space: how far out a hand stays whose fingers point to the middle. */
const inwards = 34;

/**
 * The places, by what the fingers do: those that point inwards come to the middle, those that point outwards start from
 * there, and others stand beside it. A palm towards the face covers it. Chosen by eye.
 */
function placeStanding({ at, palm, fingers }: HandPose): Place {
  const by = (upright: number, inward: number, outward: number, along: number) =>
    fingers === 'in'
      ? inward
      : fingers === 'out'
        ? outward
        : fingers === 'front' || fingers === 'back'
          ? along
          : upright;
  const covers = palm === 'back';
  switch (at) {
    case 'above-head':
      return [by(36, inwards, 60, 36), 34, 8];
    case 'brow':
      return [by(covers ? 15 : 46, 24, 96, 52), 77, 40];
    case 'face':
      return [by(covers ? 14.5 : 50, covers ? 10 : 56, 100, 60), 101, 42];
    case 'chest':
      return [by(29, inwards, 80, 28), fingers === 'down' ? 196 : 180, 50];
    case 'waist':
      return [by(31, inwards, 84, 30), fingers === 'down' ? 246 : 236, 50];
    case 'side':
      return [by(104, 98, 110, 106), 182, 22];
    case 'low':
      return [by(70, 54, 86, 66), fingers === 'out' || fingers === 'in' ? 266 : 276, 10];
  }
}

/**
 * Gives where the middle of a hand is to be. Seated, hands stay at or below the face and on or above the table: those that
 * join over the head join before the chest, others are held up beside the face, and low ones lie down.
 */
export function placeOf(pose: HandPose, posture: Posture): Place {
  if (posture === 'standing') return placeStanding(pose);
  if (pose.at === 'above-head') {
    return pose.fingers === 'in' ? placeStanding({ ...pose, at: 'chest' }) : [56, 104, 42];
  }
  const [out, down, front] = placeStanding(pose);
  return pose.at === 'low' ? [out, 250, 40] : [out, down, front];
}
