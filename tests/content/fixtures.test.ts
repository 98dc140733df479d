import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { Diagnostic, SourcePlace } from '../../src/content/diagnostic.ts';
import { loadLibrary } from '../../src/content/library.ts';
import { parseLessonHead } from '../../src/content/parse-lesson-head.ts';
import { parseWeek } from '../../src/content/parse-week.ts';
import type { SourceFile } from '../../src/content/types.ts';
import { createAssets } from '../../src/node/content-assets.ts';

// A case is a folder of content files and the messages they must give; UPDATE_FIXTURES=1 writes the messages anew.
const ROOT = new URL('../fixtures/content/', import.meta.url);
const UPDATE = process.env['UPDATE_FIXTURES'] === '1';

function readFiles(folder: URL, ending: RegExp): SourceFile[] {
  if (!existsSync(folder)) return [];
  const paths = readdirSync(folder, { recursive: true, encoding: 'utf8' }).map((path) => path.replaceAll('\\', '/'));
  const kind = folder.pathname.split('/').at(-2);
  return paths
    .filter((path) => ending.test(path))
    .sort()
    .map((path) => ({ path: `${kind}/${path}`, text: readFileSync(new URL(path, folder), 'utf8') }));
}

function checkLessonHead({ path, text }: SourceFile): readonly Diagnostic[] {
  const head = /^---\r?\n(.*?)^---\r?\n/ms.exec(text);
  if (head?.[1] === undefined) throw new Error(`${path} has no front matter.`);
  return parseLessonHead(head[1], { file: path, line: 2, column: 1 }).diagnostics;
}

function checkCase(root: URL): Diagnostic[] {
  const read = (kind: string, ending = /\.yaml$/) => readFiles(new URL(`${kind}/`, root), ending);
  const { library, diagnostics } = loadLibrary({
    calendars: read('calendars'),
    schools: read('schools'),
    gestures: read('gestures'),
    questions: read('questions'),
    labels: read('labels'),
    assets: { ...createAssets(fileURLToPath(root)), showPath: (kind, file) => `${kind}/${file}` },
  });
  const ids = read('schools').map(({ path }) => path.replace(/^.*\/|\.yaml$/g, ''));
  const schools = { ids, find: (id: string) => library.schools.get(id) };
  const weeks = read('lessons').flatMap((file) => parseWeek(file, schools).diagnostics);
  return [...diagnostics, ...weeks, ...read('lessons', /\.md$/).flatMap(checkLessonHead)];
}

function printPlace({ file, line, column }: SourcePlace): string {
  return `${file}:${line}:${column}`;
}

function printDiagnostic({ rule, severity, place, message, related }: Diagnostic): string {
  const also = related ? ` (see ${printPlace(related)})` : '';
  return `${printPlace(place)} ${severity} ${rule} ${message}${also}\n`;
}

describe('content fixtures', () => {
  for (const name of readdirSync(ROOT).sort()) {
    it(name, () => {
      const root = new URL(`${name}/`, ROOT);
      const expected = new URL('messages.txt', root);
      const diagnostics = checkCase(root);
      const messages = diagnostics.map(printDiagnostic).join('');
      if (UPDATE) writeFileSync(expected, messages);
      expect(messages).toBe(readFileSync(expected, 'utf8'));
      for (const { message } of diagnostics) expect(message).not.toContain('\n');
    });
  }
});
