import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { runCommand } from '../../src/cli/run-command.ts';
import { createFakeTerminal } from './fake-terminal.ts';

/** A folder of this test's own, with a copy of the demonstration week and a place for packs. */
let work: string;
let week: string;
let out: string;

beforeEach(() => {
  work = mkdtempSync(join(tmpdir(), 'lessontide-cli-'));
  week = join(work, 'round-moon');
  out = join(work, 'packs');
  cpSync('lessons/round-moon', week, { recursive: true });
});

afterEach(() => rmSync(work, { recursive: true, force: true }));

async function run(...words: string[]) {
  const terminal = createFakeTerminal();
  const status = await runCommand(words, terminal);
  return { status, printed: terminal.printed, told: terminal.told };
}

/** Puts one text in the place of another in a file of the week; the other must be there. */
function edit(file: string, from: string | RegExp, to: string): void {
  const path = join(week, file);
  const text = readFileSync(path, 'utf8');
  const edited = text.replace(from, to);
  if (edited === text) throw new Error(`${file} does not hold ${from}`);
  writeFileSync(path, edited);
}

function readPack(): Map<string, string> {
  const folder = join(out, 'round-moon');
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8', withFileTypes: true }).filter((entry) =>
    entry.isFile(),
  );
  return new Map(files.map((entry) => [entry.name, readFileSync(join(entry.parentPath, entry.name), 'latin1')]));
}

describe('build', () => {
  it('makes the pack and says which page to open', async () => {
    const { status, printed, told } = await run('build', week, '--out', out);
    expect(told).toEqual([]);
    expect(printed.join('\n')).toContain(`Open ${join(out, 'round-moon/index.html')}`);
    expect(status).toBe(0);
    expect([...readPack().keys()]).toEqual(
      expect.arrayContaining(['index.html', '1-monday.html', 'key.html', 'score.html', 'gestures.html', 'pack.json']),
    );
  });

  it('gives the same bytes again, over the pack that is there', async () => {
    await run('build', week, '--out', out);
    const first = readPack();
    expect((await run('build', week, '--out', out)).status).toBe(0);
    expect(readPack()).toEqual(first);
    expect(readdirSync(out)).toEqual(['round-moon']);
  });

  it('shows progress for more than one week, and nothing when quiet', async () => {
    const { printed } = await run('build', week, 'vers-la-nuit-noire', '--out', out);
    expect(printed.map((line) => line.slice(0, 8))).toEqual(['[1 of 2]', '[2 of 2]']);
    expect((await run('build', week, '--out', out, '--quiet')).printed).toEqual([]);
  });

  it('prints what was made as JSON', async () => {
    const { printed } = await run('build', week, '--out', out, '--json');
    const [result, ...others] = JSON.parse(printed.join('\n'));
    expect(others).toEqual([]);
    expect(result).toMatchObject({ status: 'built', open: join(out, 'round-moon/index.html'), diagnostics: [] });
  });

  it('teaches the week at another school', async () => {
    const { status } = await run('build', week, '--out', out, '--school', 'ormevire');
    // Its nights have other names than the lessons ask for: every one is a mistake, and no pack is made.
    expect(status).toBe(1);
    expect(existsSync(join(out, 'round-moon'))).toBe(false);
  });
});

