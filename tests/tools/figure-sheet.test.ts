import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseGestureSet } from '../../src/content/parse-gesture-set.ts';
import { writeFigureSheet } from './figure-sheet.ts';

/** `FIGURE_SHEET=folder npx vitest run tests/tools/figure-sheet.test.ts` writes the sheets there, to be looked at. */
const folder = process.env['FIGURE_SHEET'];

describe('the sheet of figures', () => {
  it.each(['estuary', 'moulin'])('shows every gesture of %s in three views at three sizes, and seated', (name) => {
    const path = `content/gestures/${name}.yaml`;
    const { value } = parseGestureSet({ path, text: readFileSync(path, 'utf8') });
    if (value === undefined) throw new Error(`${path} has faults`);
    const sheet = writeFigureSheet(value);
    if (folder !== undefined) {
      mkdirSync(folder, { recursive: true });
      writeFileSync(join(folder, `${name}.html`), sheet);
    }
    const count = Object.keys(value.gestures).length;
    expect(count).toBe(30);
    expect(sheet.split('<svg ')).toHaveLength(1 + count * (3 * 3 + 1));
    // Pages share a drawing, but a poster holds all of them: they are to stay small.
    expect(sheet.length / (count * 10)).toBeLessThan(5000);
  });
});
