import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { NightRow } from '../../src/calendar/night-row.ts';
import { runCommand } from '../../src/cli/run-command.ts';
import { readIcsStrictly } from '../pack/check-ics.ts';
import { createFakeTerminal } from './fake-terminal.ts';

const SCHOOLS = join(import.meta.dirname, '../fixtures/three-schools/content');

async function run(...words: string[]) {
  const terminal = createFakeTerminal();
  const status = await runCommand(['nights', ...words], terminal);
  return { status, printed: terminal.printed, told: terminal.told };
}

const works: string[] = [];

afterAll(() => {
  for (const work of works) rmSync(work, { recursive: true, force: true });
});

/** A copy of a content folder with lines of one school and its calendar written otherwise: keys and their new values. */
function copyContent(from: string, school: string, calendar: string, keys: Readonly<Record<string, string>>): string {
  const work = mkdtempSync(join(tmpdir(), 'lessontide-nights-'));
  works.push(work);
  cpSync(from, work, { recursive: true });
  for (const path of [join(work, `schools/${school}.yaml`), join(work, `calendars/${calendar}.yaml`)]) {
    // What was seen elsewhere does not count there.
    let text = readFileSync(path, 'utf8').replace(/^(?:observations|announced-months):.*\n(?:[ #].*\n)*/gm, '');
    for (const [key, value] of Object.entries(keys)) {
      text = text.replace(new RegExp(`^( *)${key}:.*$`, 'm'), `$1${key}: ${value}`);
    }
    writeFileSync(path, text);
  }
  return work;
}

const movePlace = (
  latitude: string,
  longitude: string,
  timeZone: string,
  keys: Readonly<Record<string, string>> = {},
) => copyContent('content', 'saltgrass-point', 'estuary', { latitude, longitude, 'time-zone': timeZone, ...keys });

describe('dates whose month cannot be told', () => {
  let words: string[];

  beforeAll(() => {
    // A crescent calendar at 65 degrees north: from spring to winter the Moon stays up, or too low in the evening.
    const work = copyContent(SCHOOLS, 'northern-crescent', 'northern-crescent', {
      latitude: '65',
      longitude: '18.96',
      'time-zone': 'Europe/Stockholm',
      'on-or-after': '{ equinox: march }',
    });
    words = ['--content', work, '--school', 'northern-crescent'];
  });

  const listDates = (printed: readonly string[]) =>
    (JSON.parse(printed.join('\n')) as NightRow[]).map(({ date }) => date); // what the contract of the command says

  it('are told in a line a stretch, and the rest is printed whole', async () => {
    const { status, printed, told } = await run(...words, '--from', '2026-04-10', '--to', '2026-12-31', '--json');
    const dates = listDates(printed);
    expect([status, dates[0], dates.at(-1)]).toEqual([1, '2026-04-10', '2026-12-31']);
    const stretches = told.map((line) => {
      const [, from = '', to = ''] = /no night can be told for (\S+) to (\S+)\. The first crescent /.exec(line) ?? [];
      return { from, to };
    });
    // A line for each conjunction without a crescent, from that of May to that of November; July has one, but no end.
    expect(stretches.map(({ from }) => from.slice(0, 7))).toEqual([
      '2026-04',
      '2026-06',
      '2026-07',
      '2026-09',
      '2026-10',
      '2026-11',
    ]);
    expect(told[0]).toContain('the Moon does not set after the evening of');
    // Each date is printed or lies in one stretch.
    const countDays = (from: string, to: string) => (Date.parse(to) - Date.parse(from)) / 86_400_000 + 1;
    const untold = stretches.reduce((sum, { from, to }) => sum + countDays(from, to), 0);
    expect(dates.length + untold).toBe(countDays('2026-04-10', '2026-12-31'));
  });

  it('leave whole files of the other forms', async () => {
    const csv = await run(...words, '--from', '2026-04-16', '--to', '2026-04-19', '--csv');
    expect([csv.status, csv.told.length]).toEqual([1, 1]);
    expect(csv.printed.map((line) => line.slice(0, 10))).toEqual(['date,begin', '2026-04-16', '2026-04-17']);
    const ics = await run(...words, '--from', '2026-04-16', '--to', '2026-04-19', '--ics');
    const file = ics.printed.map((line) => `${line}\n`).join('');
    expect(readIcsStrictly(new TextEncoder().encode(file)).map(({ start }) => start)).toEqual(['20260416', '20260417']);
    expect(ics.status).toBe(1);
    const none = await run(...words, '--from', '2026-06-20', '--json');
    expect([none.status, none.printed, none.told.length]).toEqual([1, ['[]'], 1]);
    expect(none.told[0]).toContain('no night can be told for 2026-06-20. The first crescent');
  });

  it('leave the months of a year that can be told', async () => {
    const year = await run(...words, '--year', '2026', '--json');
    const dates = listDates(year.printed);
    expect([year.status, dates[0], dates.at(-1)]).toEqual([1, '2026-12-12', '2027-04-06']);
    const known = await run(...words, '--year', '2026', '--month', 'Month of Sheaves', '--json');
    expect([known.status, known.told, listDates(known.printed).at(-1)]).toEqual([0, [], '2027-04-06']);
    for (const month of ['3', 'month of fog']) {
      const { status, printed, told } = await run(...words, '--year', '2026', '--month', month, '--json');
      expect([status, printed]).toEqual([1, ['[]']]);
      expect(told[0]).toContain('no night can be told for 2026-04-18 to');
    }
    const wrong = await run(...words, '--year', '2026', '--month', 'Month of Frogs');
    expect([wrong.status, wrong.told.length]).toEqual([2, 1]);
    expect(wrong.told[0]).toContain('did you mean `Month of Fog`?');
  });
});

describe('the edges of the range', () => {
  it.each([
    // The year of the demonstration calendar begins in June or July.
    ['2200', '1', '2200-06-12'],
    ['2200', '6', '2200-11-07'],
    ['2199', '12', '2200-05-13'],
    ['1799', '8', '1800-01-24'],
    ['1799', '12', '1800-05-23'],
    ['1800', '1', '1800-06-22'],
  ])('are no edge for a month that lies within: %s, %s', async (year, month, first) => {
    const { status, printed, told } = await run('--year', year, '--month', month, '--json');
    const rows: NightRow[] = JSON.parse(printed.join('\n'));
    expect([status, told, rows[0]?.date]).toEqual([0, [], first]);
    expect(rows.map(({ nightOfMonth }) => nightOfMonth)).toEqual(rows.map((_, index) => index + 1));
    expect(rows.length).toBe(rows[0]?.month.length);
  });

  it.each([
    [['--year', '2200', '--month', '7'], '`--month 7` of the year 2200 does not lie whole within 1800-01-01 to'],
    [['--year', '1799', '--month', '7'], '`--month 7` of the year 1799 does not lie whole within 1800-01-01 to'],
    [['--year', '2201', '--month', '1'], '`--month 1` of the year 2201 does not lie whole within'],
    [['--year', '1799'], '`--year 1799` does not lie whole within'],
    [['--year', '2200', '--month', 'Frost Mnth'], 'did you mean `Frost Month`?'],
    [['--year', '1798'], 'expected one from 1800 to 2200'],
  ])('are told with what to do: %j', async (words, advice) => {
    const { status, told, printed } = await run(...words);
    expect([status, told.length, printed]).toEqual([2, 1, []]);
    expect(told[0]).toContain(advice);
  });
});

describe('what a school saw', () => {
  const words = ['--content', SCHOOLS, '--school', 'northern-crescent', '--from', '2026-07-01', '--json'];

  it('counts for its own calendar alone, and a line says so', async () => {
    const other = await run(...words, '--calendar', 'southern-sunset');
    expect([other.status, other.printed.length]).toEqual([0, 2]);
    expect(other.told).toEqual([
      'lessontide: what Northern Demonstration School observed or announced (2) counts for its own calendar `northern-crescent` and is left out here',
    ]);
    expect((await run(...words, '--calendar', 'southern-sunset', '--quiet')).told).toEqual([]);
    expect((await run(...words, '--calendar', 'northern-crescent')).told).toEqual([]);
    const none = await run(
      '--content',
      SCHOOLS,
      '--school',
      'midnight-east',
      '--from',
      '2026-07-01',
      '--calendar',
      'southern-sunset',
    );
    expect(none.told.filter((line) => line.includes('left out here'))).toEqual([]);
  });
});

describe('the table where clocks and the Sun are odd', () => {
  it('says where midnight stands in for sunset or sunrise', async () => {
    const work = movePlace('69.65', '18.96', 'Europe/Oslo');
    const { printed } = await run('--content', work, '--from', '2026-07-23', '--to', '2026-07-26');
    expect(
      printed.filter((line) => line.startsWith('2026')).map((line) => /00:00 \+1 .* no sunset$/.test(line)),
    ).toEqual([true, true, false, false]);
    expect(printed.join('\n')).toContain(' no sunset: midnight stands in for it.');
    const usual = await run('--from', '2026-07-23', '--to', '2026-07-26');
    expect(usual.printed.join('\n')).not.toContain('stands in');
  });

  it('counts days as the clocks of the place do', async () => {
    const apia = movePlace('-13.83', '-171.77', 'Pacific/Apia');
    const { printed, told } = await run('--content', apia, '--from', '2011-12-29', '--to', '2011-12-31');
    const rows = printed.filter((line) => line.startsWith('2011'));
    // The 31st follows the 29th.
    expect(rows[0]).toMatch(/^2011-12-29 .* 12:24 \+1 {2}23:59 /);
    expect([rows.length, told.length]).toEqual([2, 1]);
    const quiet = await run('--content', apia, '--from', '2011-12-29', '--to', '2011-12-31', '--quiet');
    expect(quiet.told).toEqual([]);
  });

  it('begins a night at midnight in a local mean time with odd seconds', async () => {
    const work = movePlace('59.9', '10.7', 'Europe/Oslo', { 'day-begins': 'midnight' });
    const { printed } = await run('--content', work, '--from', '1800-01-01');
    expect(printed.find((line) => line.startsWith('1800-01-01'))).toMatch(/ 00:00 {2}/);
  });
});
