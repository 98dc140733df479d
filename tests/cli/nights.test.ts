import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCommand } from '../../src/cli/run-command.ts';
import { readIcsStrictly } from '../pack/check-ics.ts';
import { createFakeTerminal } from './fake-terminal.ts';

async function run(...words: string[]) {
  const terminal = createFakeTerminal();
  const status = await runCommand(['nights', ...words], terminal);
  return { status, printed: terminal.printed, told: terminal.told };
}

/** What would stand in a file: the terminal ends each line with LF. */
const toFile = (printed: readonly string[]) => printed.map((line) => `${line}\n`).join('');

async function listDates(...words: string[]): Promise<string[]> {
  const { printed, told } = await run(...words, '--json');
  expect(told).toEqual([]);
  return JSON.parse(printed.join('\n')).map(({ date }: { date: string }) => date);
}

describe('a month and a year', () => {
  it('are those of the calendar', async () => {
    const month = await listDates('--year', '2026', '--month', 'Frost Month');
    expect([month.length, month[0], month.at(-1)]).toEqual([29, '2026-07-14', '2026-08-11']);
    expect(await listDates('--year', '2026', '--month', '2')).toEqual(month);
    expect(await listDates('--year', '2026', '--month', 'frost month')).toEqual(month);
    const year = await listDates('--year', '2026');
    expect([year[0], year.at(-1)]).toEqual(['2026-06-14', '2027-07-02']);
    expect(new Set(year).size).toBe(year.length);
  });

  it('tell the extra month of a long year, wherever it stands', async () => {
    const content = 'tests/fixtures/three-schools/content';
    const choice = ['--year', '2026', '--month', 'Month of Still Waves'];
    const { printed } = await run('--content', content, '--school', 'midnight-east', ...choice);
    expect(printed).toContain('\nMonth of Still Waves (month 7 of 2026, the extra month, 29 nights)');
  });
});

