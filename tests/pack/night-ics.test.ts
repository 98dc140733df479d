import { describe, expect, it } from 'vitest';
import { renderNightsIcs } from '../../src/pack/night-ics.ts';
import { readIcsStrictly } from './check-ics.ts';
import { buildFakeWeek, type FakeWeekOptions } from './fake-week.ts';

function renderFile(from: string, to: string, options?: FakeWeekOptions): string {
  const { almanac, calendar, school, labels } = buildFakeWeek(options);
  const chunks = [...renderNightsIcs({ almanac, calendar, school, labels }, almanac.nights(from, to))];
  return chunks.map((chunk) => `${chunk}\r\n`).join('');
}

const read = (file: string) => readIcsStrictly(new TextEncoder().encode(file));

describe('renderNightsIcs', () => {
  it('makes a whole-day event of each night, and says when the night begins', () => {
    const events = read(renderFile('2026-07-27', '2026-07-29'));
    expect(events.map(({ start, end, summary }) => [start, end, summary])).toEqual([
      ['20260727', '20260728', 'Eau claire 4'],
      ['20260728', '20260729', 'Eau claire 5'],
      ['20260729', '20260730', 'Eau claire 6'],
    ]);
    expect(events[0]?.description).toBe(
      'Cette nuit, Eau claire 4, en Mois du gel. It begins at sunset, 5:25 pm, and ends at 5:25 pm on Tuesday 28 July. (Mois du gel, night 14 of 29)',
    );
  });

  it('mentions an eclipse of the Moon in its night, with the cautions, and leaves one of the Sun to the pages', () => {
    const describe = (date: string) => read(renderFile(date, date))[0]?.description ?? '';
    expect(describe('2026-03-03')).toMatch(
      /\) Eclipse of the Moon, in the night from Tuesday 3 March to Wednesday 4 March: .* An eclipse of the Moon does not harm the eyes\. Outside at night, .*$/,
    );
    for (const date of ['2026-03-02', '2026-03-04', '2028-07-22']) expect(describe(date)).not.toContain('clipse');
  });

  it('covers a whole year, over its end', () => {
    const events = read(renderFile('2026-07-01', '2027-07-01'));
    expect(events).toHaveLength(366);
    for (const [index, { start }] of events.entries()) expect(start).toBe(events[index - 1]?.end ?? '20260701');
  });

  it('is a calendar without events where there are no nights', () => {
    expect(read(renderFile('2026-07-02', '2026-07-01'))).toEqual([]);
  });

  it('gives the same bytes again, with UIDs that depend on date, calendar and school only', () => {
    expect(renderFile('2026-07-27', '2026-08-27')).toBe(renderFile('2026-07-27', '2026-08-27'));
    const [event] = read(renderFile('2026-07-27', '2026-07-27'));
    expect(event?.uid).toBe('2026-07-27.fake.fake-school@lessontide');
    const [renamed] = read(renderFile('2026-07-27', '2026-07-27', { school: { name: 'New name' } }));
    expect(renamed?.uid).toBe(event?.uid);
  });

  it('is stamped with the newest date that was observed or announced', () => {
    const stampOf = (calendar: FakeWeekOptions['calendar'] = {}) =>
      read(renderFile('2026-07-27', '2026-07-27', { calendar }))[0]?.stamp;
    expect(stampOf()).toBe('19700101T000000Z');
    const observations = [
      { date: '2026-07-15', night: 'Eau noire 1' },
      { date: '2026-06-15', night: 'Eau noire 1' },
    ];
    expect(stampOf({ observations })).toBe('20260715T000000Z');
    expect(stampOf({ observations, announcedMonths: ['2026-08-12'] })).toBe('20260812T000000Z');
  });

  it('escapes and folds what people write', () => {
    const name = `${'Nuit très longue; avec, des \\ signes '.repeat(5)}夜夜夜`;
    const groups = [{ name: 'Eau, noire', nights: Array.from({ length: 30 }, () => ({ name })) }];
    const [event] = read(
      renderFile('2026-07-27', '2026-07-27', { calendar: { groups, note: 'Made; up, for\\tests' } }),
    );
    expect(event?.summary).toBe(name);
    expect(event?.description).toContain(name);
  });
});

describe('the strict reading', () => {
  const good = renderFile('2026-07-27', '2026-07-28');

  it.each([
    ['LF alone', /\r\n/, '\n'],
    ['a missing last line end', /\r\n$/, ''],
    ['a long line', 'TRANSP:TRANSPARENT', `TRANSP:${'x'.repeat(70)}`],
    ['a date that is not real', '20260728', '20260732'],
    ['an end that is not after the beginning', 'DTEND;VALUE=DATE:20260728', 'DTEND;VALUE=DATE:20260727'],
    ['two equal UIDs', 'UID:2026-07-28', 'UID:2026-07-27'],
    ['a missing UID', /UID:.*\r\n/, ''],
    ['a stamp without Z', '19700101T000000Z', '19700101T000000'],
    ['a rule of recurrence', 'TRANSP:TRANSPARENT', 'TRANSP:TRANSPARENT\r\nRRULE:FREQ=DAILY'],
    ['a comma that is not escaped', 'SUMMARY;LANGUAGE=fr:', 'SUMMARY;LANGUAGE=fr:a,b'],
    ['an event that does not end', /END:VEVENT\r\n/, ''],
  ])('refuses %s', (_, from, to) => {
    const bad = good.replace(from, to);
    expect(bad).not.toBe(good);
    expect(() => read(bad)).toThrow();
  });
});
