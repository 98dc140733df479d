import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { ElementContent } from 'hast';
import { toString as readText } from 'mdast-util-to-string';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { openSetting } from '../../src/cli/open-weeks.ts';
import { resolveWeeks } from '../../src/cli/resolve-weeks.ts';
import { runCommand } from '../../src/cli/run-command.ts';
import type { ResolvedWeek } from '../../src/lesson/model.ts';
import { thisComputer } from '../../src/node/find-chromium.ts';
import { sha256 } from '../../src/node/sha256.ts';
import type { Manifest } from '../../src/pack/manifest.ts';
import { writeBrowserProgram, writeProgram } from '../browser/write-program.ts';
import { listTitles, type ReadPdf, readPdf } from '../pack/pdf/read-pdf.ts';
import { createFakeTerminal } from './fake-terminal.ts';

/** The demonstration weeks: one in English, one in French, with a calendar each. */
const WEEKS = ['round-moon', 'vers-la-nuit-noire'] as const;
const FRENCH = 'vers-la-nuit-noire';

// A busy machine may need long for what takes ten seconds here; a test that hangs still ends.
const PATIENCE_MS = 300_000;

/** A folder of this test's own; names of folders are as people give them. */
const work = mkdtempSync(join(tmpdir(), 'lessontide-pdf-'));
const out = join(work, 'für das Büro #1');
const browser = join(work, 'my browser/chromium');
const netLog = join(work, 'net-log.json');

afterAll(() => rmSync(work, { recursive: true, force: true, maxRetries: 5 }));

afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllEnvs();
});

async function run(...words: readonly string[]) {
  const terminal = createFakeTerminal();
  const status = await runCommand(words, terminal);
  return { status, printed: terminal.printed, told: terminal.told };
}

/** Files below a folder, in order. */
function readFiles(folder: string): Map<string, Uint8Array> {
  const entries = readdirSync(folder, { recursive: true, encoding: 'utf8', withFileTypes: true });
  const paths = entries.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name));
  return new Map(paths.sort().map((path) => [path.slice(folder.length + 1), new Uint8Array(readFileSync(path))]));
}

/** Digests of files: of two packs that differ, the names say enough. */
function digest(files: ReadonlyMap<string, Uint8Array>): Map<string, string> {
  return new Map([...files].map(([path, bytes]) => [path, sha256.hex(bytes)]));
}

const digestFolder = (folder: string) => digest(readFiles(folder));

function listPdfs(files: ReadonlyMap<string, Uint8Array>): string[] {
  return [...files.keys()].filter((path) => path.endsWith('.pdf'));
}

/** Without spaces and line ends: a PDF has them where its lines are broken. */
function squash(text: string): string {
  return text.normalize('NFKC').replace(/\s+/g, '');
}

function readPdfText({ sheets }: ReadPdf): string {
  return squash(sheets.map(({ text }) => text).join(''));
}

function resolveOne(name: string): ResolvedWeek {
  const [checked] = resolveWeeks([join('lessons', name)], openSetting({ names: [], options: {} }));
  if (checked?.week === undefined) throw new Error(`${name} has mistakes.`);
  return checked.week;
}

const readTree = (children: readonly ElementContent[]) => readText({ type: 'root', children });

/** Sentences that the key says of answers; short ones may stand anywhere. */
function listWorkings({ lessons }: ResolvedWeek): string[] {
  const answers = lessons.flatMap(({ quizzes }) => quizzes.flatMap(({ key }) => key.flatMap((paper) => paper.answers)));
  const workings = answers.map(({ working }) => squash(readTree(working)));
  return [...new Set(workings)].filter((working) => working.length > 40);
}

