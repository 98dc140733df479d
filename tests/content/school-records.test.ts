import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { openLibrary } from '../../src/content/open-library.ts';
import { parseCalendar } from '../../src/content/parse-calendar.ts';
import { parseSchool } from '../../src/content/parse-school.ts';
import { applySchoolRecords } from '../../src/content/school-records.ts';

const ROOT = new URL('../fixtures/content/sky-rules/', import.meta.url);
const read = (path: string) => readFileSync(new URL(path, ROOT), 'utf8');

/** The school and the calendar of the fixture, by conjunction, with other records. */
function apply(calendarRecords: string, schoolRecords: string) {
  const rules = read('calendars/demo.yaml').replace(/observations:\n.*/s, calendarRecords);
  const calendar = parseCalendar({
    path: 'calendars/demo.yaml',
    text: rules.replace('{ at: first-crescent, visibility: B }', '{ at: conjunction }'),
  });
  const text = read('schools/saltgrass.yaml').replace(/observations:\n.*/s, schoolRecords);
  const school = parseSchool({ path: 'schools/saltgrass.yaml', text });
  expect([...calendar.diagnostics, ...school.diagnostics]).toEqual([]);
  return { ...applySchoolRecords(school, calendar), calendar: calendar.value };
}

describe('applySchoolRecords', () => {
  it('gives the calendar itself where nothing was seen or announced', () => {
    const { value, calendar, diagnostics } = apply('', '');
    expect(value).toBe(calendar);
    expect(diagnostics).toEqual([]);
  });

  it('puts the school’s records after the calendar’s', () => {
    const { value } = apply(
      'observations: [{ date: 2026-07-15, night: Night 1 }]\nannounced-months: [2026-09-11]',
      'observations: [{ date: 2026-08-13, night: Night 1, by: the class, place: the jetty }]\nannounced-months: [2026-10-10]',
    );
    expect(value?.observations).toEqual([
      { date: '2026-07-15', night: 'Night 1' },
      { date: '2026-08-13', night: 'Night 1', by: 'the class', place: 'the jetty' },
    ]);
    expect(value?.announcedMonths).toEqual(['2026-09-11', '2026-10-10']);
  });

  it.each([
    ['its night of a date', '{ date: 2026-07-20, night: Night 7 }', '{ date: 2026-07-20, night: Night 8 }'],
    ['its first night of a month', '{ date: 2026-07-14, night: Night 1 }', '{ date: 2026-07-15, night: Night 1 }'],
  ])('lets the school’s word count for %s, without a fault', (_, theirs, own) => {
    const { value, diagnostics } = apply(`observations: [${theirs}]`, `observations: [${own}]`);
    expect(value?.observations).toHaveLength(1);
    expect(own).toContain(value?.observations[0]?.date);
    expect(diagnostics).toEqual([]);
  });

  it('lets a month that the school announced replace the calendar’s first night', () => {
    const { value } = apply(
      'observations: [{ date: 2026-07-14, night: Night 1 }]\nannounced-months: [2026-07-13, 2026-08-12]',
      'announced-months: [2026-07-15]',
    );
    expect([value?.observations, value?.announcedMonths]).toEqual([[], ['2026-08-12', '2026-07-15']]);
  });

  it('gives nothing where a record cannot be', () => {
    const { value, diagnostics } = apply('', 'observations: [{ date: 2026-07-25, night: Night 1 }]');
    expect(value).toBeUndefined();
    expect(diagnostics.map(({ rule, severity }) => `${severity} ${rule}`)).toEqual(['error observation']);
  });
});

describe('a school opened', () => {
  const library = openLibrary({
    calendars: ['demo', 'own-star'].map((id) => ({ path: `calendars/${id}.yaml`, text: read(`calendars/${id}.yaml`) })),
    schools: [{ path: 'schools/saltgrass.yaml', text: read('schools/saltgrass.yaml') }],
    gestures: [{ path: 'gestures/demo.yaml', text: read('gestures/demo.yaml') }],
    questions: [],
    labels: [],
  });

  it('has its records in its calendar', () => {
    const opened = library.openSchool('saltgrass');
    expect(opened?.diagnostics).toEqual([]);
    expect(opened?.value?.calendar.observations.map(({ date }) => date)).toEqual([
      '2026-07-15',
      '2026-08-14',
      '2026-08-20',
    ]);
    expect(opened?.value?.calendar.announcedMonths).toEqual(['2026-09-13', '2026-10-12']);
    expect(library.openSchool('saltgrass')?.value).toBe(opened?.value);
    expect(library.openSchool('saltgrass', 'demo')?.value?.calendar).toEqual(opened?.value?.calendar);
  });

  it('keeps them out of a calendar that stands in, whose names are others', () => {
    const opened = library.openSchool('saltgrass', 'own-star');
    expect(opened?.value?.calendar).toMatchObject({ observations: [], announcedMonths: [] });
  });
});

describe('a calendar by crescent, star and anchors', () => {
  it('is read as it is written', () => {
    const { value } = parseCalendar({ path: 'calendars/demo.yaml', text: read('calendars/demo.yaml') });
    expect(value?.monthBegins).toEqual({ at: 'first-crescent', offset: 0, visibility: 'B' });
    expect(value?.yearBegins.onOrAfter).toMatchObject({
      kind: 'rising',
      star: { name: 'Alcyone' },
      starAltitudeDegrees: 5,
      sunAltitudeDegrees: -14,
    });
    const nights = value?.groups.flatMap((group) => group.nights) ?? [];
    expect(nights.filter(({ anchor }) => anchor)).toEqual([{ name: 'Night 16', anchor: 'full-moon' }]);
    expect(nights.filter(({ flexible }) => flexible)).toEqual([{ name: 'Night 17', flexible: true }]);
  });

  it('takes a star of its own by its place', () => {
    const { value } = parseCalendar({ path: 'calendars/own-star.yaml', text: read('calendars/own-star.yaml') });
    expect(value?.yearBegins.onOrAfter).toMatchObject({
      star: { name: 'Heron’s Eye', rightAscensionHours: 5.2423, declinationDegrees: -8.2 },
    });
  });
});
