import { describe, expect, it } from 'vitest';
import { resolveWeek } from '../../src/lesson/resolve-week.ts';
import { buildWeek, makeWeek, openContent, printDiagnostic, writeLesson } from '../directives/build-week.ts';

const setting = openContent();
const SCHOOL = 'school: saltgrass-point\nfor: Years 3-4\n';

function resolve(week: string, lessons: Readonly<Record<string, string>>) {
  const result = resolveWeek(makeWeek(lessons, { week }), setting);
  return { ...result, messages: result.diagnostics.map((diagnostic) => printDiagnostic(diagnostic, '')) };
}

function listDates(week: string, days: readonly string[]) {
  const lessons = Object.fromEntries(days.map((day) => [`${day}.md`, writeLesson('Text.', { day })]));
  const { week: resolved, messages } = resolve(week, lessons);
  expect(messages).toEqual([]);
  return resolved?.lessons.map(({ slug, tonight, atClassTime }) => [slug, tonight.date, atClassTime.date]);
}

describe('dates of a week', () => {
  it('count from its Monday', () => {
    // Class at 9 in the morning still lies in the night that began at sunset the day before.
    expect(listDates(`title: W\nbegins: 2026-07-27\ndays: [friday, monday]\n${SCHOOL}`, ['monday', 'friday'])).toEqual([
      ['monday', '2026-07-27', '2026-07-26'],
      ['friday', '2026-07-31', '2026-07-30'],
    ]);
  });

  it('count from the Monday of a term, whose first day may be another', () => {
    expect(
      listDates(`title: W\nterm: Term 3\nweek: 2\ndays: [wednesday]\n${SCHOOL}`, ['wednesday'])?.map(
        ([, date]) => date,
      ),
    ).toEqual(['2026-07-29']);
  });

  it('run over the end of a year and of February', () => {
    const dates = (begins: string) =>
      listDates(`title: W\nbegins: ${begins}\ndays: [monday, sunday]\n${SCHOOL}`, ['monday', 'sunday'])?.map(
        ([, date]) => date,
      );
    expect(dates('2026-12-28')).toEqual(['2026-12-28', '2027-01-03']);
    expect(dates('2028-02-28')).toEqual(['2028-02-28', '2028-03-05']);
  });

  it('are those of the place, on either side of the date line', () => {
    const islet = SCHOOL.replace('saltgrass-point', 'far-islet');
    const week = (begins: string, day: string) => `title: W\nbegins: ${begins}\ndays: [${day}]\n${islet}`;
    expect(listDates(week('2026-07-27', 'wednesday'), ['wednesday'])).toEqual([
      ['wednesday', '2026-07-29', '2026-07-28'],
    ]);
    // Samoa left out 30 December 2011 (IANA time zone database, zone Pacific/Apia).
    expect(listDates(week('2011-12-26', 'thursday'), ['thursday'])).toEqual([['thursday', '2011-12-29', '2011-12-28']]);
    expect(listDates(week('2011-12-26', 'saturday'), ['saturday'])).toEqual([['saturday', '2011-12-31', '2011-12-29']]);
    const { messages, week: none } = resolve(week('2011-12-26', 'friday'), {
      'a.md': writeLesson('Text.', { day: 'friday' }),
    });
    expect(none).toBeUndefined();
    expect(messages).toHaveLength(1);
    expect(messages[0]).toMatch(/^week\.yaml:2:9 error date-range .*2011-12-30/);
  });

  it('begin class at the lesson’s own time where it has one', () => {
    const { week } = resolve(`title: W\nbegins: 2026-07-27\ndays: [monday]\n${SCHOOL}`, {
      'a.md': writeLesson('Text.', { day: 'monday', more: 'begins: "19:00"\n' }),
    });
    expect(week?.lessons[0]?.atClassTime.date).toBe('2026-07-27');
  });
});