describe('--csv', () => {
  it('is a header and a record a night, each ended by CR LF', async () => {
    const { printed, status } = await run('--from', '2026-07-29', '--to', '2026-07-30', '--csv');
    const file = toFile(printed);
    expect(status).toBe(0);
    expect(file.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    const lines = file.split('\r\n');
    expect(lines.map((line) => line.split(',').slice(0, 4).join())).toEqual([
      'date,begins,ends,night',
      '2026-07-29,2026-07-29T17:25:41+12:00,2026-07-30T17:26:37+12:00,Round Moon',
      expect.stringMatching(/^2026-07-30,/),
      '',
    ]);
    const widths = lines.slice(0, -1).map((line) => line.split(',').length);
    expect(new Set(widths).size).toBe(1);
  });
});

describe('--ics', () => {
  it('gives a whole year to subscribe to', async () => {
    const { printed } = await run('--year', '2026', '--ics');
    const events = readIcsStrictly(new TextEncoder().encode(toFile(printed)));
    expect(events.map(({ start }) => `${start.slice(0, 4)}-${start.slice(4, 6)}-${start.slice(6)}`)).toEqual(
      await listDates('--year', '2026'),
    );
    expect(events.find(({ start }) => start === '20260729')).toEqual({
      uid: '2026-07-29.estuary.saltgrass-point@lessontide',
      stamp: '19700101T000000Z',
      start: '20260729',
      end: '20260730',
      summary: 'Round Moon',
      description:
        'Tonight is Round Moon, in Frost Month. It begins at sunset, 5:25 pm, and ends at 5:26 pm on Thursday 30 July. (Frost Month, night 16 of 29)',
    });
  });

  it('speaks the language of the school', async () => {
    const { printed } = await run('--from', '2026-10-05', '--school', 'ormevire', '--ics');
    const file = toFile(printed);
    expect(file).toContain('SUMMARY;LANGUAGE=fr:');
    expect(readIcsStrictly(new TextEncoder().encode(file))[0]?.description).toContain('Elle commence');
  });
});

describe('--explain', () => {
  it('tells why, from the conjunction to the name', async () => {
    const { printed, status } = await run('--explain', '2026-07-29');
    expect(status).toBe(0);
    const text = printed.join('\n');
    expect(text).toContain(
      'The night of Wednesday 29 July 2026 is Round Moon: night 16 of 29 in Frost Month. It begins at sunset, 5:25 pm',
    );
    expect(text).toContain('new Moon: Tuesday 14 July, 9:44 pm (9:44 am UTC)');
    expect(text).toContain('So the first night of Frost Month is that of Tuesday 14 July.');
    expect(text).toContain('Frost Month is month 2 of the year 2026.');
    expect(text).toContain('This is not a close call');
    expect(text).toContain('the word of the keeper, Saltgrass Point School, and local practice come first');
  });

  it('announces an eclipse that is seen from the school, with the cautions', async () => {
    const explain = async (date: string, ...words: string[]) =>
      (await run('--explain', date, ...words)).printed.join('\n');
    const moon = await explain('2026-03-03');
    expect(moon).toContain(
      '\nEclipse of the Moon, in the night from Tuesday 3 March to Wednesday 4 March: the shadow of the Earth covers the whole Moon.',
    );
    expect(moon).toContain('\nAn eclipse of the Moon does not harm the eyes.');
    for (const date of ['2026-03-02', '2026-03-04']) expect(await explain(date)).not.toContain('clipse');
    const sun = await explain('2026-08-12', '--school', 'ormevire');
    expect(sun).toContain('\nÉclipse de Soleil, mercredi 12\u00A0août');
    expect(sun).toContain('Il ne faut jamais regarder le Soleil, ni tout près de lui.');
    expect(sun).toContain('filtres solaires certifiés');
    expect(await explain('2026-08-12')).not.toContain('clipse');
  });

  it('flags a close call, to be checked by eye', async () => {
    // The new Moon of 2026-11-09 (07:02 UTC) comes 10 minutes before the sunset that ends the night of the 8th here.
    const { printed } = await run('--explain', '2026-11-10');
    const text = printed.join('\n');
    expect(text).toMatch(/Close call: the phase that this month is counted from is \d+ minutes? from the boundary/);
    expect(text).toContain('Check it by eye in the nights that follow and ask the keeper');
    expect(text).toContain('Look for a young crescent only when the Sun is fully down.');
  });

  it('says on the last night of a month that the next one might begin on another, and which night this would be', async () => {
    const { printed } = await run('--explain', '2026-11-07');
    const text = printed.join('\n');
    expect(text).toMatch(
      /^Close call: by the rule the next month begins with the night of Sunday 8 November, but the phase it is counted from is \d+ minutes from the boundary of its night: new Moon, Monday 9 November, 8:0\d pm/m,
    );
    expect(text).toContain('\nOtherwise this night would be Lost in Light: night 29 of 30 in Nest Month.\n');
  });

  it('speaks the language of the school', async () => {
    const { printed } = await run('--explain', '2026-10-05', '--school', 'ormevire');
    expect(printed.join('\n')).toContain('La nuit du lundi 5\u00A0octobre 2026 est');
  });
});

/** Calls that are not understood: one line that says what to type, and exit status 2. */
const WRONG_CALLS = [
  [['--year', '2026', '--month', 'Frost Mnth'], 'did you mean `Frost Month`?'],
  [['--year', '2026', '--month', '14'], 'expected a number from 1 to'],
  [['--month', 'Frost Month'], 'add `--year YYYY`'],
  [['--year', '26'], 'expected one from 1800 to 2200'],
  [['--year', '2200'], 'does not lie whole within 1800-01-01 to 2200-12-31'],
  [['--year', '2026', '--from', '2026-07-01'], '`--year` and `--from` are two ways'],
  [['--explain', '2026-07-01', '--to', '2026-07-01'], '`--explain` and `--to` are two ways'],
  [['--explain', '2026-07-01', '--year', '2026'], '`--explain` and `--year` are two ways'],
  [['--explain', '2026-07-32'], 'expected a real date from 1800-01-01 to 2200-12-31'],
  [['--explain', '2026-07-01', '--json'], 'takes no `--json`'],
  [['--from', '2026-07-01', '--csv', '--ics'], '`--csv` and `--ics` are two forms'],
  [['--from', '2026-07-01', '--csvs'], 'did you mean --csv?'],
  [['--yaer', '2026'], 'did you mean --year?'],
  [['--to', '2026-07-01'], 'write `--from YYYY-MM-DD`'],
] as const;

describe('wrong usage', () => {
  it.each(WRONG_CALLS)('%j', async (words, advice) => {
    const { status, told, printed } = await run(...words);
    expect([status, told.length, printed]).toEqual([2, 1, []]);
    expect(told[0]).toContain(advice);
  });

  it('says that a month comes in long years only', async () => {
    const { told } = await run('--year', '2025', '--month', 'Waiting Month');
    expect(told[0]).toContain('`Waiting Month` is the month of long years, and this one has 12 months');
    expect((await listDates('--year', '2026', '--month', 'Waiting Month')).length).toBeGreaterThan(28);
  });
});

describe('a calendar that gives no night here and then', () => {
  it('is told in one line, with what to do', async () => {
    const work = mkdtempSync(join(tmpdir(), 'lessontide-nights-'));
    try {
      cpSync('content', work, { recursive: true });
      const calendar = join(work, 'calendars/estuary.yaml');
      const school = join(work, 'schools/saltgrass-point.yaml');
      const edit = (path: string, from: RegExp, to: string) =>
        writeFileSync(path, readFileSync(path, 'utf8').replace(from, to));
      edit(calendar, /^month-begins: .*$/m, 'month-begins: { at: first-crescent }');
      edit(school, /^latitude: .*$/m, 'latitude: 78.2');
      edit(school, /^longitude: .*$/m, 'longitude: 15.6');
      edit(school, /^time-zone: .*$/m, 'time-zone: Arctic/Longyearbyen');
      const { status, told } = await run('--from', '2026-06-20', '--content', work);
      expect([status, told.length]).toEqual([1, 1]);
      expect(told[0]).toContain('the Sun does not set on the evening of');
    } finally {
      rmSync(work, { recursive: true, force: true });
    }
  });
});
