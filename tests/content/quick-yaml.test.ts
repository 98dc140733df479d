import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import { findPlainYaml } from '../../src/content/quick-yaml.ts';
import { parseWithPlaces } from '../../src/content/yaml-document.ts';

const ROOT = join(import.meta.dirname, '../..');
const START = { file: 'a.yaml', line: 1, column: 1 };

/** Text of every YAML file below a folder, and the front matter of every lesson. */
function listYaml(folder: string): [name: string, text: string][] {
  return readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' }).flatMap((name): [string, string][] => {
    if (!/\.(?:yaml|md)$/.test(name)) return [];
    const text = readFileSync(join(ROOT, folder, name), 'utf8');
    return [[name, name.endsWith('.md') ? (text.split(/^---$/m)[1] ?? '') : text]];
  });
}

/** The quick reader may decline; what it gives must be what the full reader gives, and that without a fault. */
function expectSame(text: string): void {
  const plain = findPlainYaml(text);
  if (plain === undefined) return;
  const { value, faults } = parseWithPlaces(text, START);
  expect(faults).toEqual([]);
  expect(plain.value).toStrictEqual(value);
}

describe('the quick reader of YAML', () => {
  it.each([...listYaml('content'), ...listYaml('lessons')])('reads %s, and as the full reader does', (_name, text) => {
    expect(findPlainYaml(text)).toBeDefined();
    expectSame(text);
  });

  it.each(listYaml('tests/fixtures'))('agrees with the full reader over %s, or declines', (_name, text) => {
    expectSame(text);
  });

  it.each([
    ['a: &x 1', 'an anchor'],
    ['a: &x 1\nb: *x', 'an alias'],
    ['a: !!str 1', 'a tag'],
    ['%YAML 1.2\n---\na: 1', 'a directive'],
    ['---\na: 1', 'a marker'],
    ['a: 1\n---\nb: 2', 'two documents'],
    ['a: 1\na: 2', 'a repeated key'],
    ['e\u0301: 1\n\u00E9: 2', 'a key repeated in another encoding'],
    ['1: a', 'a key that is a number'],
    ['? [a]\n: b', 'a key that is a list'],
    ['__proto__: a', 'a key that reaches behind the object'],
    ['a:\tb', 'a tab'],
    ['a: [b', 'a fault'],
    ['a:\n- "x"-:', 'text after a closing quote'],
    ['a: 0x1F', 'a number of another kind'],
    ['- a', 'a list'],
    ['', 'nothing'],
  ])('declines %j: %s', (text) => {
    expect(findPlainYaml(text)).toBeUndefined();
  });

  it.each([
    ['a: -41.1\nb: 007\nc: 1e3\nd: .5\ne: -0', { a: -41.1, b: 7, c: 1000, d: 0.5, e: -0 }],
    ['a: true\nb: False\nc: ~\nd:\ne: NULL', { a: true, b: false, c: null, d: null, e: null }],
    ['a: tRue\nb: nUll\nc: 1_000\nd: 09:00\ne: "1"', { a: 'tRue', b: 'nUll', c: '1_000', d: '09:00', e: '1' }],
    ['a: cache\u0301e', { a: 'cach\u00E9e' }],
  ])('reads %j', (text, value) => {
    expect(findPlainYaml(text)?.value).toEqual(value);
    expectSame(text);
  });

  it('agrees over what writers of YAML write', () => {
    const word = fc.oneof(
      fc.string(),
      fc.string({ unit: 'binary' }),
      fc.constantFrom('~', 'null', 'Yes', '1e3', '0o7', '-', '? a', '# b', 'a: b', 'a #b', '0x1', '.inf'),
    );
    const value = fc.letrec((tie) => ({
      any: fc.oneof(
        { depthSize: 'small' },
        word,
        fc.double(),
        fc.integer(),
        fc.boolean(),
        fc.constant(null),
        tie('list'),
        tie('map'),
      ),
      list: fc.array(tie('any'), { maxLength: 4 }),
      map: fc.dictionary(word, tie('any'), { maxKeys: 4 }),
    })).any;
    fc.assert(
      fc.property(value, fc.constantFrom(20, 80), (given, lineWidth) => {
        expectSame(stringify(given, { lineWidth }));
        expectSame(JSON.stringify(given, null, 2));
      }),
      { numRuns: 500 },
    );
  });

  it('agrees over scraps of YAML', () => {
    const scrap = fc.array(
      fc.constantFrom(
        ...'ab:-[]{}"\'\n#&*!|>%@,?~0é\r\\.',
        ' ',
        '  ',
        '\n  ',
        ': ',
        '- ',
        '\n- ',
        '\n  k: ',
        '\nb: ',
        '"x"',
        '|\n',
        '>-\n',
        ', ',
        ' #',
        '---',
        '...',
        'e\u0301',
        '\u00A0',
        '😀',
      ),
      { maxLength: 30 },
    );
    fc.assert(
      fc.property(scrap, (signs) => expectSame(`a: ${signs.join('')}`)),
      { numRuns: 3000 },
    );
  });
});
