import fc from 'fast-check';
import { fromMarkdown } from 'mdast-util-from-markdown';
import { gfmTableFromMarkdown } from 'mdast-util-gfm-table';
import { gfmTable } from 'micromark-extension-gfm-table';
import { describe, expect, it } from 'vitest';
import { createTableSyntax } from '../../src/lesson/table-syntax.ts';

const tables = createTableSyntax();
const parse = (text: string, syntax: ReturnType<typeof gfmTable>) =>
  fromMarkdown(text, { extensions: [syntax], mdastExtensions: [gfmTableFromMarkdown()] });

describe('createTableSyntax', () => {
  it('finds the tables that are found when every line is tried', () => {
    const lines = [
      '| a | b |',
      '| a |',
      'a',
      ':-',
      '-:',
      '|-|-|',
      '| --- | :-: |',
      '---',
      '',
      '> ',
      '- ',
      '1. ',
      '   ',
      '\t',
    ];
    const ends = ['\n', '\n', '\n', '\r\n', '\r', '\n> ', '\n- ', '\n  '];
    const text = fc
      .array(fc.constantFrom(...lines, ...ends, ...ends), { maxLength: 16 })
      .map((parts) => parts.join(''));
    let found = 0;
    fc.assert(
      fc.property(text, (source) => {
        tables.prepare(source);
        const tree = parse(source, tables.syntax);
        if (JSON.stringify(tree).includes('"table"')) found += 1;
        expect(tree).toEqual(parse(source, gfmTable()));
      }),
      { numRuns: 1500 },
    );
    expect(found).toBeGreaterThan(10);
  });
});
