import { checkDirections, checkTogether, WHICH_HANDS } from './check-hands.ts';
import type { Diagnostic, RuleId } from './diagnostic.ts';
import { collect, createFault } from './faults.ts';
import { type HandPair, splitHands } from './hand-poses.ts';
import { isMap } from './is-map.ts';
import { HAND_KEYS, type HandWords } from './parse-hand-line.ts';
import { type HandName, type ReadHands, readHands, SIDES } from './read-hands.ts';
import { describeChoice, describePath, quote } from './wording.ts';
import type { YamlDocument, YamlPath } from './yaml-document.ts';

/** A second pose with the first one. */
interface Change {
  readonly document: YamlDocument;
  /** Path of the gesture. */
  readonly gesture: YamlPath;
  readonly move: unknown;
  readonly first: ReadHands;
  readonly then: ReadHands;
  readonly before: HandPair<HandWords>;
  readonly after: HandPair<HandWords>;
}

/** Checks the second pose of every gesture, and the move that leads to it; short forms are written out before. */
export function* checkThen(document: YamlDocument): Generator<Diagnostic> {
  for (const { path, value } of collect(document.value, ['gestures', '*'])) {
    if (!isMap(value) || !isMap(value['then'])) continue;
    const first = readHands(value);
    const then = readHands(value['then']);
    const poses = { first, then, before: splitHands(first.poses), after: splitHands(then.poses) };
    yield* checkChange({ document, gesture: path, move: value['move'], ...poses });
  }
}

function* checkChange(change: Change): Generator<Diagnostic> {
  const { document, gesture, first, then } = change;
  const path = [...gesture, 'then'];
  if (first.names.length === 0) {
    const found = 'found a second pose without a first one';
    yield describe(document, path, 'missing-key', found, WHICH_HANDS, 'say how the hands begin');
    return;
  }
  if (then.names.length === 0) {
    yield describe(document, path, 'missing-key', 'found no hand', WHICH_HANDS, 'say what a hand does');
  } else if (!changesAnything(change)) {
    const found = 'found the pose that was there before';
    yield describe(document, path, 'wrong-value', found, 'another one', 'say what changes, or take it out');
  }
  yield* checkTogether(document, path, then);
  yield* checkNewDirections(change, path);
  yield* checkResting(change, path);
  yield* checkMove(change, path);
  yield* checkHeights(change);
}

function describe(
  document: YamlDocument,
  path: YamlPath,
  rule: RuleId,
  found: string,
  expected: string,
  remedy: string,
): Diagnostic {
  const message = `${describePath(path)}: ${found}, expected ${expected}; ${remedy}.`;
  return createFault(document, path, { rule, message, expected, part: 'key' });
}

function changesAnything({ before, after }: Change): boolean {
  return SIDES.some((side) =>
    HAND_KEYS.some((key) => after[side]?.[key] !== undefined && after[side][key] !== before[side]?.[key]),
  );
}

/** By which name the second pose calls a hand. */
function nameIn({ names }: ReadHands, side: 'left' | 'right'): HandName {
  return names.includes(side) ? side : 'both';
}

/** The directions that come of what stays and what changes. Those of the first pose alone were checked with it. */
function* checkNewDirections({ document, then, before, after }: Change, path: YamlPath): Generator<Diagnostic> {
  for (const side of SIDES) {
    const words = after[side];
    if (words?.palm === undefined && words?.fingers === undefined) continue;
    const faults = [...checkDirections(document, [...path, nameIn(then, side)], { ...before[side], ...words })];
    yield* faults;
    if (faults.length > 0 && then.names.includes('both')) return;
  }
}

/** Of a hand that rests at first, the second pose says everything. */
function* checkResting({ document, then, before, after }: Change, path: YamlPath): Generator<Diagnostic> {
  for (const side of SIDES) {
    const words = after[side];
    const missing = HAND_KEYS.filter((key) => words?.[key] === undefined);
    if (words === undefined || before[side] !== undefined || missing.length === 0) continue;
    const found = `the ${side} hand rests before, and nothing says its ${missing.map(quote).join(', ')}`;
    const expected = `all of ${HAND_KEYS.map(quote).join(', ')}`;
    yield describe(document, [...path, nameIn(then, side)], 'missing-key', found, expected, 'add what is missing');
  }
}

function* checkMove({ document, move }: Change, path: YamlPath): Generator<Diagnostic> {
  if (move !== undefined && move !== 'hold') return;
  const found = `found a second pose, but ${move === undefined ? 'no `move`' : 'the move `hold`'}`;
  const expected = `the move that leads to it, ${describeChoice(['open', 'close', 'rise', 'fall', 'cross', 'turn', 'ripple'])}`;
  yield describe(document, path, 'wrong-value', found, expected, 'say which, or take `then` out');
}

/** Places from the lowest to the highest; out to the side is about as high as the chest. */
const HEIGHTS: ReadonlyMap<string, number> = new Map([
  ['low', 0],
  ['waist', 1],
  ['chest', 2],
  ['side', 2],
  ['face', 3],
  ['brow', 4],
  ['above-head', 5],
]);

/** A move that says up while every hand that changes its height goes down, or the other way round. */
function* checkHeights({ document, gesture, move, before, after }: Change): Generator<Diagnostic> {
  if (move !== 'rise' && move !== 'fall') return;
  const climbs = SIDES.flatMap((side) => {
    const from = HEIGHTS.get(before[side]?.at ?? '');
    const to = HEIGHTS.get(after[side]?.at ?? '');
    return from === undefined || to === undefined || from === to ? [] : [to - from];
  });
  if (climbs.length === 0 || climbs.some((climb) => climb > 0 === (move === 'rise'))) return;
  const [where, expected] = move === 'rise' ? ['lower', 'fall'] : ['higher', 'rise'];
  const path = [...gesture, 'move'];
  const message = `${describePath(path)}: found ${quote(move)}, but the second pose lies ${where} than the first, expected ${quote(expected)}; change the move or the poses.`;
  yield createFault(document, path, { rule: 'wrong-value', severity: 'warning', message, found: move, expected });
}
