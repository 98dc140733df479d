import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { runCommand } from '../../src/cli/run-command.ts';
import { createFakeTerminal } from './fake-terminal.ts';

/** After all that is seen here but for what is said to be early. */
const NOW_MS = Date.UTC(2026, 11, 1);

let work: string;
let schoolFile: string;

beforeEach(() => {
  work = mkdtempSync(join(tmpdir(), 'lessontide-observe-'));
  cpSync('content', work, { recursive: true });
  schoolFile = join(work, 'schools/saltgrass-point.yaml');
});

afterEach(() => rmSync(work, { recursive: true, force: true }));

async function runAt(nowMs: number, ...words: string[]) {
  const terminal = createFakeTerminal();
  const status = await runCommand([...words, '--content', work], terminal, nowMs);
  return { status, printed: terminal.printed, told: terminal.told };
}

const run = (...words: string[]) => runAt(NOW_MS, ...words);

const observe = (...words: string[]) => run('observe', ...words);

/** Puts text at the end of the school's file; what it is then. */
function extendSchool(text: string): string {
  writeFileSync(schoolFile, `${readSchool()}${text}`);
  return readSchool();
}

const readSchool = () => readFileSync(schoolFile, 'utf8');

describe('observe', () => {
  it('moves a month by its first night, and says which nights change', async () => {
    const before = readSchool();
    const { status, printed, told } = await observe('2026-07-15', 'Hidden Moon', '--by', 'seen from the jetty');
    expect([status, told]).toEqual([0, []]);
    const entry = '{ date: 2026-07-15, night: Hidden Moon, by: "seen from the jetty" }';
    expect(readSchool()).toBe(`${before}observations:\n  - ${entry}\n`);
    const line = before.split('\n').length + 1;
    expect(printed[0]).toBe(`${schoolFile}:${line} added ${entry}`);
    expect(printed[1]).toMatch(/^\d+ nights change:$/);
    expect(printed.slice(2, 4).map((line) => line.replace(/ +/g, ' '))).toEqual([
      '2026-07-14 Hidden Moon, night 1 of Frost Month -> Gift Night (again), night 31 of Lamp Month',
      '2026-07-15 Maybe Moon, night 2 of Frost Month -> Hidden Moon, night 1 of Frost Month',
    ]);
    const row = JSON.parse((await run('nights', '--from', '2026-07-15', '--json')).printed.join('\n'))[0];
    expect(row).toMatchObject({ night: { name: 'Hidden Moon' }, nightOfMonth: 1, basis: 'observed' });
    const told2 = (await run('nights', '--explain', '2026-07-16')).printed.join('\n');
    expect(told2).toContain('Seen: Hidden Moon, in the night of Wednesday 15 July (seen from the jetty).');
    expect(told2).toContain('By the rule alone the first night would be that of Tuesday 14 July');
  });

  it('takes a night without quotes, whatever its capitals', async () => {
    const { printed } = await observe('2026-07-15', 'hidden', 'moon', '--by', 'Aunt');
    expect(printed[0]).toContain('night: Hidden Moon');
  });

  it('adds to the list that is there', async () => {
    await observe('2026-07-15', 'Hidden Moon', '--by', 'a');
    await observe('2026-08-13', 'Hidden Moon', '--by', 'b');
    expect(readSchool()).toMatch(/by: "a" \}\n {2}- \{ date: 2026-08-13, night: Hidden Moon, by: "b" \}\n$/);
  });

  it('says so when nothing changes, and when it is there already', async () => {
    const first = await observe('2026-07-14', 'Hidden Moon', '--by', 'a');
    expect([first.status, first.printed[1]]).toEqual([
      0,
      'No night changes: what was seen agrees with what was computed.',
    ]);
    const written = readSchool();
    const again = await observe('2026-07-14', 'Hidden Moon', '--by', 'b');
    expect([again.status, again.printed[0]]).toEqual([0, expect.stringContaining('nothing to add')]);
    expect(readSchool()).toBe(written);
  });

  it('refuses a second night for a date, and points at the first', async () => {
    await observe('2026-07-15', 'Hidden Moon', '--by', 'a');
    const written = readSchool();
    const { status, told } = await observe('2026-07-15', 'Maybe Moon', '--by', 'b');
    const line = written.split('\n').length - 1;
    expect([status, told]).toEqual([
      1,
      [
        `${schoolFile}:${line}:5 error: \`observations[1]\`: the date \`2026-07-15\` has \`Hidden Moon\` already, and a date has one night; take this entry out first if it is wrong. [observation]`,
        'lessontide: nothing was written',
      ],
    ]);
    expect(readSchool()).toBe(written);
  });

  it('writes nothing when the night lies too far from the computed one', async () => {
    const before = readSchool();
    const { status, told } = await observe('2026-07-22', 'Hidden Moon', '--by', 'a');
    expect(status).toBe(1);
    const line = before.split('\n').length + 1;
    expect(told).toEqual([
      expect.stringContaining(`saltgrass-point.yaml:${line}:5 error: `),
      `lessontide: nothing was written; the lines above count the entry as line ${line}`,
    ]);
    expect(told[0]).toContain('is 8 nights after the computed date `2026-07-14`, expected at most 3');
    expect(readSchool()).toBe(before);
  });

  it('writes nothing against a month that was announced, and names both', async () => {
    const before = extendSchool('announced-months: [2026-07-14, 2026-08-12]\n');
    const { status, told } = await observe('2026-07-13', 'Hidden Moon', '--by', 'a');
    expect(status).toBe(1);
    expect(told[0]).toContain(
      'the month announced for `2026-07-14` gives the month another first night than `Hidden Moon` on `2026-07-13`',
    );
    expect(readSchool()).toBe(before);
  });

  it('takes nights one after another, each as it is seen', async () => {
    for (const [date, night] of [
      ['2026-07-12', 'Hidden Moon'],
      ['2026-07-13', 'Maybe Moon'],
      ['2026-07-14', 'Silver Thread'],
      ['2026-08-11', 'Gift Night'],
      ['2026-08-12', 'Hidden Moon'],
    ] as const) {
      const { status, told } = await observe(date, night, '--by', 'a');
      expect([date, status, told]).toEqual([date, 0, []]);
    }
  });

  it('warns when a night begins its month without the first name', async () => {
    const early = await observe('2026-07-13', 'Maybe Moon', '--by', 'a');
    expect([early.status, early.told]).toEqual([
      0,
      [
        expect.stringContaining(
          'warning: `observations[1]`: `Maybe Moon` on `2026-07-13` begins its month without `Hidden Moon`, expected `Hidden Moon` first; if that was on `2026-07-12`, add it to the observations, else check the date and the name.',
        ),
      ],
    ]);
    for (const words of [['check'], ['nights', '--from', '2026-07-13']]) {
      expect((await run(...words)).told.join('\n')).toContain('begins its month without `Hidden Moon`');
    }
    const first = await observe('2026-07-12', 'Hidden Moon', '--by', 'a');
    expect([first.status, first.told]).toEqual([0, []]);
    expect((await run('check')).told).toEqual([]);
  });

  it('warns of a night that has not begun', async () => {
    // The Sun sets at 17:13 that day, twelve hours ahead of universal time.
    const before = await runAt(Date.UTC(2026, 6, 15, 5, 12), 'observe', '2026-07-15', 'Maybe Moon', '--by', 'a');
    expect([before.status, before.told]).toEqual([
      0,
      [
        expect.stringMatching(
          /saltgrass-point\.yaml:\d+:5 warning: .*`Maybe Moon` on `2026-07-15` begins only at `2026-07-15T17:13:\d\d\+12:00` by the clock of this computer, expected a night that was seen/,
        ),
      ],
    ]);
    const after = await runAt(Date.UTC(2026, 6, 16, 5, 15), 'observe', '2026-07-16', 'Silver Thread', '--by', 'a');
    expect([after.status, after.told]).toEqual([0, []]);
  });

  it('says what to add by hand where the list has no plain place for it', async () => {
    const before = extendSchool('...\n');
    const { status, told } = await observe('2026-07-15', 'Hidden Moon', '--by', 'a');
    expect([status, told.length]).toEqual([1, 2]);
    expect(told[0]).toContain('add it by hand: `- { date: 2026-07-15, night: Hidden Moon, by: "a" }`');
    expect(readSchool()).toBe(before);
  });

  it.each([
    ['quotes', 'Aunt "Tui" \'s \\ way', '"Aunt \\"Tui\\" \'s \\\\ way"'],
    ['a line end', 'seen by\n  the class\r\n', '"seen by the class"'],
    ['what YAML has signs for', '# - a: {b} [c] & *d !e %f @g', '"# - a: {b} [c] & *d !e %f @g"'],
    ['accents and other scripts', 'He\u0301le\u0300ne 夜 🌙', '"Hélène 夜 🌙"'],
  ])('takes %s in who saw it', async (_, by, written) => {
    const { status, told } = await observe('2026-07-15', 'Hidden Moon', '--by', by);
    expect([status, told]).toEqual([0, []]);
    expect(readSchool()).toContain(`night: Hidden Moon, by: ${written} }\n`);
  });

  it('gives months where no crescent can be told, as soon as the next one is known too', async () => {
    const calendarFile = join(work, 'calendars/estuary.yaml');
    const calendar = readFileSync(calendarFile, 'utf8').replace(
      /^month-begins: .*$/m,
      'month-begins: { at: first-crescent }',
    );
    writeFileSync(calendarFile, calendar);
    // The midnight Sun: conjunctions of 2026-06-15 and 2026-07-14 without a sunset.
    const school = readSchool()
      .replace('latitude: -41.1', 'latitude: 69.6')
      .replace('longitude: 174.2', 'longitude: 19');
    writeFileSync(schoolFile, school.replace('Pacific/Auckland', 'Europe/Oslo'));
    const first = await observe('2026-06-16', 'Hidden Moon', '--by', 'a');
    expect([first.status, first.told.length, first.printed.at(-1)]).toEqual([0, 1, 'No night changes.']);
    expect(first.told[0]).toContain(
      'warning: `observations[1]`: which night `2026-06-16` is cannot be told by this entry alone. The first crescent after the conjunction in the night of `2026-07-13` cannot be told at this place',
    );
    const second = await observe('2026-07-16', 'Hidden Moon', '--by', 'a');
    expect([second.status, second.told.length]).toEqual([0, 1]);
    expect(second.printed).toContain('2026-06-16  not known  ->  Hidden Moon, night 1 of Lamp Month');
    expect((await run('nights', '--from', '2026-07-15')).printed.join('\n')).toContain('2026-07-15     30  Gift Night');
  });

  it('leaves a file with a mistake alone', async () => {
    writeFileSync(schoolFile, readSchool().replace('latitude', 'lattitude'));
    const before = readSchool();
    const { status, told } = await observe('2026-07-15', 'Hidden Moon', '--by', 'a');
    expect([status, told.at(-1)]).toEqual([1, 'lessontide: nothing was written']);
    expect(told.join('\n')).toContain('did you mean `latitude`?');
    expect(readSchool()).toBe(before);
  });

  it('leaves no other file behind', async () => {
    const before = readdirSync(work, { recursive: true });
    await observe('2026-07-15', 'Hidden Moon', '--by', 'a');
    expect(readdirSync(work, { recursive: true })).toEqual(before);
  });
});

