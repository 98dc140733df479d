import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { runCommand } from '../../src/cli/run-command.ts';
import { createFakeTerminal } from './fake-terminal.ts';

let work: string;
let schoolFile: string;

beforeEach(() => {
  work = mkdtempSync(join(tmpdir(), 'lessontide-observe-'));
  cpSync('content', work, { recursive: true });
  schoolFile = join(work, 'schools/saltgrass-point.yaml');
});

afterEach(() => rmSync(work, { recursive: true, force: true }));

async function run(...words: string[]) {
  const terminal = createFakeTerminal();
  const status = await runCommand([...words, '--content', work], terminal);
  return { status, printed: terminal.printed, told: terminal.told };
}

const observe = (...words: string[]) => run('observe', ...words);

const readSchool = () => readFileSync(schoolFile, 'utf8');

describe('observe', () => {
  it('moves a month by its first night, and says which nights change', async () => {
    const before = readSchool();
    const { status, printed, told } = await observe('2026-07-15', 'Hidden Moon', '--by', 'seen from the jetty');
    expect([status, told]).toEqual([0, []]);
    const entry = '{ date: 2026-07-15, night: Hidden Moon, by: "seen from the jetty" }';
    expect(readSchool()).toBe(`${before}observations:\n  - ${entry}\n`);
    expect(printed[0]).toBe(`${schoolFile}: added ${entry}`);
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

  it('refuses a second night for a date', async () => {
    await observe('2026-07-15', 'Hidden Moon', '--by', 'a');
    const written = readSchool();
    const { status, told } = await observe('2026-07-15', 'Maybe Moon', '--by', 'b');
    expect([status, told.length]).toEqual([1, 1]);
    expect(told[0]).toContain('has `Hidden Moon` on 2026-07-15 already, and a date has one night');
    expect(readSchool()).toBe(written);
  });

  it('writes nothing when the night lies too far from the computed one', async () => {
    const before = readSchool();
    const { status, told } = await observe('2026-07-22', 'Hidden Moon', '--by', 'a');
    expect(status).toBe(1);
    expect(told.at(-1)).toBe('lessontide: nothing was written');
    expect(told.join('\n')).toMatch(/saltgrass-point\.yaml:\d+:\d+ error: /);
    expect(readSchool()).toBe(before);
  });

  it('says what to add by hand where the list has no plain place for it', async () => {
    writeFileSync(schoolFile, `${readSchool()}...\n`);
    const before = readSchool();
    const { status, told } = await observe('2026-07-15', 'Hidden Moon', '--by', 'a');
    expect([status, told.length]).toEqual([1, 1]);
    expect(told[0]).toContain('add by hand: `- { date: 2026-07-15, night: Hidden Moon, by: "a" }`');
    expect(readSchool()).toBe(before);
  });

  it('leaves a file with a mistake alone', async () => {
    writeFileSync(schoolFile, readSchool().replace('latitude', 'lattitude'));
    const school = ['--school', 'saltgrass-point'];
    const { status, told } = await observe('2026-07-15', 'Hidden Moon', '--by', 'a', ...school);
    expect(status).toBe(1);
    expect(told.join('\n')).toContain('did you mean');
  });

  it('leaves no other file behind', async () => {
    const before = readdirSync(work, { recursive: true });
    await observe('2026-07-15', 'Hidden Moon', '--by', 'a');
    expect(readdirSync(work, { recursive: true })).toEqual(before);
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
