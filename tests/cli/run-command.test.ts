import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
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
      expect.arrayContaining(['index.html', 'monday.html', 'key.html', 'score.html', 'pack.json']),
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
    const page = join(out, 'round-moon/monday.html');
    writeFileSync(page, 'mine');
    const { status, told } = await run('build', week, '--out', out);
    expect(status).toBe(1);
    expect(told[0]).toContain('monday.html` was changed since the pack was built');
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

describe('check', () => {
  it('finds nothing wrong in what the kit brings along', async () => {
    const { status, told, printed } = await run('check');
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
    expect(printed.join('\n').split('\n').slice(-8)).toEqual([
      'Lamp Month (month 1 of 2026, 30 nights)',
      'date        night  name        group       begins  Moon up   Moon down  lit',
      '2026-07-13     30  Gift Night  Last Boats  17:12   07:39 +1  16:38 +1     2%',
      '',
      'Frost Month (month 2 of 2026, 29 nights)',
      'date        night  name         group       begins  Moon up   Moon down  lit',
      '2026-07-14      1  Hidden Moon  Dark Water  17:12   08:26 +1  -            0%  new moon 21:44',
      '2026-07-15      2  Maybe Moon   Dark Water  17:13   09:02 +1  18:00        1%',
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

  it.each(['build', 'check', 'nights'])('%s explains itself', async (name) => {
    expect((await run(name, '--help')).printed).toEqual((await run('help', name)).printed);
    expect((await run(name, '--help')).printed[0]).toMatch(new RegExp(`^lessontide ${name}`));
  });

  it('fits a terminal of 80 columns', async () => {
    for (const name of ['', 'build', 'check', 'nights']) {
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