/** Mistakes that authors make; each must be one clear line with its place and exit status 1. */
const MISTAKES = [
  ['a wrong date', 'week.yaml', /^begins: .*$/m, 'begins: 2026-02-30', /week\.yaml:\d+:9 error: .*`2026-02-30`/],
  ['a date that is no Monday', 'week.yaml', /^begins: .*$/m, 'begins: 2026-07-28', /week\.yaml:\d+:9 error: .*Monday/],
  [
    'a broken directive',
    'monday.md',
    '::tonight\n',
    '::tonight {on=monday}\n',
    /monday\.md:\d+:10 error: .*\[directive-syntax\]/,
  ],
  [
    'an unknown directive',
    'monday.md',
    '::tonight\n',
    '::tonigth\n',
    /monday\.md:\d+:1 error: .*did you mean `::tonight`/,
  ],
  [
    'an unknown night',
    'monday.md',
    'nights="Dark Water"',
    'nights="Dark Watre"',
    /monday\.md:\d+:\d+ error: `Dark Watre`.*did you mean `Dark Water`/,
  ],
  [
    'a day that is not taught',
    'monday.md',
    '::tonight\n',
    '::tonight{on=sunday}\n',
    /monday\.md:\d+:11 error: `sunday`/,
  ],
  [
    'minutes that do not add up',
    'monday.md',
    /^minutes: .*$/m,
    'minutes: 60',
    /monday\.md:\d+:\d+ error: .*`60`.*\[step-minutes\]/,
  ],
  [
    'a missing picture',
    'monday.md',
    '::tonight\n',
    '::tonight\n\n![A heron](heron.png)\n',
    /monday\.md:\d+:1 error: .*`heron\.png` is not there/,
  ],
  [
    'an unknown school',
    'week.yaml',
    /^school: .*$/m,
    'school: saltgras-point',
    /week\.yaml:\d+:9 error: .*did you mean `saltgrass-point`/,
  ],
] as const;

describe('mistakes', () => {
  it.each(MISTAKES)('%s is one clear line', async (_name, file, from, to, line) => {
    edit(file, from, to);
    const { status, told } = await run('build', week, '--out', out, '--quiet');
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(line);
    expect(status).toBe(1);
  });

  it('reports a missing lesson for a day', async () => {
    rmSync(join(week, 'friday.md'));
    const { status, told } = await run('check', week);
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(/week\.yaml:\d+:\d+ error: No lesson is for `friday`/);
    expect(status).toBe(1);
  });

  it('are all listed at once, in order of file and line', async () => {
    edit('monday.md', '::tonight\n', '::tonigth\n');
    edit('tuesday.md', /^minutes: .*$/m, 'minutes: 5');
    edit('friday.md', '::tonight', '::tonight{of=friday}');
    const { told } = await run('check', week);
    expect(told.map((line) => line.replace(/^.*\/(\w+\.md).*$/, '$1'))).toEqual([
      'friday.md',
      'monday.md',
      'tuesday.md',
    ]);
  });

  it('leave the last good pack whole', async () => {
    await run('build', week, '--out', out);
    const good = readPack();
    edit('monday.md', '::tonight\n', '::tonigth\n');
    expect((await run('build', week, '--out', out)).status).toBe(1);
    expect(readPack()).toEqual(good);
  });
});

describe('a pack that somebody changed', () => {
  it('is not overwritten without --replace', async () => {
    await run('build', week, '--out', out);
    const page = join(out, 'round-moon/1-monday.html');
    writeFileSync(page, 'mine');
    const { status, told } = await run('build', week, '--out', out);
    expect(status).toBe(1);
    expect(told[0]).toContain('1-monday.html` was changed since the pack was built');
    expect(readFileSync(page, 'utf8')).toBe('mine');
    expect((await run('build', week, '--out', out, '--replace')).status).toBe(0);
    expect(readFileSync(page, 'utf8')).not.toBe('mine');
  });

  it('keeps a file that was put beside its pages', async () => {
    await run('build', week, '--out', out);
    writeFileSync(join(out, 'round-moon/notes.txt'), 'mine');
    const { status, told } = await run('build', week, '--out', out);
    expect([status, told[0]]).toEqual([1, expect.stringContaining('notes.txt` was put there by hand')]);
  });

  it('does not touch a folder that is no pack', async () => {
    mkdirSync(join(out, 'round-moon'), { recursive: true });
    writeFileSync(join(out, 'round-moon/letter.txt'), 'mine');
    const { status, told } = await run('build', week, '--out', out);
    expect([status, told[0]]).toEqual([1, expect.stringContaining('is not a pack of this kit')]);
    expect(readdirSync(join(out, 'round-moon'))).toEqual(['letter.txt']);
  });
});

