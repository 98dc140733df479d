import type { Element } from 'hast';
import type { Point } from '../smooth-outline.ts';
import { type Ink, renderLine, renderPaper, widths } from './marks.ts';
import { writeLines } from './path.ts';
import type { SeenDigit, SeenHand } from './see-hand.ts';

/** Gives the paper round a hand that keeps it apart from what lies behind it. */
export function renderHandHalo(hand: SeenHand): Element[] {
  const more = 2 * (widths.handLine + widths.halo);
  return [
    renderPaper(writeDigits(hand.digits), widths.finger + more),
    renderPaper(writeFlat(hand), widths.flat + more),
  ];
}

/** Gives a hand, from its farthest part to its nearest. */
export function renderHand(hand: SeenHand, ink: Ink): Element[] {
  const line = ink === 'light' ? widths.lightLine : widths.handLine;
  const render = hand.face === 'back' ? renderSolidDigits : renderOutlinedDigits;
  const digits = (over: boolean) =>
    listBatches(hand.digits.filter((digit) => digit.over === over)).flatMap((batch) => render(batch, line));
  return [
    ...digits(false),
    ...(hand.face === 'back' ? [renderLine(writeFlat(hand), widths.flat + line)] : renderOutlinedFlat(hand, line)),
    ...digits(true),
    ...(hand.ridge.length === 0 ? [] : [renderLine(writeLines([hand.ridge]), widths.ridge)]),
  ];
}

/** The flat with the roots of the fingers that go on from it, and its crease. */
function renderOutlinedFlat(hand: SeenHand, line: number): Element[] {
  const roots = hand.digits.filter((digit) => digit.open && !digit.over).map(({ points }) => points.slice(0, 2));
  return [
    renderLine(writeLines([hand.flat], true), widths.flat + 2 * line),
    renderPaper(writeJoinedFlat(hand), widths.flat),
    ...(roots.length === 0 ? [] : [renderPaper(writeLines(roots), widths.finger)]),
    ...(hand.crease.length === 0 ? [] : [renderLine(writeLines([hand.crease]), widths.crease)]),
  ];
}

/** Round the flat and through its middle, so that a pen of its thickness leaves no hole in it. */
function writeFlat({ flat, spine: [, end] }: SeenHand): string {
  return writeLines([[end, ...flat]], true);
}

/** The same, and into the forearm, from which an outlined hand grows without a line between them. */
function writeJoinedFlat({ flat, spine: [cuff, end] }: SeenHand): string {
  return writeLines([[end, cuff, ...flat]], true);
}

function writeDigits(digits: readonly SeenDigit[]): string {
  return writeLines(digits.map(({ points }) => points));
}

function renderOutlinedDigits(digits: readonly SeenDigit[], line: number): Element[] {
  const width = digits[0]?.width ?? widths.finger;
  return [renderLine(writeDigits(digits), width + 2 * line), renderPaper(writeDigits(digits.map(openThumb)), width)];
}

/** Fingers beside one another are kept apart by paper; those that cross only by a hair, or little of them would be left. */
function renderSolidDigits(digits: readonly SeenDigit[], line: number): Element[] {
  const width = (digits[0]?.width ?? widths.finger) + 2 * line;
  const d = writeDigits(digits);
  return [renderPaper(d, width), renderLine(d, width - widths.gap * (digits.length > 1 ? 2 : 1))];
}

/** Lengthens a thumb that lies over the flat into it, so that no line closes its root. */
function openThumb(digit: SeenDigit): SeenDigit {
  const [root, next] = digit.points;
  if (!digit.open || !digit.over || root === undefined || next === undefined) return digit;
  const back = 6 / Math.max(3, Math.hypot(next[0] - root[0], next[1] - root[1]));
  const inside: Point = [root[0] + back * (root[0] - next[0]), root[1] + back * (root[1] - next[1])];
  return { ...digit, points: [inside, ...digit.points] };
}

/** Digits that can be drawn in one go: of one width, and beside one another. */
function listBatches(digits: readonly SeenDigit[]): SeenDigit[][] {
  const batches: SeenDigit[][] = [];
  for (const digit of digits) {
    const last = batches.at(-1);
    if (last?.every((other) => other.width === digit.width && !isCrossed(other, digit)) === true) last.push(digit);
    else batches.push([digit]);
  }
  return batches;
}

function isCrossed(one: SeenDigit, other: SeenDigit): boolean {
  const least = (widths.finger + 0.6) ** 2;
  return one.points.some(([x, y]) => other.points.some((point) => (point[0] - x) ** 2 + (point[1] - y) ** 2 < least));
}