describe('build --pdf', () => {
  const before = new Map<string, ReadonlyMap<string, string>>();
  const packs = new Map<string, ReadonlyMap<string, Uint8Array>>();
  const pdfs = new Map<string, ReadPdf>();
  let results: { week: string; files: number; pdf: string[] }[];

  beforeAll(async () => {
    await writeBrowserProgram(browser, [`--log-net-log=${netLog}`, '--net-log-capture-mode=Everything']);
    vi.stubEnv('CHROMIUM_PATH', browser);
    expect(await run('build', ...WEEKS, '--out', out)).toMatchObject({ status: 0, told: [] });
    for (const week of WEEKS) before.set(week, digestFolder(join(out, week)));
    const built = await run('build', ...WEEKS, '--out', out, '--pdf', '--json');
    expect(built).toMatchObject({ status: 0, told: [] });
    results = JSON.parse(built.printed.join('\n'));
    for (const week of WEEKS) {
      const files = readFiles(join(out, week));
      packs.set(week, files);
      for (const path of listPdfs(files)) {
        pdfs.set(`${week} ${path}`, await readPdf(files.get(path) ?? new Uint8Array()));
      }
    }
  }, PATIENCE_MS);

  const packOf = (week: string) => packs.get(week) ?? new Map<string, Uint8Array>();
  const pdfOf = (week: string, path: string): ReadPdf => {
    const pdf = pdfs.get(`${week} ${path}`);
    if (pdf === undefined) throw new Error(`There is no ${path} in ${week}.`);
    return pdf;
  };
  const teachers = (week: string) => pdfOf(week, `pdf/${week}-teacher.pdf`);
  const wall = (week: string) => pdfOf(week, `pdf/${week}-wall-a3.pdf`);
  const papers = (week: string) => pdfOf(week, `learners/pdf/${week}-papers.pdf`);
  const handouts = (week: string) => pdfOf(week, `learners/pdf/${week}-handouts.pdf`);
  const titlesOf = (week: string, pages: readonly string[]) =>
    pages.map((page) => /<title>(.*?)<\/title>/.exec(Buffer.from(packOf(week).get(page) ?? []).toString())?.[1]);

  it.each(WEEKS)('adds four files to %s and changes no other', (week) => {
    expect(listPdfs(packOf(week))).toEqual([
      `learners/pdf/${week}-handouts.pdf`,
      `learners/pdf/${week}-papers.pdf`,
      `pdf/${week}-teacher.pdf`,
      `pdf/${week}-wall-a3.pdf`,
    ]);
    const isOther = ([path]: readonly [string, string]) => !path.endsWith('.pdf') && path !== 'pack.json';
    expect([...digest(packOf(week))].filter(isOther)).toEqual([...(before.get(week) ?? [])].filter(isOther));
  });

  it.each(WEEKS)('lists them in the manifest of %s, each for its reader', (week) => {
    const manifest: Manifest = JSON.parse(Buffer.from(packOf(week).get('pack.json') ?? []).toString());
    const listed = manifest.files.filter(({ path }) => path.endsWith('.pdf'));
    expect([...listed].sort((a, b) => (a.path < b.path ? -1 : 1))).toEqual(
      listPdfs(packOf(week)).map((path) => ({
        path,
        for: path.startsWith('learners/') ? 'learner' : 'teacher',
        bytes: packOf(week).get(path)?.length,
        sha256: sha256.hex(packOf(week).get(path) ?? ''),
      })),
    );
  });

  it('says where they are', () => {
    for (const [index, week] of WEEKS.entries()) {
      expect([...(results[index]?.pdf ?? [])].sort()).toEqual(
        listPdfs(packOf(week)).map((path) => join(out, week, path)),
      );
      expect(results[index]?.files).toBe(packOf(week).size);
    }
  });

  it('prints on A4, and the wall on A3', () => {
    for (const week of WEEKS) {
      for (const pdf of [teachers(week), papers(week), handouts(week)]) {
        expect([...new Set(pdf.sheets.map(({ size }) => size))]).toEqual(['210 x 297']);
      }
      expect(wall(week).sheets.map(({ size }) => size)).toEqual(['420 x 297', '420 x 297']);
    }
  });

  it('has all that the teacher prints in order, an entry of the outline for each page, with its headings below', () => {
    for (const week of WEEKS) {
      const { outline, sheets } = teachers(week);
      const list = (pattern: RegExp) => [...packOf(week).keys()].filter((path) => pattern.test(path)).sort();
      const [days, keys] = [list(/^\d-.*\.html$/), list(/^key-.*\.html$/)];
      expect(keys).not.toEqual([]);
      const titles = titlesOf(week, ['index.html', ...days, ...keys, 'gestures.html']);
      expect(outline.map(({ title }) => title)).toEqual(titles);
      const starts = outline.map(({ sheet }) => sheet);
      expect(starts[0]).toBe(0);
      expect(starts).toEqual([...new Set(starts)].sort((a, b) => a - b));
      expect(sheets.length).toBeGreaterThan(starts.at(-1) ?? 0);
      expect(outline.every(({ isOpen, below }) => !isOpen && below.length > 0)).toBe(true);
    }
  });

  it('has a paper a group, and a sheet or more for each handout', () => {
    for (const week of WEEKS) {
      const { lessons } = resolveOne(week);
      const groups = lessons.flatMap(({ quizzes }) => quizzes.flatMap((quiz) => quiz.papers.map(({ group }) => group)));
      expect(papers(week).sheets.length).toBeGreaterThanOrEqual(groups.length);
      const word = week === FRENCH ? 'Groupe' : 'Group';
      expect(papers(week).outline.flatMap(({ below }) => listTitles(below))).toEqual(
        groups.map((group) => `${word} ${group}`),
      );
      const titles = lessons.flatMap((lesson) => lesson.handouts.map(({ title }) => title));
      expect(handouts(week).outline).toHaveLength(titles.length);
      for (const [index, title] of titles.entries()) {
        const sheet = handouts(week).sheets[handouts(week).outline[index]?.sheet ?? -1];
        expect(squash(sheet?.text ?? '')).toContain(squash(title));
      }
    }
  });

  it('tags every sheet, and tells language and title', () => {
    for (const [name, { info, isMarked, language, pageMode, sheets }] of pdfs) {
      expect({ name, isMarked, language, pageMode }).toEqual({
        name,
        isMarked: true,
        language: name.startsWith(FRENCH) ? 'fr' : 'en-NZ',
        pageMode: 'UseOutlines',
      });
      const untagged = sheets.flatMap(({ tags }, index) => (tags.has('Document') && tags.has('Part') ? [] : [index]));
      expect([name, untagged]).toEqual([name, []]);
      expect(info['Title']).toMatch(name.startsWith(FRENCH) ? /^Vers la nuit noire\s:\s/ : /^The Moon comes full: /);
    }
    const titles = [...pdfs.values()].map(({ info }) => info['Title']);
    expect(new Set(titles).size).toBe(pdfs.size);
  });

  it('says drawings in words, and names in their language', () => {
    const { sheets } = teachers('round-moon');
    expect(sheets.flatMap(({ alternatives }) => alternatives)).toContain(
      'A Moon more than half lit, brightest at the top.',
    );
    expect(new Set(sheets.flatMap(({ languages }) => languages))).toContain('en');
    expect(wall('round-moon').sheets.every(({ alternatives }) => alternatives.length > 0)).toBe(true);
  });

  it('uses kinds of tags that every reader knows', () => {
    const known =
      /^(Root|Document|Part|Div|Sect|Art|BlockQuote|Caption|NonStruct|P|H[1-6]?|L|LI|Lbl|LBody|Table|TR|TH|TD|THead|TBody|TFoot|Span|Quote|Note|Code|Link|Figure|Form)$/;
    const kinds = new Set([...pdfs.values()].flatMap(({ sheets }) => sheets.flatMap(({ tags }) => [...tags])));
    expect([...kinds].filter((kind) => !known.test(kind))).toEqual([]);
  });

  it.each(WEEKS)('gives learners of %s nothing of what the key says', (week) => {
    const workings = listWorkings(resolveOne(week));
    expect(workings.length).toBeGreaterThan(5);
    const said = (text: string) => workings.filter((working) => text.includes(working));
    expect(said(readPdfText(papers(week)))).toEqual([]);
    expect(said(readPdfText(handouts(week)))).toEqual([]);
    // The same search finds them where they are; a few are cut by the end of a sheet.
    expect(said(readPdfText(teachers(week))).length).toBeGreaterThan(0.8 * workings.length);
  });

  it('links within the document and to nothing on this computer', () => {
    for (const [name, { sheets }] of pdfs) {
      const outside = sheets.flatMap(({ links }) => links).filter((link) => typeof link === 'string');
      expect([name, outside.filter((link) => !/^https?:/.test(link))]).toEqual([name, []]);
    }
    const { outline, sheets } = teachers('round-moon');
    // From the first day's sheet to that day's page.
    expect(sheets[0]?.links).toContain(outline[1]?.sheet);
  });

  it('prints no player of sound', () => {
    const shown = [...pdfs].filter(([, { sheets }]) => sheets.some(({ text }) => text.includes('0:00 / 0:00')));
    expect(shown.map(([name]) => name)).toEqual([]);
  });

  it('tells no date of printing, no folder and no system', () => {
    for (const week of WEEKS) {
      for (const path of listPdfs(packOf(week))) {
        const text = Buffer.from(packOf(week).get(path) ?? []).toString('latin1');
        expect([
          path,
          /file:|unfinished|lessontide-pdf-|\/CreationDate|\/ModDate|Mozilla|Linux/.exec(text)?.[0],
        ]).toEqual([path, undefined]);
      }
    }
  });

  it('leaves nothing else behind', () => {
    expect(readdirSync(out).sort()).toEqual([...WEEKS].sort());
  });

  it('asks for nothing on the network', () => {
    const log: { constants: { logEventTypes: Record<string, number> }; events: { type: number }[] } = JSON.parse(
      readFileSync(netLog, 'utf8'),
    );
    const { logEventTypes } = log.constants;
    const sent = ['SOCKET_BYTES_SENT', 'UDP_BYTES_SENT', 'HTTP_TRANSACTION_SEND_REQUEST'];
    for (const name of sent) expect(logEventTypes).toHaveProperty(name);
    expect(log.events.length).toBeGreaterThan(0);
    expect(log.events.filter(({ type }) => sent.some((name) => logEventTypes[name] === type))).toEqual([]);
  });

  it('passes the search for what learners must not get', async () => {
    const checked = await run('check', ...WEEKS, '--out', out);
    expect([checked.status, checked.told]).toEqual([0, []]);
  });

  it('gives the same bytes again, and none when it is not asked to', { timeout: PATIENCE_MS }, async () => {
    vi.stubEnv('CHROMIUM_PATH', browser);
    expect(await run('build', FRENCH, '--out', out, '--pdf')).toMatchObject({
      status: 0,
      told: [],
      printed: [expect.stringContaining('Open '), expect.stringMatching(/^To print: .*teacher\.pdf, .*handouts\.pdf$/)],
    });
    expect(digestFolder(join(out, FRENCH))).toEqual(digest(packOf(FRENCH)));
    expect((await run('build', FRENCH, '--out', out)).status).toBe(0);
    expect(digestFolder(join(out, FRENCH))).toEqual(before.get(FRENCH));
  });
});

