import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { WeekFiles } from '../../src/lesson/resolve-week.ts';
import { MANIFEST_PATH, type Manifest } from '../../src/pack/manifest.ts';
import type { PackFile, PackPlan } from '../../src/pack/pack-plan.ts';
import {
  buildWeek,
  DEMO_CONTENT,
  digestPlan,
  FIXED_CONTENT,
  listTexts,
  makeWeek,
  openContent,
  readWeekFolder,
  writeLesson,
} from '../directives/build-week.ts';
import {
  listOptionShells,
  listRightLetters,
  listTextsOf,
  listWrittenAnswers,
  readPageText,
  sortShuffled,
  splitSentences,
} from '../directives/find-answers.ts';

const LESSONS = new URL('../../lessons/', import.meta.url);

/** A week of the fixtures with all that a pack can hold: two lessons on a day, pictures in both parts, a shared name. */
const FULL: WeekFiles = {
  ...makeWeek(
    {
      'a.md': writeLesson(
        '![](plan.png)\n\n:::handout[Sky slip]\n![](moon.png) [web](https://example.org/)\n:::\n\n[on](friday.html#step-1) [key](key.html) [list](learners/index.html)',
        { day: 'monday' },
      ),
      'b.md': writeLesson(
        ':::group-quiz[Été]{groups=2}\n1. One?\n   - [x] yes\n   - [ ] no\n\n   ::answer{working="Because it is so, and not otherwise."}\n:::\n\n:::handout[Sky slip]\nA.\n:::',
        { day: 'monday' },
      ),
      'c.md': writeLesson(':::step[Alone]{minutes=10}\n![](moon.png)\n:::', { day: 'friday' }),
    },
    { days: ['monday', 'friday'] },
  ),
  pictures: ['moon.png', 'plan.png', 'unused.png'],
};

const WEEKS: readonly [string, URL, WeekFiles][] = [
  ['round-moon', DEMO_CONTENT, readWeekFolder(new URL('round-moon/', LESSONS), 'round-moon')],
  ['vers-la-nuit-noire', DEMO_CONTENT, readWeekFolder(new URL('vers-la-nuit-noire/', LESSONS), 'vers-la-nuit-noire')],
  ['a week with everything', FIXED_CONTENT, FULL],
];

const settings = new Map([DEMO_CONTENT, FIXED_CONTENT].map((folder) => [folder, openContent(folder)]));

function requirePlan(content: URL, files: WeekFiles): PackPlan {
  const { plan, diagnostics } = buildWeek(files, settings.get(content) ?? openContent(content));
  if (plan === undefined) throw new Error(diagnostics.map(({ message }) => message).join('\n'));
  return plan;
}

function readManifest({ files }: PackPlan): Manifest {
  const last = files.at(-1);
  if (last?.path !== MANIFEST_PATH || typeof last.content !== 'string') throw new Error('No manifest at the end.');
  return JSON.parse(last.content);
}

function toBytes(content: PackFile['content']): Buffer {
  return typeof content === 'string' ? Buffer.from(content, 'utf8') : Buffer.from(content);
}

/** Every address in a page, with the page it stands on. */
function listAddresses(plan: PackPlan): { from: string; address: string }[] {
  return [...listTexts(plan)].flatMap(([from, html]) =>
    from.endsWith('.html')
      ? [...html.matchAll(/\s(?:href|src|action|poster|srcset)="([^"]*)"/g)].map(([, address = '']) => ({
          from,
          address,
        }))
      : [],
  );
}

/** What stands in the calendars and gestures of a content folder. */
function readContentTexts(content: URL): string[] {
  return ['calendars/', 'gestures/'].flatMap((kind) => {
    const folder = new URL(kind, content);
    return readdirSync(folder).map((name) => readFileSync(new URL(name, folder), 'utf8'));
  });
}

/** The answers to all quizzes of a week. */
function readKeys(plan: PackPlan): string {
  return [...listTexts(plan)].flatMap(([path, html]) => (path.startsWith('key-') ? [html] : [])).join('');
}