describe('lessons of a week', () => {
  const WEEK = `title: W\nbegins: 2026-07-27\ndays: [monday, friday]\n${SCHOOL}`;

  it('come in order of days, those of one day in order of files, each with a name of its own', () => {
    const { week, messages } = resolve(WEEK, {
      'a.md': writeLesson('A', { day: 'friday' }),
      'b.md': writeLesson('B', { day: 'monday' }),
      'c.md': writeLesson('C', { day: 'friday' }),
    });
    expect(messages).toEqual([]);
    expect(week?.lessons.map(({ slug }) => slug)).toEqual(['monday', 'friday', 'friday-lesson-2']);
  });

  it('are missed where a day has none, and refused on other days, both at once', () => {
    const { week, messages } = resolve(WEEK, {
      'a.md': writeLesson('A', { day: 'monday' }),
      'b.md': writeLesson('B', { day: 'sunday' }),
    });
    expect(week).toBeUndefined();
    expect(messages).toEqual([
      'b.md:3:6 error wrong-value `sunday` is not a day of this week; expected one of `monday`, `friday`; mend the day, or add it to `days` in week.yaml',
      'week.yaml:3:7 error missing-file No lesson is for `friday`; expected a lesson file with `day: friday`; write it, or take the day out of `days`',
    ]);
  });

  it('are missed on each day of a week without lessons, also where the days go without saying', () => {
    expect(resolve(WEEK, {}).messages).toHaveLength(2);
    const { messages } = resolve(`title: W\nbegins: 2026-07-27\n${SCHOOL}`, {});
    expect(messages.map((message) => /for `(.*?)`/.exec(message)?.[1])).toEqual([
      'monday',
      'tuesday',
      'wednesday',
      'thursday',
      'friday',
    ]);
  });

  it('need front matter from the first line on', () => {
    const texts = ['', 'Text.\n', `\n${writeLesson('A')}`, '---\ntitle: never closed\n'];
    for (const text of texts) {
      const { messages } = resolve(WEEK, { 'a.md': text, 'b.md': writeLesson('B', { day: 'friday' }) });
      expect(messages, text).toHaveLength(1);
      expect(messages[0], text).toMatch(/^a\.md:1:1 error front-matter Found no front matter/);
    }
    expect(resolve(WEEK, { 'a.md': '---\n---\n' }).messages.join('\n')).toContain('a.md');
    const marked = `\uFEFF${writeLesson('A', { day: 'monday' })}`;
    expect(resolve(WEEK, { 'a.md': marked, 'b.md': writeLesson('B', { day: 'friday' }) }).messages).toEqual([]);
  });
});

describe('faults', () => {
  it('of all files come together: front matter, syntax and directives of every lesson', () => {
    const { week, messages } = resolve(`title: W\nbegins: 2026-07-27\ndays: [monday, tuesday, friday]\n${SCHOOL}`, {
      'a.md': writeLesson('::tonight{on=never}', { day: 'monday' }),
      'b.md': writeLesson('::tonight {on=monday}', { day: 'tuesday' }).replace('minutes: 10', 'minutes: 1'),
      'c.md': 'No front matter.\n',
      'd.md': writeLesson(':::step[A]{minutes=3}\n![](none.png)\n:::', { day: 'friday' }),
    });
    expect(week).toBeUndefined();
    expect(messages.map((message) => message.split(' ').slice(0, 3).join(' ')).sort()).toEqual([
      'a.md:10:11 error attribute-value',
      'b.md:10:10 error directive-syntax',
      'b.md:4:10 error wrong-value',
      'c.md:1:1 error front-matter',
      'd.md:10:12 error step-minutes',
      'd.md:11:1 error missing-file',
    ]);
  });

  it('of the week’s file come with those of the lessons', () => {
    const { messages } = resolve('title: W\nbegins: 2026-07-28\nschool: saltgras-point\nfor: Y\n', {
      'a.md': writeLesson('::tonight {on=monday}'),
    });
    expect(messages).toEqual([
      'week.yaml:2:9 error date-range `begins`: found `2026-07-28`, a Tuesday; expected a Monday, such as `2026-07-27`.',
      expect.stringMatching(
        /^week\.yaml:3:9 error unknown-reference .*`saltgras-point`.*did you mean `saltgrass-point`/,
      ),
      expect.stringMatching(/^a\.md:10:10 error directive-syntax/),
    ]);
  });

  it('that are only warnings let the week through', () => {
    const { week, diagnostics } = resolve(`title: W\nbegins: 2026-07-27\ndays: [wednesday]\n${SCHOOL}`, {
      'a.md': writeLesson('<b>bold</b>'),
    });
    expect(diagnostics.map(({ severity }) => severity)).toEqual(['warning']);
    expect(week?.lessons).toHaveLength(1);
  });
});

