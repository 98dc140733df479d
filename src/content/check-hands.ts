import type { Diagnostic } from './diagnostic.ts';
import { collect, createFault } from './faults.ts';
import { isMap } from './is-map.ts';
import type { HandWords } from './parse-hand-line.ts';
import { type ReadHands, readHands } from './read-hands.ts';
import { DIRECTIONS } from './schemas/gestures.ts';
import { describePath, quote } from './wording.ts';
import type { YamlDocument, YamlPath } from './yaml-document.ts';

/** The hands that may stand together, for a message. */
export const WHICH_HANDS = '`left`, `right`, `left` and `right`, or `both`';

/** Checks the first pose of every gesture for what the schema cannot say; short forms are written out before. */
export function* checkHands(document: YamlDocument): Generator<Diagnostic> {
  for (const { path, value } of collect(document.value, ['gestures', '*'])) {
    if (!isMap(value)) continue;
    const hands = readHands(value);
    if (hands.names.length === 0 && !Object.hasOwn(value, 'picture')) {
      const expected = `${WHICH_HANDS}, or a \`picture\``;
      const message = `${describePath(path)}: found no hand, expected ${expected}; say what a hand does.`;
      yield createFault(document, path, { rule: 'missing-key', message, expected, part: 'key' });
    }
    yield* checkTogether(document, path, hands);
    for (const name of hands.names) yield* checkDirections(document, [...path, name], hands.poses[name] ?? {});
  }
}

/** `both` stands alone. */
export function* checkTogether(document: YamlDocument, path: YamlPath, { names }: ReadHands): Generator<Diagnostic> {
  if (names.length < 2 || !names.includes('both')) return;
  const message = `${describePath(path)}: found \`both\` beside one hand, expected ${WHICH_HANDS}; keep what is meant.`;
  const fault = { rule: 'wrong-value', message, found: names.join(', '), expected: WHICH_HANDS, part: 'key' } as const;
  yield createFault(document, [...path, 'both'], fault);
}

/** Opposite directions lie along one line. */
const OPPOSITES: ReadonlyMap<string, string> = new Map([
  ['up', 'down'],
  ['down', 'up'],
  ['in', 'out'],
  ['out', 'in'],
  ['front', 'back'],
  ['back', 'front'],
]);

/** A palm faces across its fingers: a hand cannot do otherwise. `path` is that of the hand. */
export function* checkDirections(
  document: YamlDocument,
  path: YamlPath,
  { palm, fingers }: HandWords,
): Generator<Diagnostic> {
  if (palm === undefined || fingers === undefined || !OPPOSITES.has(palm)) return;
  if (fingers !== palm && fingers !== OPPOSITES.get(palm)) return;
  const possible = DIRECTIONS.filter((each) => each !== palm && each !== OPPOSITES.get(palm));
  const expected = `fingers ${possible.slice(0, -1).map(quote).join(', ')} or ${quote(possible.at(-1) ?? '')}`;
  yield createFault(document, [...path, 'fingers'], {
    rule: 'wrong-value',
    message: `${describePath(path)}: found palm ${quote(palm)} with fingers ${quote(fingers)}, but a palm faces across its fingers; with this palm expected ${expected}; change the one or the other.`,
    found: `palm ${palm}, fingers ${fingers}`,
    expected,
  });
}
