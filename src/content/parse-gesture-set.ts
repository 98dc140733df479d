import { type Checked, checkDocument } from './check-value.ts';
import type { Diagnostic } from './diagnostic.ts';
import { collect, createFault } from './faults.ts';
import { computeFileId } from './file-id.ts';
import { gesturesSchema, type WrittenGestures } from './schemas/gestures.ts';
import type { Gesture, GestureSet, SourceFile } from './types.ts';
import { describePath } from './wording.ts';
import { parseYamlFile, type YamlDocument } from './yaml-document.ts';

/** Parses and checks a gestures file. */
export function parseGestureSet(file: SourceFile): Checked<GestureSet> {
  const document = parseYamlFile(file);
  return checkDocument(document, gesturesSchema, [checkHands], (written) =>
    convertGestures(written, computeFileId(file.path)),
  );
}

function* checkHands(document: YamlDocument): Generator<Diagnostic> {
  for (const { path, value } of collect(document.value, ['gestures', '*'])) {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) continue;
    const hands = ['left', 'right', 'both'].filter((hand) => Object.hasOwn(value, hand));
    const expected = '`left`, `right`, `left` and `right`, or `both`';
    if (hands.length === 0) {
      const message = `${describePath(path)}: found no hand, expected ${expected}; say what a hand does.`;
      yield createFault(document, path, { rule: 'missing-key', message, expected, part: 'key' });
    } else if (hands.length > 1 && hands.includes('both')) {
      const message = `${describePath(path)}: found \`both\` beside one hand, expected ${expected}; keep what is meant.`;
      const found = hands.join(', ');
      yield createFault(document, [...path, 'both'], { rule: 'wrong-value', message, found, expected, part: 'key' });
    }
  }
}

function convertGestures(written: WrittenGestures, id: string): GestureSet {
  // Without prototype, so that a gesture called `constructor` is found only when it is there.
  const gestures: Record<string, Gesture> = Object.create(null);
  for (const [key, { move = 'hold', ...rest }] of Object.entries(written.gestures)) gestures[key] = { ...rest, move };
  return { id, title: written.title, ...(written.note !== undefined && { note: written.note }), gestures };
}
