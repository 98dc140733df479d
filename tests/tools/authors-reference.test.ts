import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { DirectiveSyntax } from '../../src/directives/definition.ts';
import { DIRECTIVES } from '../../src/lesson/directive-registry.ts';
import { resolveWeek } from '../../src/lesson/resolve-week.ts';
import { makeWeek, openContent, printDiagnostic, writeLesson } from '../directives/build-week.ts';
import { writeReference } from './write-reference.ts';

const README = fileURLToPath(new URL('../../lessons/README.md', import.meta.url));
const HAND_WRITTEN = readFileSync(new URL('authors-reference.template', import.meta.url), 'utf8');

const setting = openContent();
const DAYS = ['monday', 'wednesday', 'friday'];

/** The messages of a lesson on Wednesday, in a week with two other days. */
function listMessages(lesson: string): string[] {
  const others = { 'x.md': writeLesson('Text.', { day: 'monday' }), 'y.md': writeLesson('Text.', { day: 'friday' }) };
  const { diagnostics } = resolveWeek(makeWeek({ 'a.md': lesson, ...others }, { days: DAYS }), setting);
  return diagnostics.map((diagnostic) => printDiagnostic(diagnostic, ''));
}

/** An example in the place it belongs to. */
function placeExample({ name, inside, example }: DirectiveSyntax): string {
  if (name === 'answer') return `:::group-quiz[Q]{groups=1}\n1. What?\n\n   ${example}\n:::`;
  if (inside?.includes('group-quiz') === true) return `:::group-quiz[Q]{groups=1}\n${example}\n:::`;
  // The steps of a lesson must fill its ten minutes.
  return name === 'step' ? `${example}\n\n:::step[The rest]{minutes=5}\nText.\n:::` : example;
}

describe('the authors’ reference', () => {
  it('is up to date', async () => {
    // Written by `npm run reference`.
    expect(existsSync(README)).toBe(true);
    await expect(writeReference(HAND_WRITTEN, DIRECTIVES)).toMatchFileSnapshot(README);
  });

  it('names every directive and attribute, and explains every kind of message once', () => {
    const text = writeReference(HAND_WRITTEN, DIRECTIVES);
    for (const { name, attributes } of DIRECTIVES) {
      const [, part = ''] = text.split(`\n### ${name}\n`);
      for (const attribute of Object.keys(attributes)) expect(part).toContain(`| \`${attribute}\` |`);
    }
    expect(text).not.toMatch(/<!-- (?:directives|rules) -->/);
  });
});

describe('the example of', () => {
  it.each(DIRECTIVES.map((directive) => [directive.name, directive] as const))('%s is right', (name, directive) => {
    expect(directive.example).toContain(`:${name}`);
    expect(listMessages(writeLesson(placeExample(directive)))).toEqual([]);
  });
});

describe('the examples of the introduction', () => {
  const blocks = [...HAND_WRITTEN.matchAll(/^```(\w+)\n(.*?)^```$/gms)].map(([, kind, text = '']) => ({ kind, text }));
  const lessons = blocks.flatMap(({ kind, text }) => (kind === 'markdown' ? text : []));

  it('are a week, a lesson and two parts of one', () => {
    expect(blocks.map(({ kind }) => kind)).toEqual(['yaml', 'markdown', 'markdown', 'markdown']);
  });

  it.each(lessons)('are right as lessons: %#', (text) => {
    expect(listMessages(text.startsWith('---') ? text : writeLesson(text))).toEqual([]);
  });

  it('are right as a week', () => {
    const week = blocks[0]?.text ?? '';
    const files = makeWeek(
      { 'a.md': writeLesson('Text.', { day: 'monday' }), 'b.md': writeLesson('Text.', { day: 'wednesday' }) },
      { week },
    );
    expect(resolveWeek(files, setting).diagnostics).toEqual([]);
  });
});
