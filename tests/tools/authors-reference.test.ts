import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { parse as parseYaml, stringify as stringifyYaml } from 'yaml';
import { parseCalendar } from '../../src/content/parse-calendar.ts';
import { parseGestureSet } from '../../src/content/parse-gesture-set.ts';
import { parseQuestionBank } from '../../src/content/parse-question-bank.ts';
import { parseSchool } from '../../src/content/parse-school.ts';
import { CHECK_WORDS } from '../../src/content/question-words.ts';
import { calendarSchema } from '../../src/content/schemas/calendar.ts';
import { gesturesSchema } from '../../src/content/schemas/gestures.ts';
import { questionsSchema } from '../../src/content/schemas/questions.ts';
import { schoolSchema } from '../../src/content/schemas/school.ts';
import type { DirectiveSyntax } from '../../src/directives/definition.ts';
import { DIRECTIVES } from '../../src/lesson/directive-registry.ts';
import { resolveWeek } from '../../src/lesson/resolve-week.ts';
import { QUESTION_KINDS } from '../../src/quiz/questions/question-kinds.ts';
import { makeAssets, makeMp3, makeSvg } from '../content/media/sample-files.ts';
import { makeWeek, openContent, printDiagnostic, writeLesson } from '../directives/build-week.ts';
import { listSchemaKeys } from './list-schema-keys.ts';
import { writeReference } from './write-reference.ts';

const README = fileURLToPath(new URL('../../lessons/README.md', import.meta.url));
const HAND_WRITTEN = readFileSync(new URL('authors-reference.template', import.meta.url), 'utf8');

const setting = openContent();
const DAYS = ['monday', 'wednesday', 'friday'];

/** The messages of a lesson on Wednesday, in a week with two other days and a picture. */
function listMessages(lesson: string): string[] {
  const others = { 'x.md': writeLesson('Text.', { day: 'monday' }), 'y.md': writeLesson('Text.', { day: 'friday' }) };
  const week = { ...makeWeek({ 'a.md': lesson, ...others }, { days: DAYS }), pictures: ['half-moon.png'] };
  const { diagnostics } = resolveWeek(week, setting);
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
    expect(text).not.toMatch(/<!-- (?:stars|checks|kinds|directives|rules) -->/);
  });
});

describe('the example of', () => {
  it.each(DIRECTIVES.map((directive) => [directive.name, directive] as const))('%s is right', (name, directive) => {
    expect(directive.example).toContain(`:${name}`);
    expect(listMessages(writeLesson(placeExample(directive)))).toEqual([]);
  });
});