function listLearnerPages(plan: PackPlan): [string, string][] {
  return [...listTexts(plan)].filter(([path]) => path.startsWith('learners/'));
}

describe.each(WEEKS)('the plan of %s', (_name, content, files) => {
  const plan = requirePlan(content, files);
  const paths = plan.files.map(({ path }) => path);
  const manifest = readManifest(plan);
  const texts = listTexts(plan);

  it('is the same again, from content read anew', () => {
    expect(digestPlan(buildWeek(files, openContent(content)).plan)).toEqual(digestPlan(plan));
  });

  it('names every file once, in paths that every system takes', () => {
    expect(new Set(paths.map((path) => path.toLowerCase())).size).toBe(paths.length);
    for (const path of paths) expect(path).toMatch(/^(?:[a-z]+\/){0,2}[a-z0-9.-]+$/);
  });

  it('has a manifest that lists every other file in order, with its size, digest and reader', () => {
    expect(manifest.files.map(({ path }) => path)).toEqual(paths.slice(0, -1));
    for (const [index, entry] of manifest.files.entries()) {
      const bytes = toBytes(plan.files[index]?.content ?? '');
      expect(entry.bytes).toBe(bytes.length);
      expect(entry.sha256).toBe(createHash('sha256').update(bytes).digest('hex'));
      expect(entry.for).toBe(entry.path.startsWith('learners/') ? 'learner' : 'teacher');
    }
  });

  it('has the pages of the week, each lesson’s with its date', () => {
    for (const page of ['index.html', 'key.html', 'score.html', 'gestures.html', 'learners/index.html'])
      expect(paths).toContain(page);
    expect(manifest.lessons).toHaveLength(files.lessons.length);
    for (const { page, date } of manifest.lessons) {
      expect(texts.get(page)).toContain(`<time datetime="${date}">`);
    }
    const count = (fence: string) =>
      files.lessons.reduce((sum, { text }) => sum + text.split(`\n${fence}`).length - 1, 0);
    const sheets = paths.filter((path) => /^learners\/.*\.html$/.test(path) && path !== 'learners/index.html');
    expect(sheets).toHaveLength(count(':::handout[') + count(':::group-quiz['));
  });

  it('holds no address but those of its own files, without a leading slash, and the web’s that the author wrote', () => {
    for (const { from, address } of listAddresses(plan)) {
      if (/^(?:https?|mailto):/i.test(address)) {
        const written = [...files.lessons.map(({ text }) => text), ...readContentTexts(content)];
        expect(
          written.some((text) => text.includes(address)),
          `${from}: ${address}`,
        ).toBe(true);
        continue;
      }
      expect(address, from).toMatch(/^(?![/\\]|[a-z][a-z0-9+.-]*:)/i);
      const target = new URL(address, `pack://x/${from}`);
      const path = decodeURIComponent(target.pathname.slice(1));
      expect(paths, `${from}: ${address}`).toContain(path);
      if (from.startsWith('learners/')) expect(path, `${from}: ${address}`).toMatch(/^learners\//);
      if (path.endsWith('.wav')) {
        expect(target.hash, `${from}: ${address}`).toMatch(/^(?:#t=\d+(?:\.\d{1,3})?,\d+(?:\.\d{1,3})?)?$/);
        continue;
      }
      // An anchor that leads nowhere leaves the reader at the top of a long page.
      if (target.hash !== '') expect(texts.get(path), `${from}: ${address}`).toContain(` id="${target.hash.slice(1)}"`);
    }
  });

  it('leads from the start to every page', () => {
    const reached = new Set(['index.html']);
    const addresses = listAddresses(plan);
    // Addresses of a page found on the way are looked at in the next round.
    for (let before = 0; before < reached.size; ) {
      before = reached.size;
      for (const { from, address } of addresses) {
        if (reached.has(from)) reached.add(new URL(address, `pack://x/${from}`).pathname.slice(1));
      }
    }
    for (const path of paths.filter((each) => each.endsWith('.html'))) expect(reached).toContain(path);
  });

  it('holds nothing that comes from this machine or this moment', () => {
    for (const [path, page] of texts) {
      // The player's script is the same on every page, and may say `undefined`.
      const text = page.replace(/<script>.*?<\/script>/s, '');
      expect(text, path).not.toMatch(/file:\/\/|\/work\/|\/home\/|node_modules|undefined|\[object|NaN/);
      expect(text.endsWith('\n')).toBe(true);
      // Calendar files end their lines as their standard says.
      if (!path.endsWith('.ics')) expect(text).not.toContain('\r');
    }
  });
});

describe.each(WEEKS)('learners’ files of %s', (_name, content, files) => {
  const plan = requirePlan(content, files);
  const key = readKeys(plan);
  const pages = listLearnerPages(plan);

  it('are pages, pictures and sounds only', () => {
    for (const { path } of plan.files) {
      if (path.startsWith('learners/'))
        expect(path).toMatch(/\.html$|^learners\/(?:images\/[^/]+\.png|sound\/beat-\d+-\d+\.wav)$/);
    }
  });

  it('hold no working, no written answer and no note for the teacher', () => {
    const workings = listTextsOf(key, 'div', 'key-working').flatMap(splitSentences);
    const also = listTextsOf(key, 'li', 'also');
    const notes = [...listTexts(plan)].flatMap(([, html]) =>
      listTextsOf(html, 'aside', 'teacher-note').flatMap(splitSentences),
    );
    const written = files.lessons.flatMap(({ text }) => listWrittenAnswers(text)).filter((text) => text.length > 14);
    expect(workings.length).toBeGreaterThan(0);
    // A rule of safety may stand in a note and, in the author's own words, on a handout as well.
    const handouts = files.lessons.flatMap(({ text }) => text.match(/^:::+handout.*?^:::+$/gms) ?? []).join('\n');
    // A working may repeat what its own question says.
    const asked = listTextsOf(key, 'div', 'key-prompt').join('\n');
    const secrets = [...workings, ...also, ...notes, ...written].filter(
      (secret) => !handouts.includes(secret) && !asked.includes(secret),
    );
    for (const [path, html] of pages) {
      const text = readPageText(html);
      for (const secret of secrets) expect(text, path).not.toContain(secret);
    }
  });

  it('hold no sign of an answer anywhere, styles and attributes among it', () => {
    for (const [path, html] of pages) {
      expect(html, path).not.toMatch(
        /<!--|\sdata-|\schecked|<input|aria-checked|\bticked\b|key\.html|key-right|working/,
      );
      for (const shells of listOptionShells(html)) expect(new Set(shells).size, path).toBe(1);
    }
  });

  it('have no fixed place for the right option', () => {
    const letters = listRightLetters(key);
    expect(letters.length).toBeGreaterThan(1);
    expect(new Set(letters).size).toBeGreaterThan(1);
  });
});

/** Each run of lines that match, changed as a whole. */
function changeRuns(text: string, line: RegExp, change: (run: string[]) => string[]): string {
  const changed: string[] = [];
  let run: string[] = [];
  for (const each of [...text.split('\n'), '']) {
    if (line.test(each)) run.push(each);
    else {
      changed.push(...change(run), each);
      run = [];
    }
  }
  return changed.slice(0, -1).join('\n');
}

/** Marks of right options move on by some places; the words stay. */
function moveMarks(text: string, by: number): string {
  const move = (mark: RegExp) => (run: string[]) =>
    run.map((line, index) => line.replace(mark, mark.exec(run[(index + by) % run.length] ?? '')?.[0] ?? ''));
  const moved = changeRuns(text, /^ +- \[[ x]\] /, move(/\[[ x]\]/));
  return changeRuns(moved, /^ +- \{ text: .*right: /, move(/right: \w+/));
}

/** Options in another order, each with its own mark. */
function turnOptions(text: string): string {
  return changeRuns(
    changeRuns(text, /^ +- \[[ x]\] /, (run) => run.toReversed()),
    /^ +- \{ text: .*right: /,
    (run) => run.toReversed(),
  );
}

/** Without what wrong options mean: under a right one it would be a mistake. */
function dropReasons(text: string): string {
  return text.replace(/^ +> .*\n/gm, '').replace(/, means: "[^"]*" }/g, ' }');
}

/*
 * Whoever has the kit can build a week anew: names, seed and code are no secret. So nothing a learner gets may hang on
 * which option is right, but for the order of what is shuffled: that is seeded by all that the key says.
 */
describe.each([
  ['round-moon', 'en'],
  ['vers-la-nuit-noire', 'fr'],
])('learners’ files of %s, when the author', (name) => {
  const files = readWeekFolder(new URL(`${name}/`, LESSONS), name);
  const plain = buildChanged(dropReasons);

  function buildChanged(change: (text: string) => string): PackPlan {
    const changed = { ...files, lessons: files.lessons.map(({ path, text }) => ({ path, text: change(text) })) };
    const { plan, diagnostics } = buildWeek(changed, openContent(DEMO_CONTENT, change));
    expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
    if (plan === undefined) throw new Error('The changed week has faults.');
    return plan;
  }

  function expectSameForLearners(changed: PackPlan): void {
    const texts = listTexts(changed);
    const pages = listLearnerPages(plain);
    expect(pages.some(([, html]) => html !== sortShuffled(html))).toBe(true);
    expect(listLearnerPages(changed).map(([path]) => path)).toEqual(pages.map(([path]) => path));
    const differs = ([path, html]: [string, string]) => sortShuffled(texts.get(path) ?? '') !== sortShuffled(html);
    expect(pages.filter(differs).map(([path]) => path)).toEqual([]);
  }

  it.each([1, 2, 3])('moves the marks of right options by %i, differ in the order of shuffled things alone', (by) => {
    const moved = buildChanged((text) => moveMarks(dropReasons(text), by));
    expect(readKeys(moved) === readKeys(plain)).toBe(false);
    expectSameForLearners(moved);
  });

  it('writes the options in another order, differ in the order of shuffled things alone', () => {
    const turned = buildChanged((text) => turnOptions(dropReasons(text)));
    expectSameForLearners(turned);
  });
});

describe('planPack', () => {
  it('puts each picture where it is shown, and leaves out those that nobody shows', () => {
    const plan = requirePlan(FIXED_CONTENT, FULL);
    const pictures = plan.files.filter(({ path }) => path.includes('images/'));
    expect(pictures.map(({ path, content }) => [path, toBytes(content).toString()])).toEqual([
      ['images/moon.png', 'moon.png'],
      ['images/plan.png', 'plan.png'],
      ['learners/images/moon.png', 'moon.png'],
    ]);
  });

  it('tells what kind of pack it is and whose', () => {
    const { files: _files, madeWith, ...manifest } = readManifest(requirePlan(FIXED_CONTENT, FULL));
    expect(madeWith).toMatch(/^lessontide \d+\.\d+\.\d+$/);
    expect(manifest).toEqual({
      $schema: 'pack.schema.json',
      format: 'lessontide-pack',
      formatVersion: 1,
      title: 'A test week',
      for: 'Years 3-4',
      language: 'en',
      school: 'Saltgrass Point School',
      calendar: { title: 'Estuary Nights', language: 'en', keeper: 'Saltgrass Point School', sharing: 'open' },
      lessons: [
        { title: 'A lesson', date: '2026-07-27', page: '1-monday-lesson-1.html' },
        { title: 'A lesson', date: '2026-07-27', page: '1-monday-lesson-2.html' },
        { title: 'A lesson', date: '2026-07-31', page: '5-friday.html' },
      ],
    });
  });

  it('passes on that a calendar stays with its school', () => {
    const week = makeWeek({ 'a.md': writeLesson('Text.') }, { school: 'ormevire' });
    expect(readManifest(requirePlan(FIXED_CONTENT, week)).calendar.sharing).toBe('school');
  });
});
