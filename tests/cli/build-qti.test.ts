import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runCommand } from '../../src/cli/run-command.ts';
import { sha256 } from '../../src/node/sha256.ts';
import type { Manifest } from '../../src/pack/manifest.ts';
import { listFaults, readDocuments } from '../pack/qti/check-package.ts';
import { scoreOf } from '../pack/qti/mark-item.ts';
import { findAll } from '../pack/qti/read-xml.ts';
import { readZip } from '../pack/qti/read-zip.ts';
import { createFakeTerminal } from './fake-terminal.ts';

/** The demonstration weeks: one in English, one in French, with a calendar each. */
const WEEKS = ['round-moon', 'vers-la-nuit-noire'];

let out: string;
let printed: readonly string[];
let before: ReadonlyMap<string, Uint8Array>;
let packs: ReadonlyMap<string, Uint8Array>;

/** All files of the packs by path from the folder of packs. */
function readPacks(): Map<string, Uint8Array> {
  const entries = readdirSync(out, { recursive: true, encoding: 'utf8', withFileTypes: true });
  return new Map(
    entries
      .filter((entry) => entry.isFile())
      .map((entry) => {
        const path = join(entry.parentPath, entry.name);
        return [path.slice(out.length + 1), new Uint8Array(readFileSync(path))];
      }),
  );
}

/** Paths of files that are in one of two sets of packs only, or differ. */
function listDiffering(one: ReadonlyMap<string, Uint8Array>, other: ReadonlyMap<string, Uint8Array>): string[] {
  const paths = [...new Set([...one.keys(), ...other.keys()])].sort();
  return paths.filter((path) => {
    const [a, b] = [one.get(path), other.get(path)];
    return a === undefined || b === undefined || !Buffer.from(a).equals(b);
  });
}

async function run(...options: readonly string[]) {
  const terminal = createFakeTerminal();
  const status = await runCommand(['build', ...WEEKS, '--out', out, ...options], terminal);
  return { status, printed: terminal.printed, told: terminal.told };
}

beforeAll(async () => {
  out = mkdtempSync(join(tmpdir(), 'lessontide-qti-'));
  const plain = await run('--json');
  expect(plain).toMatchObject({ status: 0, told: [] });
  // Without the option there is no word of it.
  expect(JSON.parse(plain.printed.join('\n')).some((result: object) => 'qti' in result)).toBe(false);
  before = readPacks();
  const made = await run('--qti');
  expect(made).toMatchObject({ status: 0, told: [] });
  printed = made.printed;
  packs = readPacks();
});

afterAll(() => rmSync(out, { recursive: true, force: true }));

const archives = () => [...packs].filter(([path]) => path.endsWith('.zip')).sort(([a], [b]) => (a < b ? -1 : 1));
const unzip = (archive: Uint8Array) => readZip(archive).map(({ path, bytes }) => ({ path, content: bytes }));

describe('build --qti', () => {
  it('adds an archive a quiz, and changes nothing else', () => {
    expect(archives().length).toBeGreaterThanOrEqual(WEEKS.length);
    expect(archives().filter(([path]) => !/^[a-z-]+\/qti\/[a-z0-9-]+-quiz-[1-9]\.zip$/.test(path))).toEqual([]);
    expect(listDiffering(before, packs).filter((path) => !path.endsWith('.zip'))).toEqual(
      WEEKS.map((week) => `${week}/pack.json`),
    );
  });

  it('lists them for the teacher', () => {
    for (const week of WEEKS) {
      const manifest: Manifest = JSON.parse(Buffer.from(packs.get(`${week}/pack.json`) ?? []).toString());
      const listed = manifest.files
        .filter(({ path }) => path.startsWith('qti/'))
        .sort((a, b) => (a.path < b.path ? -1 : 1));
      expect(listed).toEqual(
        archives()
          .filter(([path]) => path.startsWith(`${week}/`))
          .map(([path, bytes]) => ({
            path: path.slice(week.length + 1),
            for: 'teacher',
            bytes: bytes.length,
            sha256: sha256.hex(bytes),
          })),
      );
      expect(listed.length).toBeGreaterThan(0);
    }
  });

  it('says where they are', () => {
    const last = printed.at(-1) ?? '';
    expect(last).toContain('with the answers: ');
    expect(last.split(': ').at(-1)?.split(', ').sort()).toEqual(
      archives()
        .filter(([path]) => path.startsWith(`${WEEKS.at(-1)}/`))
        .map(([path]) => join(out, path)),
    );
  });

  it('makes packages that hold together', () => {
    for (const [path, archive] of archives()) expect([path, listFaults(unzip(archive))]).toEqual([path, []]);
  });

  it('lets right answers earn all marks, and none earn none', () => {
    let marked = 0;
    for (const [, archive] of archives()) {
      const items = [...readDocuments(unzip(archive)).values()].filter(({ name }) => name === 'qti-assessment-item');
      for (const item of items.filter((each) => findAll(each, 'qti-response-processing').length > 0)) {
        const right = findAll(item, 'qti-correct-response').flatMap((correct) => findAll(correct, 'qti-value'));
        const most = findAll(item, 'qti-outcome-declaration')[1]?.text;
        expect(
          scoreOf(
            item,
            right.map(({ text }) => text),
          ),
        ).toBe(Number(most));
        expect(scoreOf(item, [])).toBe(0);
        marked += 1;
      }
    }
    expect(marked).toBeGreaterThan(20);
  });

  it('names the archives for other programs', async () => {
    const results = JSON.parse((await run('--qti', '--json')).printed.join('\n'));
    expect(
      results.map(
        ({ qti }: { qti: string[] }) => qti.length > 0 && qti.every((path) => packs.has(path.slice(out.length + 1))),
      ),
    ).toEqual([true, true]);
  });

  it('leaves no archive behind when the week is built without it again', async () => {
    expect((await run('--quiet')).status).toBe(0);
    expect(listDiffering(before, readPacks())).toEqual([]);
  });
});