describe('--replace', () => {
  it('never takes the author’s lessons, nor anything else that is no pack', async () => {
    const lessons = readdirSync(week).sort();
    for (const place of [work, week]) {
      const { status, told } = await run('build', week, '--out', place, '--replace');
      expect([status, told]).toEqual([1, [expect.stringContaining(`your own folder \`${week}\``), expect.any(String)]]);
    }
    mkdirSync(join(out, 'round-moon'), { recursive: true });
    writeFileSync(join(out, 'round-moon/letter.txt'), 'mine');
    const { status, told } = await run('build', week, '--out', out, '--replace');
    expect([status, told[0]]).toEqual([1, expect.stringContaining('is not a pack of this kit')]);
    expect(readdirSync(week).sort()).toEqual(lessons);
    expect(readdirSync(join(out, 'round-moon'))).toEqual(['letter.txt']);
  });

  it('keeps packs out of the content folder', async () => {
    const content = join(work, 'content');
    cpSync('content', content, { recursive: true });
    const { status, told } = await run('build', week, '--content', content, '--out', content, '--replace');
    expect([status, told[0]]).toEqual([1, expect.stringContaining(`your own folder \`${content}\``)]);
    expect(existsSync(join(content, 'round-moon'))).toBe(false);
  });
});

/** What the file system refuses is the author's to mend: one plain line, no stack, status 1. */
describe('the file system', () => {
  it.each([
    ['a plain file as --out', () => writeFileSync(out, ''), 'where a folder is needed'],
    ['a place below a file as --out', () => (out = join(week, 'week.yaml/packs')), 'where a folder is needed'],
    ['a link that leads nowhere', () => symlinkSync('nowhere.md', join(week, 'b.md')), 'b.md` is not there'],
    ['a link to itself', () => symlinkSync('b.md', join(week, 'b.md')), 'b.md` is a link that leads back to itself'],
  ])('refuses %s', async (_name, prepare, reason) => {
    prepare();
    const { status, told, printed } = await run('build', week, '--out', out);
    expect({ status, told, printed }).toEqual({ status: 1, told: [expect.stringContaining(reason)], printed: [] });
  });

  it('may hold a folder with the name of a lesson', async () => {
    mkdirSync(join(week, 'a.md'));
    expect(await run('check', week)).toMatchObject({ status: 0, told: [] });
  });
});

describe('text that is not UTF-8', () => {
  it('is one mistake among the others, and no pack is made', async () => {
    const path = join(week, 'monday.md');
    writeFileSync(path, Buffer.from(readFileSync(path, 'utf8').replace('title: ', 'title: caf\u00e9 '), 'latin1'));
    edit('tuesday.md', /^minutes: .*$/m, 'minutes: five');
    const { status, told, printed } = await run('build', week, '--out', out);
    expect([status, printed]).toEqual([1, []]);
    expect(told).toEqual([
      expect.stringMatching(/monday\.md:2:11 error: .*not saved as UTF-8.*save it again as UTF-8.*\[text-encoding\]$/),
      expect.stringMatching(/tuesday\.md:\d+:\d+ error: /),
      expect.any(String),
    ]);
    expect(existsSync(out)).toBe(false);
  });

  it.each(['lessons/week.yaml', 'content/schools/saltgrass-point.yaml', 'content/calendars/estuary.yaml'])(
    'is found in %s',
    async (file) => {
      const content = join(work, 'content');
      cpSync('content', content, { recursive: true });
      const path = file.startsWith('lessons') ? join(week, 'week.yaml') : join(work, file);
      writeFileSync(path, Buffer.from(`\uFEFF${readFileSync(path, 'utf8')}`, 'utf16le'));
      const { status, told } = await run('build', week, '--content', content, '--out', out, '--quiet');
      expect([status, told]).toEqual([
        1,
        [expect.stringContaining(`${path}:1:1 error: This file is not saved as UTF-8`)],
      ]);
    },
  );
});