describe('build --pdf without a browser that prints', () => {
  const place = join(work, 'without');

  let plain: ReadonlyMap<string, string>;

  beforeAll(async () => {
    await run('build', FRENCH, '--out', place);
    plain = digestFolder(place);
  }, PATIENCE_MS);

  /** Builds the pack, which is to be the same as without PDFs. */
  async function buildFrench(...options: readonly string[]) {
    rmSync(place, { recursive: true });
    const built = await run('build', FRENCH, '--out', place, '--pdf', ...options);
    expect(digestFolder(place)).toEqual(plain);
    expect(readdirSync(place)).toEqual([FRENCH]);
    return built;
  }

  it('builds the pack and says what to do', async () => {
    vi.stubEnv('CHROMIUM_PATH', '');
    vi.spyOn(thisComputer, 'isProgram').mockReturnValue(false);
    const { status, printed, told } = await buildFrench();
    expect(status).toBe(1);
    expect(printed).toEqual([expect.stringContaining(`Open ${join(place, FRENCH, 'index.html')}`)]);
    expect(told).toEqual([
      `lessons/${FRENCH}: built without PDFs: no Chromium was found, and PDFs are made by one; install Chromium, or a browser made from it, or name the program file of one in the environment variable \`CHROMIUM_PATH\``,
    ]);
  });

  it.each([
    ['nothing', join(work, 'gone')],
    ['a folder', work],
    ['a file that is no program', join(process.cwd(), 'package.json')],
  ])('does so where CHROMIUM_PATH names %s', async (_name, path) => {
    vi.stubEnv('CHROMIUM_PATH', path);
    const { status, told } = await buildFrench();
    expect([status, told]).toEqual([
      1,
      [expect.stringContaining(`: built without PDFs: \`CHROMIUM_PATH\` is \`${path}\`; `)],
    ]);
  });

  it('does so where the browser fails, in JSON too', async () => {
    const failing = join(work, 'failing');
    writeProgram(failing, 'echo "no screen" >&2; exit 4');
    vi.stubEnv('CHROMIUM_PATH', failing);
    const { status, printed, told } = await buildFrench('--json');
    const [result] = JSON.parse(printed.join('\n'));
    expect([status, told]).toEqual([1, [`lessons/${FRENCH}: built without PDFs: ${result.pdfFault}`]]);
    expect(result).toMatchObject({
      status: 'built',
      pdf: [],
      files: readFiles(place).size,
      pdfFault: expect.stringContaining('ended by itself with status 4, and its last words were `no screen`'),
    });
  });
});