describe('observe --json', () => {
  async function observeJson(...words: string[]) {
    const { status, printed, told } = await observe(...words, '--json');
    return { status, told, result: JSON.parse(printed.join('\n')) };
  }

  it('says what was added, where, and what changes', async () => {
    const line = readSchool().split('\n').length + 1;
    const { status, told, result } = await observeJson('2026-07-15', 'hidden moon', '--by', 'the class');
    expect([status, told]).toEqual([0, []]);
    expect(Object.keys(result)).toEqual(['status', 'file', 'line', 'observation', 'changes', 'diagnostics']);
    expect(result).toMatchObject({
      status: 'added',
      file: schoolFile,
      line,
      observation: { date: '2026-07-15', night: 'Hidden Moon', by: 'the class' },
      diagnostics: [],
    });
    expect(result.changes[0]).toEqual({
      date: '2026-07-14',
      before: { night: 'Hidden Moon', repeat: false, nightOfMonth: 1, month: 'Frost Month' },
      after: { night: 'Gift Night', repeat: true, nightOfMonth: 31, month: 'Lamp Month' },
    });
    expect(result.changes.at(-1).date).toBe('2026-08-11');
  });

  it('says that the file has it already', async () => {
    await observe('2026-07-15', 'Hidden Moon', '--by', 'a');
    const { status, result } = await observeJson('2026-07-15', 'Hidden Moon', '--by', 'b');
    const line = readSchool().split('\n').length - 1;
    expect([status, result]).toMatchObject([0, { status: 'known', line, changes: [], diagnostics: [] }]);
  });

  it('says why nothing was written', async () => {
    const { status, told, result } = await observeJson('2026-07-22', 'Hidden Moon', '--by', 'a');
    expect([status, told.length]).toEqual([1, 1]);
    expect(result).toMatchObject({
      status: 'refused',
      changes: [],
      diagnostics: [{ rule: 'observation', severity: 'error', found: '2026-07-22', place: { line: result.line } }],
    });
  });

  it('gives the mistakes of a file that cannot be used', async () => {
    writeFileSync(schoolFile, readSchool().replace('latitude', 'lattitude'));
    const { status, result } = await observeJson('2026-07-15', 'Hidden Moon', '--by', 'a');
    expect([status, result.status, result.line]).toEqual([1, 'refused', undefined]);
    expect(result.diagnostics.map(({ rule }: { rule: string }) => rule).sort()).toEqual(['missing-key', 'unknown-key']);
  });
});