describe('a week', () => {
  it('that is named twice is built once, under a tidy name', async () => {
    const { printed, status } = await run('build', week, `${work}/./round-moon//`, '--out', out);
    expect([status, printed]).toEqual([0, [expect.stringContaining(`${week}: `)]]);
    const twice = await run('check', 'round-moon', './lessons/round-moon/');
    expect(twice.printed).toEqual(['1 week (lessons/round-moon): no mistakes found.']);
  });

  it('is refused when another one would make the same pack', async () => {
    const { status, told, printed } = await run('build', 'round-moon', week, '--out', out);
    expect([status, told.length, printed]).toEqual([2, 1, []]);
    expect(told[0]).toContain(`\`${week}\` has the same name as \`lessons/round-moon\``);
    expect(existsSync(out)).toBe(false);
    expect((await run('check', 'round-moon', week)).status).toBe(0);
  });

  it.each(['1900-01-01', '2100-12-20'])('that begins at an end of the calendar is built: %s', async (begins) => {
    edit('week.yaml', /^begins: .*$/m, `begins: ${begins}`);
    // The answer that is tied to the calendar belongs to the dates of the demonstration.
    edit('wednesday.md', / check="[^"]*"/g, '');
    const { status, told } = await run('build', week, '--out', out);
    expect([status, told.filter((line) => line.includes(' error: '))]).toEqual([0, []]);
    expect(existsSync(join(out, 'round-moon/1-monday.html'))).toBe(true);
  });

  it('whose file is empty asks for what is needed, once', async () => {
    writeFileSync(join(week, 'week.yaml'), '');
    const { told } = await run('check', week);
    expect(told).toEqual([
      expect.stringContaining(
        'expected the keys `title`, `begins`, `school` and `for`, or `term` and `week` in place of',
      ),
    ]);
  });

  it('with a term and too high a number is told how many weeks the term has', async () => {
    edit('week.yaml', /^begins: .*$/m, 'term: Term 3\nweek: 99');
    const { told } = await run('check', week);
    expect(told).toEqual([expect.stringContaining('found `99`, expected 1 to 10')]);
  });

  it('with things nested without end is told where', async () => {
    edit('monday.md', '::tonight\n', `${'> '.repeat(3000)}deep\n`);
    const { status, told } = await run('check', week);
    expect([status, told]).toEqual([1, [expect.stringMatching(/monday\.md:\d+:\d+ error: Nested more than 100 deep/)]]);
  });

  it('whose lines end in carriage returns alone is the same week, with the same places', async () => {
    for (const name of readdirSync(week).filter((each) => /\.(?:md|yaml)$/.test(each))) {
      edit(name, /\r?\n/g, '\r');
    }
    expect(await run('check', week)).toMatchObject({ status: 0, told: [] });
    edit('monday.md', /minutes: \d+/, 'minutes: five');
    edit('week.yaml', 'title:', 'tilte:');
    const { told } = await run('check', week);
    expect(told.map((line) => line.replace(/^.*\/([\w.]+:\d+:\d+).*$/, '$1'))).toEqual([
      'monday.md:4:10',
      'week.yaml:1:1',
      'week.yaml:1:1',
    ]);
  });
});

describe('check', () => {
  it('finds nothing wrong in what the kit brings along', async () => {
    // A pack that somebody built here before is not what the kit brings along.
    const { status, told, printed } = await run('check', '--out', out);
    expect(told).toEqual([]);
    expect(printed).toEqual(['2 weeks (lessons/round-moon, lessons/vers-la-nuit-noire): no mistakes found.']);
    expect(status).toBe(0);
  });

  it('prints findings as JSON', async () => {
    edit('monday.md', '::tonight\n', '::tonigth\n');
    const { printed, status } = await run('check', week, '--json');
    expect(JSON.parse(printed.join('\n'))).toMatchObject([
      { rule: 'directive-unknown', severity: 'error', found: '::tonigth' },
    ]);
    expect(status).toBe(1);
  });
});

