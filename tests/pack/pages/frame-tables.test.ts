import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { createLabels } from '../../../src/content/labels.ts';
import { frameTables } from '../../../src/pack/pages/frame-tables.ts';
import { findAll } from '../render-pages.ts';

const table = (columns: number) =>
  h('table', [
    h('thead', [
      h(
        'tr',
        Array.from({ length: columns }, () => h('th', 'A')),
      ),
    ]),
    h('tbody', [h('tr')]),
  ]);
const frame = (...given: Parameters<typeof frameTables>[0]) =>
  findAll({ type: 'root', children: frameTables(given, createLabels('en')) }, '.wide-table');

describe('frameTables', () => {
  it('puts a wide table in a frame that the keyboard reaches, wherever it stands', () => {
    const [framed, ...more] = frame(h('blockquote', [table(6)]));
    expect(more).toEqual([]);
    expect(framed?.properties).toMatchObject({
      tabIndex: 0,
      ariaLabel: 'A wide table, to be moved sideways',
    });
    expect(framed?.children).toEqual([table(6)]);
  });

  it('leaves narrow tables as they are, and one without a row', () => {
    expect(frame(table(5), h('table'), h('p', 'x'))).toEqual([]);
  });
});
