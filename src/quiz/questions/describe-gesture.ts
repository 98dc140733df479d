import { splitHands, type WrittenHands } from '../../content/hand-poses.ts';
import type { Labels } from '../../content/labels.ts';
import type { Gesture, HandPose } from '../../content/types.ts';

/** Whether the file says what the hands do; of a gesture that is the author's own picture alone it does not. */
export function saysHands({ left, right, both }: Gesture): boolean {
  return left !== undefined || right !== undefined || both !== undefined;
}

/**
 * What the picture of a gesture shows, for those who hear a question and do not see it: where each hand is and how it
 * moves. The cue often has a word of the night's name in it, which a drawing does not show; it stands in where nothing
 * is known of the hands.
 */
export function describeGesture(gesture: Gesture, labels: Labels): string {
  if (!saysHands(gesture)) return gesture.cue;
  const start = describeHands(gesture, labels);
  if (gesture.then === undefined) return [...start, labels.text(`quiz-move-${gesture.move}`)].join(' ');
  return [...start, labels.text('quiz-move-then', { hands: describeHands(gesture.then, labels).join(' ') })].join(' ');
}

/** A sentence for each hand that does something, one for two that do the same. */
function describeHands(hands: WrittenHands<HandPose>, labels: Labels): string[] {
  const { left, right } = splitHands(hands);
  const describe = (whose: 'both' | 'left' | 'right', { shape, at, palm, fingers }: HandPose) =>
    labels.text(`quiz-hands-${whose}`, {
      pose: labels.text('quiz-hand-pose', {
        shape: labels.text(`quiz-hand-${shape}`),
        place: labels.text(`quiz-hand-at-${at}`),
        palm: labels.text(`quiz-hand-to-${palm}`),
        fingers: labels.text(`quiz-hand-to-${fingers}`),
      }),
    });
  if (left !== undefined && right !== undefined && isSamePose(left, right)) return [describe('both', left)];
  return [
    ...(left === undefined ? [] : [describe('left', left)]),
    ...(right === undefined ? [] : [describe('right', right)]),
  ];
}

function isSamePose(one: HandPose, other: HandPose): boolean {
  return (['shape', 'at', 'palm', 'fingers'] as const).every((key) => one[key] === other[key]);
}
