import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sortDiagnostics } from '../../src/cli/tell-diagnostics.ts';
import { DIRECTIVES } from '../../src/lesson/directive-registry.ts';
import type { WeekFiles } from '../../src/lesson/resolve-week.ts';
import { stringifyHast } from '../../src/lesson/stringify-hast.ts';
import { type BuiltWeek, buildWeek, digestPlan, listTexts, openContent, printDiagnostic } from './build-week.ts';
import {
  listOptionShells,
  listTextsOf,
  listWrittenAnswers,
  readPageText,
  SIGNS_OF_ANSWERS,
  splitSentences,
} from './find-answers.ts';
import { layOutHtml } from './lay-out-html.ts';
import { listFolders, readCase } from './read-case.ts';

/*
 * A case is a folder <directive>/<case>: input.md (more lessons: input-….md), config.yaml where it is not a Wednesday
 * at the English school, and what must come out: messages.txt; teacher.html, learner.html and key.html where there are
 * such pages. A new case is a new folder. UPDATE_FIXTURES=1 writes the expected files anew: read what it writes.
 */
const ROOT = new URL('../fixtures/directives/', import.meta.url);
const UPDATE = process.env['UPDATE_FIXTURES'] === '1';
const USUAL = 'lessons/test-week/input.md';

const setting = openContent();
const again = openContent();

const directives = listFolders(ROOT).filter((name) => name !== 'content');

function readMain(html: string): string {
  return /<main\b[^>]*>(.*)<\/main>/s.exec(html)?.[1] ?? '';
}

/** Pages for learners, but for their list. */
function listSheets({ plan }: BuiltWeek): [string, string][] {
  const texts = plan === undefined ? [] : [...listTexts(plan)];
  return texts.filter(([path]) => path.startsWith('learners/') && path !== 'learners/index.html');
}

/** What must come out, by file name; undefined where there must be no such file. */
function describeOutcome(built: BuiltWeek): Record<string, string | undefined> {
  const { week, plan, diagnostics } = built;
  const sheets = listSheets(built);
  const bodies = week?.lessons.map(({ slug, body }) => `== ${slug}\n${layOutHtml(stringifyHast(body))}`);
  const keys = plan === undefined ? [] : [...listTexts(plan)].filter(([path]) => path.startsWith('key-'));
  return {
    'messages.txt': sortDiagnostics(diagnostics)
      .map((diagnostic) => `${printDiagnostic(diagnostic, USUAL)}\n`)
      .join(''),
    'teacher.html': bodies?.join(''),
    'learner.html':
      sheets.length === 0
        ? undefined
        : sheets.map(([path, html]) => `== ${path}\n${layOutHtml(readMain(html))}`).join(''),
    'key.html': keys.length > 0 ? keys.map(([, html]) => layOutHtml(readMain(html))).join('') : undefined,
  };
}

function expectNoAnswers(built: BuiltWeek, { lessons }: WeekFiles): void {
  const notes = built.week?.lessons.flatMap(({ body }) => listTextsOf(stringifyHast(body), 'aside', 'teacher-note'));
  const secrets = [
    ...(notes ?? []).flatMap(splitSentences),
    ...lessons.flatMap(({ text }) => listWrittenAnswers(text)),
  ];
  for (const [, html] of listSheets(built)) {
    const main = readMain(html);
    expect(main).not.toMatch(SIGNS_OF_ANSWERS);
    const text = readPageText(main).toLowerCase();
    for (const secret of secrets) expect(text).not.toContain(secret.toLowerCase());
    for (const shells of listOptionShells(main)) expect(new Set(shells).size).toBe(1);
  }
}

describe.each(directives)('%s', (directive) => {
  const cases = listFolders(new URL(`${directive}/`, ROOT));

  it.each(cases)('%s', (name) => {
    const folder = new URL(`${directive}/${name}/`, ROOT);
    const files = readCase(folder);
    const built = buildWeek(files, setting);
    const outcome = describeOutcome(built);
    for (const [file, found] of Object.entries(outcome)) {
      const path = new URL(file, folder);
      if (found === undefined) {
        // A page that no longer comes out must not leave its expectation behind.
        expect(existsSync(path), `${file} is there, and no such page came out`).toBe(false);
        continue;
      }
      if (UPDATE) writeFileSync(path, found);
      if (!existsSync(path)) throw new Error(`${file} is missing; run with UPDATE_FIXTURES=1 and read what it writes`);
      expect(found, file).toBe(readFileSync(path, 'utf8'));
    }
    for (const { message, severity } of built.diagnostics) {
      expect(message).not.toContain('\n');
      if (severity === 'error') expect(built.plan).toBeUndefined();
    }
    expectNoAnswers(built, files);
    const second = buildWeek(files, again);
    expect(digestPlan(second.plan)).toEqual(digestPlan(built.plan));
    expect(second.diagnostics).toEqual(built.diagnostics);
  });
});

describe('the fixtures', () => {
  it('hold a good and a faulty case of every directive', () => {
    for (const { name } of DIRECTIVES) {
      const messages = listFolders(new URL(`${name}/`, ROOT)).map((each) =>
        readFileSync(new URL(`${name}/${each}/messages.txt`, ROOT), 'utf8'),
      );
      expect(
        messages.some((text) => text === ''),
        `${name}: good`,
      ).toBe(true);
      expect(
        messages.some((text) => text.includes(' error ')),
        `${name}: faulty`,
      ).toBe(true);
    }
  });

  it('hold every attribute of every directive, right and wrong', () => {
    for (const { name, attributes } of DIRECTIVES) {
      const folders = listFolders(new URL(`${name}/`, ROOT)).map((each) => new URL(`${name}/${each}/`, ROOT));
      for (const attribute of Object.keys(attributes)) {
        const written = new RegExp(`:${name}(?:\\[[^\\]]*\\])?\\{[^}]*\\b${attribute}=`);
        const using = folders.filter((folder) => written.test(readFileSync(new URL('input.md', folder), 'utf8')));
        const messages = using.map((folder) => readFileSync(new URL('messages.txt', folder), 'utf8'));
        expect(messages.includes(''), `${name} ${attribute}: right`).toBe(true);
        expect(
          messages.some((text) => text.includes(`\`${attribute}\``)),
          `${name} ${attribute}: wrong`,
        ).toBe(true);
      }
    }
  });
});
