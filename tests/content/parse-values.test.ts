import { describe, expect, it } from 'vitest';
import { parseCalendar } from '../../src/content/parse-calendar.ts';
import { parseGestureSet } from '../../src/content/parse-gesture-set.ts';
import { parseLessonHead } from '../../src/content/parse-lesson-head.ts';
import { parseQuestionBank } from '../../src/content/parse-question-bank.ts';
import { completeSchool, parseSchool } from '../../src/content/parse-school.ts';
import { parseWeek } from '../../src/content/parse-week.ts';
import { makeAssets, makeMp3, makeSvg } from './media/sample-files.ts';

const nights = Array.from({ length: 30 }, (_, index) => `{ name: Night ${index + 1} }`).join(', ');
const months = Array.from({ length: 12 }, (_, index) => `{ name: Month ${index + 1} }`).join(', ');
const CALENDAR = `title: "  Demonstration\\n  Nights "
language: en
keeper: Saltgrass Point School
sharing: school
note: Made up.
day-begins: sunrise
month-begins: { at: full-moon, offset: -1 }
groups: [{ name: Dark Water, say: dark, meaning: No light., nights: [${nights}] }]
months: [${months}]
year-begins: { phase: new-moon, on-or-after: { equinox: march } }
thirteenth-month: { after: 6, name: Between, say: be-TWEEN }
sentence: "Tonight is {night}, in {month}."
`;
const SCHOOL = `name: Saltgrass Point School
latitude: -41.1
longitude: 174.2
elevation: 10
time-zone: pacific/auckland
calendar: demo
gestures: demo
class-begins: 09:00
groups: [Heron]
`;

