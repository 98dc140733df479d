import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { parse as parseYaml } from 'yaml';
import type { NightRow } from '../../src/calendar/night-row.ts';
import { runCommand } from '../../src/cli/run-command.ts';
import { loadLibrary } from '../../src/content/library.ts';
import { calendarSchema } from '../../src/content/schemas/calendar.ts';
import { schoolSchema } from '../../src/content/schemas/school.ts';
import { readContent } from '../../src/node/read-content.ts';
import { readIcsStrictly } from '../pack/check-ics.ts';
import { listSchemaKeys } from '../tools/list-schema-keys.ts';
import { createFakeTerminal } from './fake-terminal.ts';

/*
 * Three invented schools, each with an invented calendar of its own kind, through the command as a teacher calls it.
 * What must be printed stands in expected/<school>/; UPDATE_FIXTURES=1 writes it anew: read what it writes.
 */
const ROOT = join(import.meta.dirname, '../fixtures/three-schools');
const CONTENT = join(ROOT, 'content');
const UPDATE = process.env['UPDATE_FIXTURES'] === '1';

interface Example {
  readonly school: string;
  /** A year of the calendar and one of its months. */
  readonly year: string;
  readonly month: string;
  /** Names of expected files, each with its date. */
  readonly explained: Readonly<Record<string, string>>;
  /** A first night seen a night later than computed. */
  readonly seen: { readonly date: string; readonly night: string; readonly computed: string };
}

const EXAMPLES: readonly Example[] = [
  {
    school: 'southern-sunset',
    year: '2026',
    month: 'Month of Hard Frost',
    // The conjunction of 2026-05-16 is 9 minutes from sunset; in June 2027 the rising star is in doubt as well.
    explained: { easy: '2026-07-20', close: '2026-05-16', 'close-year': '2027-06-04' },
    seen: { date: '2026-07-14', night: 'No Moon Tonight', computed: '2026-07-13' },
  },
  {
    school: 'northern-crescent',
    year: '2025',
    month: 'Month of Haymaking',
    // The crescent of 2030-04-03 misses class B by 0.003.
    explained: { easy: '2026-09-20', close: '2030-04-05', observed: '2026-05-20', announced: '2026-07-20' },
    seen: { date: '2026-12-12', night: 'New Curve', computed: '2026-12-11' },
  },
  {
    school: 'midnight-east',
    year: '2026',
    month: '1',
    // The conjunction of 2027-02-06 comes 3 minutes before the midnight that ends the day.
    explained: { easy: '2026-12-20', close: '2027-02-07' },
    seen: { date: '2027-02-07', night: 'First One', computed: '2027-02-06' },
  },
];

/** After all that the schools see. */
const NOW_MS = Date.UTC(2030, 0, 1);

/** The words of a call at a school, and what it prints; anything told or a failure fails the test. */
async function run(words: readonly string[], content = CONTENT): Promise<string> {
  const terminal = createFakeTerminal();
  const status = await runCommand([...words, '--content', content], terminal, NOW_MS);
  expect([status, terminal.told]).toEqual([0, []]);
  return terminal.printed.map((line) => `${line}\n`).join('');
}

async function listRows(words: readonly string[], content = CONTENT): Promise<NightRow[]> {
  return JSON.parse(await run(['nights', ...words, '--json'], content));
}

function expectFile(path: string, found: string): void {
  if (UPDATE) {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, found);
  }
  if (!existsSync(path)) throw new Error(`${path} is missing; run with UPDATE_FIXTURES=1 and read what it writes`);
  expect(found).toBe(readFileSync(path, 'utf8'));
}