/** Calls that are not understood: one line that says what to type, exit status 2, and the file as it was. */
const WRONG_CALLS = [
  [[], 'write `observe YYYY-MM-DD "NIGHT" --by "WHO OR HOW"`'],
  [['2026-07-15'], 'needs a date and a night'],
  [['2026-07-15', 'Hidden Moon'], 'add `--by'],
  [['2026-07-15', 'Hiden Moon', '--by', 'a'], 'did you mean `Hidden Moon`?'],
  [['2026-07-15', 'Nowhere', '--by', 'a'], 'is not a night of `Estuary Nights`; expected one of Hidden Moon'],
  [['2026-02-30', 'Hidden Moon', '--by', 'a'], 'expected a real date'],
  [['1799-12-31', 'Hidden Moon', '--by', 'a'], 'from 1800-01-01 to 2200-12-31'],
  [['2026-07-15', 'Hidden Moon', '--by', 'a\u0007b'], 'control character'],
  [['2026-07-15', 'Hidden Moon', '--by', 'a', '--school', 'saltgras-point'], 'did you mean `saltgrass-point`?'],
  [['2026-07-15', 'Hidden Moon', '--bye', 'a'], 'did you mean --by?'],
] as const;

describe('wrong usage', () => {
  it.each(WRONG_CALLS)('%j', async (words, advice) => {
    const before = readSchool();
    const { status, told, printed } = await observe(...words);
    expect([status, told.length, printed]).toEqual([2, 1, []]);
    expect(told[0]).toContain(advice);
    expect(readSchool()).toBe(before);
  });
});
