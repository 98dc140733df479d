import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';

const ROOT = join(import.meta.dirname, '..');

/** Documents for people, which link to each other and to files of the project. */
const DOCUMENTS = ['README.md', 'DEVELOPERS.md', 'CHANGELOG.md', 'lessons/README.md'];

function readLinks(document: string): string[] {
  const text = readFileSync(join(ROOT, document), 'utf8')
    .replace(/^```.*?^```/gms, '')
    .replace(/`[^`\n]*`/g, '');
  return [...text.matchAll(/\]\(([^)\s]+)\)/g)].map((match) => match[1] ?? '');
}

describe.each(DOCUMENTS)('%s', (document) => {
  it('links to nothing that is not there', () => {
    const local = readLinks(document).filter((link) => !/^[a-z]+:|^#/.test(link));
    const missing = local.filter((link) => !existsSync(join(ROOT, dirname(document), link.replace(/#.*$/, ''))));
    expect(missing).toEqual([]);
  });
});

describe('README.md', () => {
  const scripts: Readonly<Record<string, string>> = JSON.parse(
    readFileSync(join(ROOT, 'package.json'), 'utf8'),
  ).scripts;

  it('names scripts that are there', () => {
    const text = readFileSync(join(ROOT, 'README.md'), 'utf8') + readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8');
    const named = [...text.matchAll(/npm run ([a-z:]+)/g)].map((match) => match[1] ?? '');
    expect(named.length).toBeGreaterThan(2);
    expect(named.filter((name) => !(name in scripts))).toEqual([]);
  });
});