/** Reads a table of RFC 4180; written from the RFC, shares no code with the writer. */
function readCsv(text: string): Record<string, string>[] {
  if (!text.endsWith('\r\n')) throw new Error('The last record does not end in CR LF.');
  const records = text
    .slice(0, -2)
    .split('\r\n')
    .map((line) => {
      if (!/^(?:[^",\r\n]*|"(?:[^"]|"")*")(?:,(?:[^",\r\n]*|"(?:[^"]|"")*"))*$/.test(line)) throw new Error(line);
      const fields = [...`,${line}`.matchAll(/,(?:"((?:[^"]|"")*)"|([^,]*))/g)];
      return fields.map(([, quoted, bare = '']) => quoted?.replaceAll('""', '"') ?? bare);
    });
  const [header = [], ...rows] = records;
  return rows.map((row) => {
    expect(row).toHaveLength(header.length);
    return Object.fromEntries(header.map((name, index) => [name, row[index] ?? '']));
  });
}

/** What a row says of its night, without the instants. */
const nameRow = ({ date, night, nightOfMonth, month }: NightRow) =>
  [date, night.name, night.repeat, nightOfMonth, month.name, month.number, month.year].join(' | ');

describe('the content of the three schools', () => {
  it('is without fault', () => {
    expect(loadLibrary(readContent(CONTENT)).diagnostics).toEqual([]);
  });

  it.each([
    ['calendars', calendarSchema],
    ['schools', schoolSchema],
  ] as const)('uses every key that %s know', (folder, schema) => {
    const files = readdirSync(join(CONTENT, folder)).map((name) =>
      listKeys(parseYaml(readFileSync(join(CONTENT, folder, name), 'utf8'))),
    );
    const used = new Set(files.flat());
    // A date is the one marker of a year that the demonstration school in French uses, and an equinox has a test of its own.
    const elsewhere = ['year-begins.on-or-after.date', 'year-begins.on-or-after.equinox'];
    // Recordings say nothing of dates; tests/fixtures/content/recordings holds them.
    const keys = listSchemaKeys(schema)
      .map((path) => path.join('.'))
      .filter((key) => !key.includes('recording'));
    expect(keys.length).toBeGreaterThan(15);
    expect(keys.filter((key) => !used.has(key) && !elsewhere.includes(key))).toEqual([]);
  });
});

/** The paths of the keys in a value, places in lists left out. */
function listKeys(value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap(listKeys);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => [key, ...listKeys(inner).map((path) => `${key}.${path}`)]);
}

describe.each(EXAMPLES)('$school', ({ school, year, month, explained, seen }) => {
  const expected = join(ROOT, 'expected', school);
  const ofYear = ['--year', year, '--school', school];
  const ofMonth = [...ofYear, '--month', month];

  it('prints a month as a table', async () => {
    expectFile(join(expected, 'month.txt'), await run(['nights', ...ofMonth]));
  });

  it('prints a month as JSON', async () => {
    const json = await run(['nights', ...ofMonth, '--json']);
    expectFile(join(expected, 'month.json'), json);
    const rows: NightRow[] = JSON.parse(json);
    expect(rows.map(({ nightOfMonth }) => nightOfMonth)).toEqual(rows.map((_, index) => index + 1));
    expect(rows.length).toBe(rows[0]?.month.length);
  });

  it.each(Object.entries(explained))('explains a date: %s', async (name, date) => {
    const text = await run(['nights', '--explain', date, '--school', school]);
    expectFile(join(expected, `explain-${name}.txt`), text);
    expect(text.includes('Close call: ')).toBe(name.startsWith('close'));
    expect(text.includes('This is not a close call')).toBe(!name.startsWith('close'));
  });

  it('moves a month by what was seen, and nothing before it', async () => {
    const work = mkdtempSync(join(tmpdir(), 'lessontide-three-'));
    try {
      cpSync(CONTENT, work, { recursive: true });
      const range = ['--from', shiftDate(seen.date, -100), '--to', shiftDate(seen.date, 100), '--school', school];
      const before = await listRows(range, work);
      const told = await run(['observe', seen.date, seen.night, '--by', 'seen', '--school', school], work);
      expect(told).toContain(`night: ${seen.night}, by: "seen" }`);
      const after = await listRows(range, work);
      expect(before.find(({ date }) => date === seen.computed)).toMatchObject({ nightOfMonth: 1, basis: 'computed' });
      const isEarlier = ({ date }: NightRow) => date < seen.computed;
      expect(after.filter(isEarlier).map(nameRow)).toEqual(before.filter(isEarlier).map(nameRow));
      const first = after.find(({ date }) => date === seen.date);
      expect(first).toMatchObject({ night: { name: seen.night }, nightOfMonth: 1, basis: 'observed' });
      const moved = after.filter((row) => row.month.firstDate === seen.date);
      expect(moved.every(({ basis }) => basis === 'observed')).toBe(true);
      expect(moved.length).toBe(first?.month.length);
      // The night that the month lost is the last of the month before.
      const lost = after.find(({ date }) => date === seen.computed);
      expect(lost?.nightOfMonth).toBe(lost?.month.length);
      expect(after.map(nameRow)).not.toEqual(before.map(nameRow));
      const next = shiftDate(seen.date, 35);
      const isLater = ({ date, month: { firstDate } }: NightRow) => date > next && firstDate > next;
      expect(after.filter(isLater)).toEqual(before.filter(isLater));
      expect(after.filter(isLater).length).toBeGreaterThan(28);
    } finally {
      rmSync(work, { recursive: true, force: true });
    }
  });

  it('gives a year as iCalendar that others can read', async () => {
    const file = await run(['nights', ...ofYear, '--ics']);
    const rows = await listRows(ofYear);
    expect(rows.length).toBeGreaterThan(350);
    const strict = readIcsStrictly(new TextEncoder().encode(file));
    const events = new ICAL.Component(ICAL.parse(file))
      .getAllSubcomponents('vevent')
      .map((component) => new ICAL.Event(component));
    expect(events.map(({ startDate, endDate, summary }) => `${startDate} ${endDate} ${summary}`)).toEqual(
      strict.map(({ start, end, summary }) => `${addHyphens(start)} ${addHyphens(end)} ${summary}`),
    );
    expect(events.map(({ startDate }) => startDate.toString())).toEqual(rows.map(({ date }) => date));
    for (const [index, event] of events.entries()) {
      expect(event.startDate.isDate).toBe(true);
      expect(event.summary).toContain(rows[index]?.night.name);
      expect([event.uid, event.description]).toEqual([strict[index]?.uid, strict[index]?.description]);
    }
  });

  it('gives a year as CSV that says what JSON says', async () => {
    const table = readCsv(await run(['nights', ...ofYear, '--csv']));
    const rows = await listRows(ofYear);
    expect(table).toHaveLength(rows.length);
    for (const [index, cells] of table.entries()) {
      const row = rows[index];
      expect(cells).toMatchObject({
        date: row?.date,
        begins: row?.begins,
        night: row?.night.name,
        group: row?.night.group,
        repeat: String(row?.night.repeat),
        'night-of-month': String(row?.nightOfMonth),
        month: row?.month.name,
        'month-first-date': row?.month.firstDate,
        'illuminated-fraction': String(row?.illuminatedFraction),
        sunset: row?.sunset ?? '',
        moonset: row?.moonset ?? '',
        basis: row?.basis,
      });
    }
  });
});

const addHyphens = (date: string) => `${date.slice(0, 4)}-${date.slice(4, 6)}-${date.slice(6)}`;

/** The civil date some days later; whole days of UTC, so that no zone comes in. */
function shiftDate(date: string, days: number): string {
  return new Date(Date.parse(`${date}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
}