/** A part of the hand-written text, from its heading to the next one as high. */
function findPart(heading: string): string {
  const [, part = ''] = HAND_WRITTEN.split(`\n## ${heading}\n`);
  return part.replace(/\n## .*/s, '');
}

const CALENDAR_PART = findPart('The calendar file');
const SCHOOL_PART = findPart('The school file');
const GESTURES_PART = findPart('The gestures file');
const QUESTIONS_PART = findPart('The questions file');
const QUIZ_PART = findPart('Questions in a group quiz');

/** The rows of tables under headings that name the key they belong to; the part's beginning is for the file's own keys. */
function listExplained(part: string, parent: string | undefined): string[] {
  const [top = '', ...sections] = part.split('\n### ');
  const texts =
    parent === undefined ? [top] : sections.filter((text) => text.split('\n')[0]?.includes(`\`${parent}\``));
  return texts.flatMap((text) => [...text.matchAll(/^\| `([a-z-]+)` \| \S/gm)].map(([, key = '']) => key));
}

describe('the keys of a file', () => {
  it.each([
    ['calendar', calendarSchema, CALENDAR_PART],
    ['school', schoolSchema, SCHOOL_PART],
    ['gestures', gesturesSchema, GESTURES_PART],
    ['questions', questionsSchema, QUESTIONS_PART],
  ] as const)('are all explained: %s', (_, schema, part) => {
    const paths = listSchemaKeys(schema);
    expect(paths.length).toBeGreaterThan(15);
    // A school's records are explained with the calendar's.
    const whole = part === SCHOOL_PART ? `${part}${CALENDAR_PART.slice(CALENDAR_PART.indexOf('\n### '))}` : part;
    const missing = paths.filter((path) => !listExplained(whole, path.at(-2)).includes(path.at(-1) ?? ''));
    expect(missing).toEqual([]);
    const known = new Set(paths.flat());
    expect([...part.matchAll(/^\| `([a-z-]+)` \|/gm)].filter(([, key = '']) => !known.has(key))).toEqual([]);
  });

  const examples = (part: string) => [...part.matchAll(/^```yaml\n(.*?)^```$/gms)].map(([, text = '']) => text);
  const estuary: Record<string, unknown> = parseYaml(readFileSync('content/calendars/estuary.yaml', 'utf8'));

  it.each(examples(CALENDAR_PART))('have right examples for a calendar: %#', (text) => {
    const written: Record<string, unknown> = parseYaml(text);
    // Examples of lists show a few entries only, which the schema alone does not count.
    const { groups, months, ...others } = written;
    expect(calendarSchema.safeParse({ ...estuary, ...written }).success).toBe(true);
    const file = { path: 'calendars/estuary.yaml', text: stringifyYaml({ ...estuary, ...others }) };
    expect(parseCalendar(file).diagnostics).toEqual([]);
  });

  it.each(examples(SCHOOL_PART))('have a right example for a school', (text) => {
    expect(parseSchool({ path: 'schools/saltgrass-point.yaml', text }).diagnostics).toEqual([]);
  });
});

describe('the example of a questions file', () => {
  const texts = [...QUESTIONS_PART.matchAll(/^```yaml\n(.*?)^```$/gms)].map(([, text = '']) => text);

  it('is right, and holds a question of every form', () => {
    const { value, diagnostics } = parseQuestionBank({ path: 'questions/demo.yaml', text: texts.join('') });
    expect(diagnostics).toEqual([]);
    const kinds = Object.values(value?.questions ?? {}).map(({ kind }) => kind);
    expect(kinds).toEqual(['choice', 'short', 'order', 'match', 'open', 'draw']);
  });

  it('can be asked', () => {
    const keys = Object.keys(parseQuestionBank({ path: 'q.yaml', text: texts.join('') }).value?.questions ?? {});
    const asked = keys.map((key) => `::question{use=demo/${key}}\n`).join('\n');
    const lesson = writeLesson(`:::group-quiz[Q]{groups=1}\n${asked}:::`);
    const library = openContent(undefined, (text) => (text.includes('hidden-moon:') ? texts.join('') : text));
    const files = makeWeek({ 'a.md': lesson.replaceAll('demo/', 'estuary/') });
    const { diagnostics } = resolveWeek(files, library);
    expect(diagnostics.map((diagnostic) => printDiagnostic(diagnostic, ''))).toEqual([]);
  });
});

describe('the examples of questions', () => {
  const texts = [...QUIZ_PART.matchAll(/^```markdown\n(.*?)^```$/gms)].map(([, text = '']) => text);

  it.each(texts)('are right: %#', (text) => {
    const quiz = text.startsWith(':::') ? text : `:::group-quiz[Q]{groups=1}\n${text}:::`;
    expect(listMessages(writeLesson(quiz))).toEqual([]);
  });

  it('are a quiz, and one of every form', () => {
    expect(texts.length).toBe(7);
  });

  it('come with a row for every check and every kind', () => {
    const text = writeReference(HAND_WRITTEN, DIRECTIVES);
    const words = [...CHECK_WORDS, ...Object.keys(QUESTION_KINDS)];
    for (const word of words) {
      // A word may stand for a check and for a kind.
      const count = words.filter((other) => other === word).length;
      const rows = text.match(new RegExp(`^\\| \`${word}(?: [A-Z]+)?\` \\|`, 'gm'));
      expect(rows, word).toHaveLength(count);
    }
  });
});

describe('the examples of gestures', () => {
  const texts = [...GESTURES_PART.matchAll(/^```yaml\n(.*?)^```$/gms)].map(([, text = '']) => text);
  const assets = makeAssets({ images: { 'swan.svg': makeSvg() }, sounds: { 'whole-month.mp3': makeMp3() } });

  it.each(texts)('are right: %#', (text) => {
    expect(parseGestureSet({ path: 'gestures/demo.yaml', text }, assets).diagnostics).toEqual([]);
  });

  it('are in lines and in keys, with `then`, a picture and a recording', () => {
    expect(texts.length).toBe(4);
  });
});

describe('the examples of the introduction', () => {
  const parts = [CALENDAR_PART, SCHOOL_PART, GESTURES_PART, QUESTIONS_PART, QUIZ_PART];
  const introduction = parts.reduce((text, part) => text.replace(part, ''), HAND_WRITTEN);
  const blocks = [...introduction.matchAll(/^```(\w+)\n(.*?)^```$/gms)].map(([, kind, text = '']) => ({ kind, text }));
  const lessons = blocks.flatMap(({ kind, text }) => (kind === 'markdown' ? text : []));

  it('are a week, a lesson and a part of one', () => {
    expect(blocks.map(({ kind }) => kind)).toEqual(['yaml', 'markdown', 'markdown']);
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