describe('checked values', () => {
  it('of a calendar', () => {
    const { value, diagnostics } = parseCalendar({ path: 'content/calendars/demo.yaml', text: CALENDAR });
    expect(diagnostics).toEqual([]);
    expect(value).toMatchObject({
      id: 'demo',
      title: 'Demonstration Nights',
      sharing: 'school',
      note: 'Made up.',
      dayBegins: 'sunrise',
      monthBegins: { at: 'full-moon', offset: -1 },
      yearBegins: { phase: 'new-moon', onOrAfter: { kind: 'equinox', month: 'march' } },
      thirteenthMonth: { after: 6, name: 'Between', say: 'be-TWEEN' },
    });
    expect(value?.groups[0]).toMatchObject({ name: 'Dark Water', say: 'dark', meaning: 'No light.' });
    expect(value?.groups[0]?.nights).toHaveLength(30);
    expect(Object.keys(value ?? {})).not.toContain('day-begins');
  });

  it('of the smallest calendar: offset 0, nothing optional there', () => {
    const text = CALENDAR.replace(', offset: -1', '').replace(/^(note|thirteenth-month):.*\n/gm, '');
    const { value } = parseCalendar({ path: 'demo.yaml', text });
    expect(value?.monthBegins).toEqual({ at: 'full-moon', offset: 0 });
    expect(value && Object.keys(value)).not.toEqual(expect.arrayContaining(['note']));
    expect(value && 'thirteenthMonth' in value).toBe(false);
  });

  it.each([
    ['{ date: 06-18 }', { kind: 'date', monthDay: '06-18' }],
    ['{ solstice: december }', { kind: 'solstice', month: 'december' }],
  ])('of the marker %s', (marker, expected) => {
    const text = CALENDAR.replace('{ equinox: march }', marker);
    expect(parseCalendar({ path: 'demo.yaml', text }).value?.yearBegins.onOrAfter).toEqual(expected);
  });

  it('of a school, whose language is the calendar’s when it does not say', () => {
    const { value } = parseSchool({ path: 'content/schools/saltgrass-point.yaml', text: SCHOOL });
    const calendar = parseCalendar({ path: 'demo.yaml', text: CALENDAR.replace('language: en', 'language: cy') }).value;
    if (!value || !calendar) throw new Error('The school and its calendar should be right.');
    expect(completeSchool(value, calendar)).toEqual({
      id: 'saltgrass-point',
      name: 'Saltgrass Point School',
      language: 'cy',
      place: { latitudeDegrees: -41.1, longitudeDegrees: 174.2, elevationMetres: 10, timeZone: 'Pacific/Auckland' },
      calendar: 'demo',
      gestures: 'demo',
      classBegins: '09:00',
      classEnds: '15:00',
      bedtime: '20:30',
      terms: [],
      groups: ['Heron'],
      home: false,
    });
    expect(completeSchool({ ...value, language: 'fr' }, calendar).language).toBe('fr');
  });

  it('of a school’s hours: its own, or until three, and to the end of the day for one that begins later', () => {
    const read = (hours: string) => {
      const { value, diagnostics } = parseSchool({
        path: 'content/schools/demo.yaml',
        text: SCHOOL.replace('class-begins: 09:00\n', hours),
      });
      return value ? [value.classBegins, value.classEnds, value.bedtime] : diagnostics.map(({ message }) => message);
    };
    expect(read('class-begins: "08:30"\nclass-ends: "16:15"\nbedtime: "21:00"\n')).toEqual(['08:30', '16:15', '21:00']);
    expect(read('class-begins: "18:00"\n')).toEqual(['18:00', '23:59', '20:30']);
    expect(read('class-begins: "09:00"\nclass-ends: "09:00"\n')).toEqual(['09:00', '09:00', '20:30']);
    expect(read('class-begins: "09:00"\nclass-ends: "08:00"\n')).toEqual([
      '`class-ends`: found `08:00`, which is before `09:00`; expected the end of the school day.',
    ]);
    expect(read('class-begins: "09:00"\nbedtime: "08:30"\n')).toEqual([
      '`bedtime`: found `08:30`, expected a time of day from `16:00` to `23:59`, such as `20:30`.',
    ]);
  });

  it('of gestures: the move is to hold when none is named', () => {
    const pose = '{ shape: open, at: side, palm: front, fingers: out }';
    const text = `title: G\ngestures:\n  constructor: { left: ${pose}, cue: Open., seated: Open. }\n`;
    const { value } = parseGestureSet({ path: 'g.yaml', text });
    expect(value?.gestures['constructor']).toEqual({
      left: { shape: 'open', at: 'side', palm: 'front', fingers: 'out' },
      move: 'hold',
      cue: 'Open.',
      seated: 'Open.',
    });
    expect(value?.gestures['toString']).toBeUndefined();
  });

  it('of gestures: lines and keys give the same poses, and the second pose is whole', () => {
    const text = `title: G
gestures:
  lift:
    both: open at waist, palm up, fingers in
    then: { right: at face }
    move: rise
    cue: Lift.
    seated: Lift.
`;
    const { value, diagnostics } = parseGestureSet({ path: 'g.yaml', text });
    expect(diagnostics).toEqual([]);
    const pose = { shape: 'open', at: 'waist', palm: 'up', fingers: 'in' };
    expect(value?.gestures['lift']?.both).toEqual(pose);
    expect(value?.gestures['lift']?.then).toEqual({ left: pose, right: { ...pose, at: 'face' } });
  });

  it('of gestures: pictures and recordings are read', () => {
    const text = `title: G
gestures:
  swan: { picture: { file: swan.svg, credit: Drawn by us }, cue: Swim., seated: Swim. }
  heron: { picture: swan.svg, cue: Stand., seated: Stand. }
recordings:
  slow: { file: slow.mp3, link: https://example.org/a, tempo: 48.5, first-beat: 0.75, credit: Us, permission: Ours }
  constructor: { link: https://example.org/b, tempo: 60, first-beat: 0, credit: Us, permission: Ours }
`;
    const assets = makeAssets({ images: { 'swan.svg': makeSvg() }, sounds: { 'slow.mp3': makeMp3() } });
    const { value, diagnostics } = parseGestureSet({ path: 'g.yaml', text }, assets);
    expect(diagnostics).toEqual([]);
    const picture = { file: 'swan.svg', widthPx: 40, heightPx: 30, bytes: makeSvg() };
    expect(value?.gestures['swan']).toMatchObject({ move: 'hold', picture: { ...picture, credit: 'Drawn by us' } });
    expect(value?.gestures['heron']?.picture).toMatchObject(picture);
    expect(value?.gestures['heron']?.picture).not.toHaveProperty('credit');
    expect(value?.recordings['slow']).toEqual({
      sound: {
        file: 'slow.mp3',
        packName: expect.stringMatching(/^recording-[0-9a-f]{16}\.mp3$/),
        mediaType: 'audio/mpeg',
        bytes: makeMp3(),
      },
      link: 'https://example.org/a',
      credit: 'Us',
      permission: 'Ours',
      tempoBeatsPerMinute: 48.5,
      firstBeatSeconds: 0.75,
    });
    expect(value?.recordings['constructor']).not.toHaveProperty('sound');
    expect(value?.recordings['toString']).toBeUndefined();
  });

  it('of a calendar: spoken names by number, apart from the names', () => {
    const recording = '{ link: https://example.org/a, credit: A grandmother, permission: For this school }';
    const text = CALENDAR.replace('{ name: Night 12 }', `{ name: Night 12, recording: ${recording} }`);
    const { value, diagnostics } = parseCalendar({ path: 'demo.yaml', text });
    expect(diagnostics).toEqual([]);
    expect([...(value?.spokenNames ?? [])]).toEqual([
      [12, { link: 'https://example.org/a', credit: 'A grandmother', permission: 'For this school' }],
    ]);
    expect(value?.groups[0]?.nights[11]).toEqual({ name: 'Night 12' });
  });

  it('of questions: an option is wrong unless it says that it is right', () => {
    const text =
      'title: Q\nlanguage: en\nquestions:\n  a: { ask: Which?, options: [{ text: x, right: true }, { text: y }] }\n';
    const { value } = parseQuestionBank({ path: 'q.yaml', text });
    const options = [
      { text: 'x', right: true },
      { text: 'y', right: false },
    ];
    expect(value?.questions['a']).toStrictEqual({ ask: 'Which?', kind: 'choice', options });
  });

  it('of questions: every form, without the keys that are left out', () => {
    const forms = {
      short: '{ ask: Q, answers: [a, b], forgive: case, marks: 2, working: W, hint: H, check: night-on monday }',
      order: '{ ask: Q, order: [a, b] }',
      match: '{ ask: Q, headings: { left: L, right: R }, pairs: [{ left: a, right: b }, { left: c, right: d }] }',
      open: '{ ask: Q, rubric: [{ marks: 2, for: a }, { marks: 0, for: b }], lines: 4 }',
      draw: '{ ask: Q, draw: "  Half   Shell " }',
      constructor: '{ ask: Q, options: [{ text: a, right: true }, { text: b, means: M }] }',
    };
    const lines = Object.entries(forms).map(([key, form]) => `  ${key}: ${form}\n`);
    const text = `title: Q\nlanguage: en\nquestions:\n${lines.join('')}`;
    const { value, diagnostics } = parseQuestionBank({ path: 'q.yaml', text });
    expect(diagnostics).toEqual([]);
    expect({ ...value?.questions }).toEqual({
      short: {
        ...{ ask: 'Q', kind: 'short', answers: ['a', 'b'], forgive: 'case' },
        ...{ marks: 2, working: 'W', hint: 'H', check: 'night-on monday' },
      },
      order: { ask: 'Q', kind: 'order', order: ['a', 'b'] },
      match: {
        ...{ ask: 'Q', kind: 'match', headings: { left: 'L', right: 'R' } },
        pairs: [
          { left: 'a', right: 'b' },
          { left: 'c', right: 'd' },
        ],
      },
      open: {
        ...{ ask: 'Q', kind: 'open', lines: 4 },
        rubric: [
          { marks: 2, words: 'a' },
          { marks: 0, words: 'b' },
        ],
      },
      draw: { ask: 'Q', kind: 'draw', draw: 'Half Shell' },
      constructor: {
        ...{ ask: 'Q', kind: 'choice' },
        options: [
          { text: 'a', right: true },
          { text: 'b', right: false, means: 'M' },
        ],
      },
    });
  });

  it('of front matter', () => {
    const text = 'title: T\nday: friday\nminutes: 45\nintentions: [a]\nsuccess: [b]\nmaterials: []\n';
    const start = { file: 'a.md', line: 2, column: 1 };
    const expected = { title: 'T', day: 'friday', minutes: 45, intentions: ['a'], success: ['b'], materials: [] };
    expect(parseLessonHead(text, start).value).toStrictEqual(expected);
    expect(parseLessonHead(`${text}begins: 10:30\n`, start).value).toStrictEqual({ ...expected, begins: '10:30' });
  });
});

