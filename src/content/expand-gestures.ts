import type { Diagnostic } from './diagnostic.ts';
import { createFault } from './faults.ts';
import { isMap } from './is-map.ts';
import { parseHandLine } from './parse-hand-line.ts';
import { HANDS } from './read-hands.ts';
import { describePath } from './wording.ts';
import type { YamlDocument, YamlPath } from './yaml-document.ts';

/** A gestures file whose short forms are written out. */
export interface ExpandedGestures {
  /** The same file with other values; places within what was a line are the place of the line. */
  readonly document: YamlDocument;
  readonly diagnostics: readonly Diagnostic[];
}

/** Writes out hands that are a line, and pictures that are a file name. Anything else stays as it is. */
export function expandGestures(document: YamlDocument): ExpandedGestures {
  const diagnostics: Diagnostic[] = [];
  const expandHands = (hands: unknown, path: YamlPath): unknown => {
    if (!isMap(hands)) return hands;
    return mapKeys(hands, HANDS, (hand, name) => {
      if (typeof hand !== 'string' || hand.trim() === '') return hand;
      const { words, faults } = parseHandLine(hand);
      const place: YamlPath = [...path, name];
      for (const fault of faults) {
        const message = `${describePath(place)}: ${fault}`;
        diagnostics.push(createFault(document, place, { rule: 'wrong-value', message, found: hand }));
      }
      return words;
    });
  };
  const expandGesture = (gesture: unknown, path: YamlPath): unknown => {
    const hands = expandHands(gesture, path);
    if (!isMap(hands)) return hands;
    const whole = mapKeys(hands, ['then'], (then) => expandHands(then, [...path, 'then']));
    return mapKeys(whole, ['picture'], (picture) => (typeof picture === 'string' ? { file: picture } : picture));
  };
  const { value } = document;
  if (!isMap(value) || !isMap(value['gestures'])) return { document, diagnostics };
  const gestures = mapKeys(value['gestures'], Object.keys(value['gestures']), (gesture, key) =>
    expandGesture(gesture, ['gestures', key]),
  );
  return { document: { ...document, value: { ...value, gestures } }, diagnostics };
}

/** A map in which the values of some keys, where they are there, are other ones. */
function mapKeys(
  map: Readonly<Record<string, unknown>>,
  keys: readonly string[],
  change: (value: unknown, key: string) => unknown,
): Readonly<Record<string, unknown>> {
  const changed: Record<string, unknown> = Object.create(null);
  for (const [key, value] of Object.entries(map)) changed[key] = keys.includes(key) ? change(value, key) : value;
  return changed;
}
