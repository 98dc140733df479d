import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkSyntax } from '../../src/lesson/check-syntax.ts';
import { createLessonParser } from '../../src/lesson/parse-lesson.ts';
import { readWrittenSyntax } from '../../src/lesson/written-directive.ts';
import { INLINE_NAMES, KNOWN } from './known-directives.ts';

const FIXTURES = new URL('../fixtures/directive-syntax/', import.meta.url);
const parse = createLessonParser(INLINE_NAMES);

function listMessages(text: string): string[] {
  return checkSyntax(parse(text), 'input.md', KNOWN).map(({ place, severity, rule, message, related }) => {
    const second = related === undefined ? '' : ` (see ${related.line}:${related.column})`;
    return `${place.line}:${place.column} ${severity === 'error' ? '' : `${severity} `}${rule} ${message}${second}`;
  });
}

/** The expected file; it is written only when asked for, and a missing one fails. */
function readExpected(name: string, found: string): string {
  const path = fileURLToPath(new URL(`${name}/messages.txt`, FIXTURES));
  if (process.env['UPDATE_FIXTURES'] === '1') writeFileSync(path, found);
  if (!existsSync(path)) throw new Error(`${path} is missing; run with UPDATE_FIXTURES=1 and read what it writes`);
  return readFileSync(path, 'utf8');
}

describe('traps of the directive syntax', () => {
  const names = readdirSync(FIXTURES, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? entry.name : [],
  );

  it('has fixtures', () => {
    expect(names.length).toBeGreaterThan(40);
  });

  for (const name of names) {
    it(name, () => {
      const text = readFileSync(new URL(`${name}/input.md`, FIXTURES), 'utf8');
      const found = listMessages(text)
        .map((line) => `${line}\n`)
        .join('');
      expect(found).toBe(readExpected(name, found));
      // Fixtures named good-… are the ones that must stay silent; every other one shows a fault.
      expect(found === '').toBe(name.startsWith('good-'));
      // Line endings of other systems change no place and no message.
      for (const ending of ['\r\n', '\r']) {
        expect(listMessages(text.replaceAll('\n', ending)).join('\n')).toBe(found.trimEnd());
      }
    });
  }
});

describe('checkSyntax', () => {
  it('counts columns without a byte order mark', () => {
    expect(listMessages('\uFEFF::tonight {on=friday}\n')).toEqual(listMessages('::tonight {on=friday}\n'));
  });

  it('marks directives whose attributes it has reported, so that they are not checked again', () => {
    const lesson = parse('::tonight{on=friday on=monday}\n\n::tonight{on=friday}\n');
    checkSyntax(lesson, 'input.md', KNOWN);
    const marks = lesson.tree.children.map((node) => node.type === 'leafDirective' && readWrittenSyntax(node).misread);
    expect(marks).toEqual([true, undefined]);
  });

  it('gives found and expected for programs', () => {
    expect(checkSyntax(parse('::tonight {on=friday}\n'), 'a.md', KNOWN)).toEqual([
      {
        rule: 'directive-syntax',
        severity: 'error',
        place: { file: 'a.md', line: 1, column: 10 },
        message: 'A space before `{`; expected `{` directly after `::tonight`; take the space out',
        found: ' ',
        expected: '{',
      },
    ]);
  });

  it('says nothing about prose, however many colons and brackets it has', () => {
    const piece = fc.oneof(
      fc.constantFrom('9', '30', 'pm', 'John', 'sea', 'x.org', 'https', 'wide water', 'étoile', 'b2'),
      fc.constantFrom(':', '::', ':::', '\uFF1A'),
      fc.constantFrom(' ', ' ', '{', '}', '[', ']', '(', ')', '=', '"', '“', ',', '\\'),
    );
    const prose = fc.array(piece, { maxLength: 40 }).map((pieces) => `Word ${pieces.join('')}`);
    fc.assert(
      fc.property(prose, (text) => {
        expect(listMessages(text)).toEqual([]);
      }),
      { seed: 20260727, numRuns: 2000 },
    );
  });

  it('reports one fault for each of many faulty lines', () => {
    expect(listMessages('::tonight {on=friday} :night {on=a} ::: x ::step\n\n'.repeat(500))).toHaveLength(500);
  });
});