describe('a school or calendar given with the command', () => {
  const files = makeWeek({ 'a.md': writeLesson(':night{}') });

  it('stands in for the week’s own', () => {
    const { week } = resolveWeek(files, { ...setting, schoolId: 'ormevire' });
    expect([week?.school.id, week?.calendar.id, week?.labels.language]).toEqual(['ormevire', 'moulin', 'fr']);
    // The school keeps its gestures, which need not know those of another calendar.
    const mixed = resolveWeek(files, { ...setting, calendarId: 'moulin' });
    expect(mixed.week?.calendar.id).toBe('moulin');
    expect(mixed.diagnostics.map(({ rule, severity, place }) => [rule, severity, place.file])).toEqual([
      ['unknown-reference', 'warning', 'content/calendars/moulin.yaml'],
    ]);
  });
});

describe('resolving', () => {
  const lessons = {
    'a.md': writeLesson('::tonight\n\n:::handout[Slip]\n![](one.png)\n:::', { day: 'monday' }),
    'b.md': writeLesson(':::group-quiz[Q]\n::question{ask=night-of-date}\n\n::question{ask=next-in-run}\n:::', {
      day: 'friday',
    }),
  };
  const files = { ...makeWeek(lessons, { days: ['monday', 'friday'] }), pictures: ['one.png', 'two.png'] };

  it('gives the same pack twice, from the same and from a new setting', () => {
    const first = buildWeek(files, setting);
    expect(first.diagnostics).toEqual([]);
    expect(buildWeek(files, setting).plan).toEqual(first.plan);
    expect(buildWeek(files, openContent()).plan).toEqual(first.plan);
  });

  it('does not hang on the order of files, nor on what was asked of the almanac before', () => {
    const plain = buildWeek(files, openContent()).plan;
    const turned = { ...files, lessons: files.lessons.toReversed(), pictures: files.pictures.toReversed() };
    expect(buildWeek(turned, openContent()).plan).toEqual(plain);
    const asked = openContent();
    const opened = asked.library.openSchool('saltgrass-point')?.value;
    if (opened === undefined) throw new Error('The school of the fixtures is faulty.');
    const almanac = asked.almanacFor(opened);
    for (const date of ['2027-01-01', '2026-07-31', '1999-12-31', '2026-07-27'])
      almanac.moonHighest(almanac.nightOn(date));
    expect(buildWeek(files, asked).plan).toEqual(plain);
    expect(buildWeek(makeWeek({ 'x.md': writeLesson('::tonight') }), asked).diagnostics).toEqual([]);
    expect(buildWeek(files, asked).plan).toEqual(plain);
  });

  it('leaves the files as they were given', () => {
    const frozen = JSON.stringify(files);
    buildWeek(files, setting);
    expect(JSON.stringify(files)).toBe(frozen);
  });
});

describe('what a lesson uses', () => {
  it('knows which lessons send anyone out to look at the sky, their handouts too', () => {
    const { week, messages } = resolve(`title: W\nbegins: 2026-07-27\ndays: [monday, tuesday, wednesday]\n${SCHOOL}`, {
      'a.md': writeLesson('::sky', { day: 'monday' }),
      'b.md': writeLesson(':::handout[Slip]\n::sky\n:::', { day: 'tuesday' }),
      'c.md': writeLesson('::tonight', { day: 'wednesday' }),
    });
    expect(messages).toEqual([]);
    expect(week?.lessons.map(({ outdoors }) => outdoors)).toEqual([true, true, false]);
  });
});