describe('build --pdf of a week with a mistake', () => {
  it(
    'starts no browser, and leaves the last good pack with its PDFs',
    async () => {
      const week = join(work, FRENCH);
      const place = join(work, 'mistaken');
      cpSync(join('lessons', FRENCH), week, { recursive: true });
      vi.stubEnv('CHROMIUM_PATH', browser);
      expect((await run('build', week, '--out', place, '--pdf', '--quiet')).status).toBe(0);
      const good = digestFolder(place);
      expect(listPdfs(readFiles(place))).toHaveLength(4);
      writeFileSync(join(week, 'lundi.md'), '::tonigth\n');
      const started = join(work, 'started');
      writeProgram(join(work, 'telling'), `touch '${started}'; exit 1`);
      vi.stubEnv('CHROMIUM_PATH', join(work, 'telling'));
      const { status, told } = await run('build', week, '--out', place, '--pdf');
      expect(status).toBe(1);
      expect(told.join('\n')).not.toContain('PDF');
      expect(digestFolder(place)).toEqual(good);
      expect(readdirSync(work)).not.toContain('started');
    },
    PATIENCE_MS,
  );

  it('refuses a plain file as --out', async () => {
    vi.stubEnv('CHROMIUM_PATH', browser);
    writeFileSync(join(work, 'a file'), '');
    const { status, told } = await run('build', FRENCH, '--out', join(work, 'a file'), '--pdf');
    expect([status, told]).toEqual([1, [expect.stringContaining('where a folder is needed')]]);
  });
});
