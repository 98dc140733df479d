import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseYaml, parseYamlFile, type YamlPath } from '../../src/content/yaml-document.ts';

const START = { file: 'a.yaml', line: 1, column: 1 };

function place(text: string, path: YamlPath, part?: 'key' | 'value', start = START): string {
  const { line, column } = parseYaml(text, start).placeOf(path, part);
  return `${line}:${column}`;
}

describe('values', () => {
  it('keeps as text what YAML 1.1 read otherwise', () => {
    const text = 'a: 09:00\nb: no\nc: 06-18\nd: 2026-07-15\ne: on\nf: 1_000\ng: y\n';
    const value = { a: '09:00', b: 'no', c: '06-18', d: '2026-07-15', e: 'on', f: '1_000', g: 'y' };
    expect(parseYaml(text, START).value).toEqual(value);
    expect(parseYaml(`%YAML 1.1\n---\n${text}`, START).value).toEqual(value);
  });

  it('reads numbers, truth and nothing by the core schema', () => {
    const text = 'a: -41.1\nb: 0x1F\nc: true\nd: ~\ne:\nf: "1"\ng: 007\n<<: x\n';
    const value = { a: -41.1, b: 31, c: true, d: null, e: null, f: '1', g: 7, '<<': 'x' };
    expect(parseYaml(text, START).value).toEqual(value);
  });

  it('brings text and keys to NFC', () => {
    expect(parseYaml('cle\u0301: cache\u0301e\n', START).value).toEqual({ 'cl\u00E9': 'cach\u00E9e' });
  });

  it('keeps keys as they are written', () => {
    expect(parseYaml('007: a\ntrue: b\n1.0: c\n', START).value).toEqual({ '007': 'a', true: 'b', '1.0': 'c' });
  });

  it('resolves aliases, the last anchor of a name winning', () => {
    const document = parseYaml('a: &x [1]\nb: *x\nc: &x 2\nd: *x\n', START);
    expect(document).toMatchObject({ value: { a: [1], b: [1], c: 2, d: 2 }, faults: [] });
  });

  it('never gives an object a prototype of the author', () => {
    const value = parseYaml('constructor: x\ntoString: y\n', START).value as object;
    expect(Object.getPrototypeOf(value)).toBeNull();
    expect(Object.keys(value)).toEqual(['constructor', 'toString']);
  });

  it('reads back what JSON writes, without a fault', () => {
    // Empty keys and `__proto__` are refused, see the fixture yaml-syntax.
    const json = fc.json({ maxDepth: 4 }).filter((text) => !text.includes('__proto__') && !text.includes('""'));
    fc.assert(
      fc.property(json, (text) => {
        const document = parseYaml(text, START);
        expect(document.faults).toEqual([]);
        expect(JSON.stringify(document.value)?.normalize('NFC')).toBe(
          JSON.stringify(JSON.parse(text)).normalize('NFC'),
        );
      }),
    );
  });

  it('never throws, whatever the text', () => {
    const scrap = fc.array(fc.constantFrom(...'ab: -[]{}"\'\n\t#&*!|>%@,?~0é\r\u0000\uFEFF'), { maxLength: 40 });
    fc.assert(
      fc.property(scrap, (signs) => {
        const document = parseYaml(signs.join(''), START);
        for (const fault of document.faults) {
          expect(fault.place.line).toBeGreaterThanOrEqual(1);
          expect(fault.place.column).toBeGreaterThanOrEqual(1);
          expect(fault.message).not.toMatch(/[\n\r]/);
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe('places', () => {
  const text = 'title: Été\nlist:\n  - { name: é😀, say: x }\n  - plain\nmap:\n  key: value\n';

  it('finds keys and values, columns in UTF-16 code units', () => {
    expect(place(text, [])).toBe('1:1');
    expect(place(text, ['title'])).toBe('1:8');
    expect(place(text, ['title'], 'key')).toBe('1:1');
    expect(place(text, ['list', 0, 'say'])).toBe('3:23');
    expect(place(text, ['list', 0, 'say'], 'key')).toBe('3:18');
    expect(place(text, ['list', 1])).toBe('4:5');
    expect(place(text, ['map', 'key'])).toBe('6:8');
  });

  it('falls back to the nearest part of a path that is there', () => {
    expect(place(text, ['map', 'none'])).toBe('6:3');
    expect(place(text, ['list', 7])).toBe('3:3');
    expect(place(text, ['none', 'deeper'])).toBe('1:1');
    expect(place('a:\nb: 1\n', ['a', 'x'], 'key')).toMatch(/^1:/);
  });

  it('counts alike with CRLF, a byte order mark and tabs between values', () => {
    const places = (written: string) => [place(written, ['list', 0, 'say']), place(written, ['map', 'key'], 'key')];
    expect(places(text.replaceAll('\n', '\r\n'))).toEqual(['3:23', '6:3']);
    expect(places(`\uFEFF${text}`)).toEqual(['3:23', '6:3']);
    expect(place('\uFEFFa: b', ['a'])).toBe('1:4');
    expect(place('a:\tb', ['a'])).toBe('1:4');
  });

  it('follows aliases to what they stand for', () => {
    expect(place('a: &x { k: 1 }\nb: *x\n', ['b', 'k'])).toBe('1:12');
    expect(place('a: &x { k: 1 }\nb: *x\n', ['b'])).toBe('2:4');
  });

  it('starts where the text starts in its file', () => {
    const start = { file: 'lesson.md', line: 2, column: 1 };
    expect(place('a: b\nc: d\n', ['c'], 'value', start)).toBe('3:4');
    expect(place('a: b\nc: d\n', ['a'], 'value', { ...start, column: 5 })).toBe('2:8');
    expect(parseYaml('a: b: c', start).faults[0]?.place).toEqual({ file: 'lesson.md', line: 2, column: 4 });
  });

  it('finds a key written in another Unicode form', () => {
    expect(place('x: 1\ncle\u0301: 2\n', ['cl\u00E9'])).toBe('2:7');
  });
});

describe('faults', () => {
  it('stops an alias bomb at once', () => {
    const lines = ['a0: &a0 x', ...Array.from({ length: 40 }, (_, i) => `a${i + 1}: &a${i + 1} [*a${i}, *a${i}]`)];
    const { faults } = parseYaml(lines.join('\n'), START);
    expect(faults.map(({ rule }) => rule)).toEqual(['yaml-syntax']);
    expect(faults[0]?.message).toContain('10000');
  });

  it('lists the first fault of each line, in order', () => {
    const { faults } = parseYaml('a: b: c: d\ne: @f\ng: h\ng: i\n', START);
    expect(faults.map(({ rule, place: { line } }) => `${rule} ${line}`)).toEqual([
      'yaml-syntax 1',
      'yaml-syntax 2',
      'repeated-name 4',
    ]);
    expect(faults[2]?.related).toEqual({ file: 'a.yaml', line: 3, column: 1 });
  });

  it('counts lines that end in LF, CRLF or CR', () => {
    for (const ending of ['\n', '\r\n', '\r']) {
      const text = ['a: 1', 'b: |', '  one', '  two', 'c: @'].join(ending);
      expect(parseYaml(text, START).faults[0]?.place).toMatchObject({ line: 5, column: 4 });
      expect(parseYaml(text.replace('@', 'x'), START).value).toEqual({ a: 1, b: 'one\ntwo\n', c: 'x' });
    }
  });
});

describe('parseYamlFile', () => {
  it('says of a file that could not be read as text only that', () => {
    const place = { file: 'a.yaml', line: 3, column: 2 };
    const fault = { rule: 'text-encoding', severity: 'error', place, message: 'Not text' } as const;
    const document = parseYamlFile({ path: 'a.yaml', text: '', fault });
    expect(document).toMatchObject({ file: 'a.yaml', value: null, faults: [fault] });
    expect(document.placeOf(['title'])).toEqual(place);
  });
});