describe('nights', () => {
  it('follows the contract for other programs', async () => {
    const { printed, status } = await run('nights', '--from', '2026-07-01', '--to', '2026-07-31', '--json');
    expect(status).toBe(0);
    const rows = JSON.parse(printed.join('\n'));
    expect(rows).toHaveLength(31);
    // The row that the design gives as its example.
    expect(rows[28]).toEqual({
      date: '2026-07-29',
      begins: '2026-07-29T17:25:41+12:00',
      ends: '2026-07-30T17:26:37+12:00',
      night: { name: 'Round Moon', number: 16, group: 'High Water', repeat: false },
      nightOfMonth: 16,
      month: { name: 'Frost Month', number: 2, year: 2026, firstDate: '2026-07-14', length: 29, intercalary: false },
      moonAgeDays: 14.82,
      illuminatedFraction: 0.998,
      phase: { name: 'full-moon', at: '2026-07-30T02:36:19+12:00' },
      sunset: '2026-07-29T17:25:41+12:00',
      sunrise: '2026-07-30T07:33:08+12:00',
      moonrise: null,
      moonset: '2026-07-30T07:54:16+12:00',
      basis: 'computed',
    });
  });

  it('prints a table a month, in columns', async () => {
    const { printed } = await run('nights', '--from', '2026-07-13', '--to', '2026-07-15');
    // The heading of two lines before, the calendar's note after.
    expect(printed.join('\n').split('\n').slice(2, -2)).toEqual([
      'Lamp Month (month 1 of 2026, 30 nights)',
      'date        night  name        group       begins  Moon up   Moon down  lit',
      '2026-07-13     30  Gift Night  Last Boats  17:12   07:39 +1  16:38 +1     2%',
      '',
      'Frost Month (month 2 of 2026, 29 nights)',
      'date        night  name         group       begins  Moon up   Moon down  lit',
      '2026-07-14      1  Hidden Moon  Dark Water  17:12   08:26 +1  -            0%  new moon 21:44',
      '2026-07-15      2  Maybe Moon   Dark Water  17:13   09:02 +1  18:00        1%',
      '',
      '+1: on the date after. lit: how much of the Moon, when the night begins.',
    ]);
  });

  it('takes another school', async () => {
    const { printed } = await run('nights', '--from', '2026-10-05', '--school', 'ormevire', '--json');
    expect(JSON.parse(printed.join('\n'))).toMatchObject([{ date: '2026-10-05', month: { name: 'Mois des noix' } }]);
  });
});

/** Calls that are not understood: one line that says what to type, and exit status 2. */
const WRONG_CALLS = [
  [['biuld'], 'did you mean `build`?'],
  [['build'], 'the weeks are: lessons/round-moon, lessons/vers-la-nuit-noire'],
  [['build', 'round-mon'], 'did you mean `round-moon`?'],
  [['build', 'round-moon', '--ot', 'x'], 'did you mean --out?'],
  [['build', 'round-moon', '--out'], 'stands without its value'],
  [['build', 'round-moon', '--quiet=yes'], 'takes no value'],
  [['check', '--school', 'saltgrass-pont'], 'did you mean `saltgrass-point`?'],
  [['nights'], 'write `--from YYYY-MM-DD`'],
  [['nights', '--from', '2026-02-30'], 'expected a real date'],
  [['nights', '--from', '2026-07-02', '--to', '2026-07-01'], 'is before'],
  [['nights', '2026-07-01'], 'takes options only'],
] as const;

describe('wrong usage', () => {
  it.each(WRONG_CALLS)('%j', async (words, advice) => {
    const { status, told, printed } = await run(...words);
    expect([status, told.length, printed]).toEqual([2, 1, []]);
    expect(told[0]).toContain(advice);
  });

  it('names a content folder that is not there', async () => {
    const { status, told } = await run('check', '--content', join(work, 'nowhere'));
    expect([status, told[0]]).toEqual([1, expect.stringContaining('There is no folder')]);
  });
});

describe('help', () => {
  it.each([[], ['--help'], ['-h'], ['help']])('%j teaches the commands', async (...words) => {
    const { status, printed } = await run(...words);
    expect(status).toBe(0);
    expect(printed.join('\n')).toContain('lessontide build round-moon');
  });

  it.each(['build', 'check', 'nights', 'observe'])('%s explains itself', async (name) => {
    expect((await run(name, '--help')).printed).toEqual((await run('help', name)).printed);
    expect((await run(name, '--help')).printed[0]).toMatch(new RegExp(`^lessontide ${name}`));
  });

  it('fits a terminal of 80 columns', async () => {
    for (const name of ['', 'build', 'check', 'nights', 'observe']) {
      const { printed } = await run('help', name);
      expect(
        Math.max(
          ...printed
            .join('\n')
            .split('\n')
            .map((line) => line.length),
        ),
      ).toBeLessThanOrEqual(80);
    }
  });
});
