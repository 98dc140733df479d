import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findYamlDepth } from '../../src/content/yaml-depth.ts';
import { parseYaml } from '../../src/content/yaml-document.ts';

const indent = (levels: number) => Array.from({ length: levels }, (_, level) => `${' '.repeat(level)}a:`).join('\n');

describe('findYamlDepth', () => {
  it.each([
    ['brackets', `a: ${'['.repeat(101)}`, 103],
    ['closed brackets', `a: ${'['.repeat(101)}${']'.repeat(101)}`, 103],
    ['braces', `${'{a: '.repeat(101)}`, 400],
    ['list marks in a line', `a:\n${'- '.repeat(101)}b`, 3],
    ['indents', indent(205), indent(201).length + 1],
  ])('finds %s', (_name, source, offset) => {
    expect(findYamlDepth(source)).toBe(offset);
  });

  it.each([
    ['a hundred levels', `a: ${'['.repeat(100)}${']'.repeat(100)}`],
    ['many brackets beside each other', 'a: []\n'.repeat(500)],
    ['closing brackets in prose', `a: "${']'.repeat(200)}"`],
    ['a rule of dashes', `# ${'- '.repeat(300)}`],
    ['two hundred spaces', `${' '.repeat(200)}a: b`],
  ])('passes over %s', (_name, source) => {
    expect(findYamlDepth(source)).toBeUndefined();
  });
});

describe('a text that is too deep', () => {
  it('gives the same one fault however much stack is left', () => {
    const parse = () => parseYaml(`a: ${'['.repeat(5000)}`, { file: 'a.yaml', line: 3, column: 1 });
    const below = (levels: number): ReturnType<typeof parse> => (levels === 0 ? parse() : below(levels - 1));
    const [fault, ...others] = parse().faults;
    expect(others).toEqual([]);
    expect(fault?.place).toEqual({ file: 'a.yaml', line: 3, column: 104 });
    for (const levels of [100, 1000, 3000]) expect(below(levels).faults).toEqual([fault]);
  });

  it('never runs out of stack', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('[', '{a: ', '- ', '? ', ': '),
        fc.integer({ min: 1, max: 20_000 }),
        (mark, times) => {
          expect(() => parseYaml(mark.repeat(times), { file: 'a.yaml', line: 1, column: 1 })).not.toThrow();
        },
      ),
      { numRuns: 40 },
    );
  });
});