describe('weeks', () => {
  const term = { name: 'Term 3', from: '2026-07-22', to: '2026-09-25' };
  const schools = { ids: ['saltgrass'], find: () => ({ terms: [term] }) };
  const parse = (begins: string, days = '') =>
    parseWeek(
      { path: 'lessons/round-moon/week.yaml', text: `title: R\n${begins}\n${days}school: saltgrass\nfor: Years 3-4\n` },
      schools,
    );

  it('take the name of their folder and Monday to Friday', () => {
    expect(parse('begins: 2026-07-27').value).toEqual({
      id: 'round-moon',
      title: 'R',
      begins: '2026-07-27',
      days: ['monday', 'tuesday', 'wednesday', 'thursday', 'friday'],
      school: 'saltgrass',
      for: 'Years 3-4',
      reliefNotes: [],
    });
  });

  it('count the weeks of a term from the Monday on or before its first day', () => {
    // 2026-07-22 is a Wednesday.
    expect([1, 2, 10].map((week) => parse(`term: Term 3\nweek: ${week}`).value?.begins)).toEqual([
      '2026-07-20',
      '2026-07-27',
      '2026-09-21',
    ]);
    expect(parse('term: Term 3\nweek: 11').value).toBeUndefined();
  });

  it('put their days in order', () => {
    expect(parse('begins: 2026-07-27', 'days: [friday, monday]\n').value?.days).toEqual(['monday', 'friday']);
  });

  it('keep notes for a relief teacher, those for a case apart', () => {
    const notes = 'relief-notes:\n  - "Who is who"\n  - no-sound: Clap.\n  - rain: "Stay in."\n';
    expect(parse('begins: 2026-07-27', notes).value?.reliefNotes).toEqual([
      { text: 'Who is who' },
      { text: 'Clap.', when: 'no-sound' },
      { text: 'Stay in.', when: 'rain' },
    ]);
  });

  it('of a faulty school have no value and no finding of their own', () => {
    const text = 'title: R\nterm: Term 3\nweek: 1\nschool: saltgrass\nfor: All\n';
    const checked = parseWeek({ path: 'lessons/r/week.yaml', text }, { ids: ['saltgrass'], find: () => undefined });
    expect(checked.value).toBeUndefined();
    expect(checked.diagnostics).toEqual([]);
  });
});

describe('a calendar with an extra month', () => {
  it('has it in one place: in a list of thirteen, or as the thirteenth', () => {
    const text = CALENDAR.replace(`months: [${months}]`, `months: [${months}, { name: Month 13 }]`);
    const { value, diagnostics } = parseCalendar({ path: 'content/calendars/demo.yaml', text });
    expect(value).toBeUndefined();
    expect(diagnostics.map(({ message }) => message)).toEqual([
      '`thirteenth-month`: found it beside a list of 13 months, expected 12 months with it; take the extra month out of `months`, or remove `thirteenth-month`.',
    ]);
    const listed = parseCalendar({ path: 'demo.yaml', text: text.replace(/^thirteenth-month:.*\n/m, '') });
    expect(listed.diagnostics).toEqual([]);
  });
});
