import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Almanac, MoonView, NightRecord, NightSky, RunNight } from '../../src/calendar/almanac-types.ts';
import { dayNumberOf, MS_PER_DAY, parseCivilDate, renderCivilDate } from '../../src/calendar/day-number.ts';
import type { CivilDate, PhaseName } from '../../src/calendar/rules.ts';
import { createLabels } from '../../src/content/labels.ts';
import type { Calendar, GestureSet, School, WeekDay, WeekPlan } from '../../src/content/types.ts';
import type { ResolvedLesson, ResolvedWeek } from '../../src/lesson/model.ts';
import type { ExpectedAnswer, KeyAnswer, KeyOption, KeyPaper, LearnerPaper, QuizSheet } from '../../src/quiz/model.ts';
import { explainRecord } from './sample-explanation.ts';

/** What a test may set of a fake week; the rest has defaults. */
export interface FakeWeekOptions {
  readonly plan?: Partial<WeekPlan>;
  readonly school?: Partial<School>;
  readonly calendar?: Partial<Calendar>;
  readonly gestures?: Partial<GestureSet>;
  readonly lessons?: readonly FakeLessonOptions[];
  readonly media?: Partial<ResolvedWeek['media']>;
}

/** What a test may set of one lesson. */
export interface FakeLessonOptions extends Partial<Omit<ResolvedLesson, 'head' | 'tonight' | 'atClassTime'>> {
  readonly head?: Partial<ResolvedLesson['head']>;
}

/** A text that only the key may hold. */
export const SECRET = 'the answer nobody else may see';

/** Night 1 of the fake month; every fake month has 29 nights. */
const FIRST_NIGHT = dayNumberOf(2026, 7, 14);
const MONTH_LENGTH = 29;
const DAYS: readonly WeekDay[] = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];

/** 17:25:41 in Auckland in July, as milliseconds after midnight UTC of the same date. */
const SUNSET_MS = ((5 * 60 + 25) * 60 + 41) * 1000;

const DEFAULT_CALENDAR: Calendar = {
  id: 'fake',
  title: 'Les Nuits du ruisseau',
  language: 'fr',
  keeper: 'Keepers of the Creek',
  sharing: 'open',
  note: 'Made up for tests.',
  sentence: 'Cette nuit, {night}, en {month}.',
  dayBegins: 'sunset',
  monthBegins: { at: 'conjunction', offset: 0 },
  groups: [
    { name: 'Eau noire', nights: listNames('Eau noire', 10) },
    { name: 'Eau claire', nights: listNames('Eau claire', 10) },
    { name: 'Eau basse', nights: listNames('Eau basse', 10) },
  ],
  months: [{ name: 'Mois du gel' }, { name: 'Mois du vent' }],
  yearBegins: { phase: 'new-moon', onOrAfter: { kind: 'solstice', month: 'june' } },
  observations: [],
  announcedMonths: [],
  spokenNames: new Map(),
};

const DEFAULT_SCHOOL: School = {
  id: 'fake-school',
  name: 'Creek School',
  language: 'en',
  place: { latitudeDegrees: -41, longitudeDegrees: 174, elevationMetres: 0, timeZone: 'Pacific/Auckland' },
  calendar: 'fake',
  gestures: 'fake',
  classBegins: '09:00',
  classEnds: '15:00',
  bedtime: '20:30',
  terms: [],
  groups: ['Heron', 'Kelp'],
  home: true,
};

const DEFAULT_GESTURES: GestureSet = {
  id: 'fake',
  title: 'Fake gestures',
  gestures: { wave: { move: 'hold', cue: 'Lift one hand.', seated: 'The same, seated.' } },
  recordings: {},
};

const NOTHING = { tracks: [], sounds: [], pictures: [] };
const NO_MEDIA: ResolvedWeek['media'] = { teacher: NOTHING, learners: NOTHING };

/** A week of lessons with a fake sky. Refuses a week that does not begin on a Monday, and days that are not in order. */
export function buildFakeWeek(options: FakeWeekOptions = {}): ResolvedWeek {
  const calendar = { ...DEFAULT_CALENDAR, ...options.calendar };
  const school = { ...DEFAULT_SCHOOL, ...options.school };
  const almanac = buildFakeAlmanac(calendar, school);
  const written = options.lessons ?? [{ head: { day: 'monday' } }, { head: { day: 'wednesday' } }];
  const plan: WeekPlan = {
    id: 'fake-week',
    title: 'A week by the creek',
    begins: '2026-07-27',
    days: [...new Set(written.map((lesson) => lesson.head?.day ?? 'monday'))],
    school: school.id,
    for: 'Years 3-4',
    reliefNotes: [{ text: 'The drum is in the cupboard.' }, { text: 'Clap.', when: 'no-sound' }],
    ...options.plan,
  };
  if ((parseCivilDate(plan.begins) + 3) % 7 !== 0) throw new Error(`${plan.begins} is not a Monday.`);
  const places = written.map((lesson) => DAYS.indexOf(lesson.head?.day ?? 'monday'));
  if (places.some((place, index) => place < (places[index - 1] ?? 0))) throw new Error('Days are not in order.');
  const labels = createLabels(school.language);
  const lessons = written.map((lesson, index) => buildLesson(lesson, index, plan, almanac));
  return {
    plan,
    school,
    calendar,
    gestures: { ...DEFAULT_GESTURES, ...options.gestures },
    almanac,
    labels,
    lessons,
    media: { ...NO_MEDIA, ...options.media },
  };
}

/** A quiz with the same questions for every group; the key holds {@link SECRET}. */
export function buildFakeQuiz(number: number, groups: readonly string[] = ['Heron', 'Kelp']): QuizSheet {
  const title = `Quiz ${number}`;
  return {
    title,
    number,
    minutes: 12,
    papers: groups.map(
      (group): LearnerPaper => ({
        title,
        group,
        minutes: 12,
        totalMarks: 4,
        introduction: [{ type: 'text', value: 'Work together.' }],
        questions: [
          {
            number: 1,
            prompt: [text('Where does the light come from?')],
            marks: 1,
            space: { kind: 'options', several: false, options: [option('A', 'the Sun'), option('B', 'the sea')] },
          },
          { number: 2, prompt: [text('How many nights?')], marks: 2, space: { kind: 'line', unit: 'nights' } },
          { number: 3, prompt: [text('Which night?')], marks: 1, space: { kind: 'line' } },
        ],
      }),
    ),
    key: groups.map(
      (group): KeyPaper => ({
        group,
        totalMarks: 4,
        answers: [
          key(1, 1, { kind: 'options', options: keyOptions }, 'The Sun always lights one half.'),
          key(2, 2, line(['4'], 'nights'), 'Count on from tonight.'),
          key(3, 1, line([SECRET, 'another spelling']), ''),
        ],
      }),
    ),
  };
}

function buildLesson(options: FakeLessonOptions, index: number, plan: WeekPlan, almanac: Almanac): ResolvedLesson {
  const { head, ...rest } = options;
  const day = head?.day ?? 'monday';
  const date = renderCivilDate(parseCivilDate(plan.begins) + DAYS.indexOf(day));
  const slug = options.slug ?? day;
  const stem = options.stem ?? `${DAYS.indexOf(day) + 1}-${slug}`;
  return {
    file: `lessons/fake-week/${slug}.md`,
    head: {
      title: `Lesson ${index + 1}`,
      day,
      minutes: 45,
      intentions: ['We are learning to count nights.'],
      success: ['I can say the night.'],
      materials: ['a drum'],
      ...head,
    },
    slug,
    stem,
    tonight: almanac.nightOn(date),
    atClassTime: almanac.nightOn(renderCivilDate(parseCivilDate(date) - 1)),
    steps: [{ number: 1, title: 'Welcome', minutes: 45, beginsAt: '09:00' }],
    body: [h('section', { id: 'step-1' }, [h('h2', 'Welcome'), h('p', 'Stand in a circle.')])],
    tells: [],
    handouts: [{ title: 'Sky slip', page: `${stem}-1-sky-slip.html`, body: [h('p', 'Draw the Moon.')], hasRun: false }],
    hasRun: false,
    outdoors: false,
    quizzes: [buildFakeQuiz(1)],
    pictures: [],
    ...rest,
  };
}

function buildFakeAlmanac(calendar: Calendar, school: School): Almanac {
  const run = listRun(calendar);
  const nightOn = (date: CivilDate): NightRecord => buildNight(date, run, calendar);
  const range = (first: number, last: number) =>
    Array.from({ length: last - first + 1 }, (_, index) => nightOn(renderCivilDate(first + index)));
  return {
    rules: calendar,
    place: school.place,
    run,
    nightOn,
    nightAt: (instantMs) => nightOn(renderCivilDate(Math.floor((instantMs - SUNSET_MS) / MS_PER_DAY))),
    *nights(from, to) {
      yield* range(parseCivilDate(from), parseCivilDate(to));
    },
    nightsOfMonth: (date) => {
      const first = parseCivilDate(nightOn(date).month.firstDate);
      return range(first, first + MONTH_LENGTH - 1);
    },
    explain: (date) => explainRecord({ rules: calendar, nightOn, skyOf: buildSky }, nightOn(date)),
    skyOf: buildSky,
    moonBestSeen: (record) => viewMoon(record, true),
    moonHighest: (record) => viewMoon(record, true),
  };
}

function buildSky(record: NightRecord): NightSky {
  return {
    moonAgeDays: record.nightOfMonth - 0.5,
    illuminatedFraction: 0.5,
    phase: findPhase(record),
    sunsetMs: record.beginsMs,
    sunriseMs: record.beginsMs + MS_PER_DAY / 2,
    moonriseMs: record.beginsMs + 3_600_000,
    moonsetMs: null,
  };
}

function buildNight(date: CivilDate, run: readonly RunNight[], calendar: Calendar): NightRecord {
  const day = parseCivilDate(date) - FIRST_NIGHT;
  const month = Math.floor(day / MONTH_LENGTH);
  const index = day - month * MONTH_LENGTH;
  const name = calendar.months[((month % 2) + 2) % 2];
  const night = run[index];
  if (night === undefined || name === undefined) throw new Error('A fake calendar needs 29 nights and 2 months.');
  const beginsMs = parseCivilDate(date) * MS_PER_DAY + SUNSET_MS;
  return {
    date,
    beginsMs,
    endsMs: beginsMs + MS_PER_DAY,
    beginsWith: 'sunset',
    night,
    repeat: false,
    nightOfMonth: index + 1,
    month: {
      ...name,
      number: 1,
      year: 2026,
      firstDate: renderCivilDate(FIRST_NIGHT + month * MONTH_LENGTH),
      length: MONTH_LENGTH,
      intercalary: false,
    },
    basis: 'computed',
  };
}

function listRun(calendar: Calendar): RunNight[] {
  const nights = calendar.groups.flatMap((group, groupIndex) =>
    group.nights.map((night, index) => ({
      ...night,
      group: group.name,
      groupNumber: groupIndex + 1,
      numberInGroup: index + 1,
    })),
  );
  return nights.map((night, index) => ({ ...night, number: index + 1 }));
}

function listNames(group: string, count: number) {
  return Array.from({ length: count }, (_, index) => ({
    name: `${group} ${index + 1}`,
    say: `dire ${group} ${index + 1}`,
    gesture: 'wave',
  }));
}

function findPhase({ nightOfMonth, beginsMs }: NightRecord): { name: PhaseName; atMs: number } | null {
  const name = ({ 1: 'new-moon', 16: 'full-moon' } as const)[nightOfMonth];
  return name === undefined ? null : { name, atMs: beginsMs + 4 * 3_600_000 };
}

function viewMoon({ nightOfMonth, beginsMs }: NightRecord, up: boolean): MoonView {
  return {
    atMs: beginsMs,
    altitudeDegrees: 30,
    azimuthDegrees: 0,
    litFraction: (1 - Math.cos((2 * Math.PI * nightOfMonth) / MONTH_LENGTH)) / 2,
    brightLimbDegrees: 90,
    northPoleDegrees: 180,
    waxing: nightOfMonth < 15,
    up,
  };
}

function key(number: number, marks: number, expected: ExpectedAnswer, working: string): KeyAnswer {
  return {
    number,
    marks,
    prompt: [text(`Question ${number} once more`)],
    expected,
    working: working === '' ? [] : [text(working)],
  };
}

const keyOptions: readonly KeyOption[] = [
  { ...option('A', 'the Sun'), right: true, means: [] },
  { ...option('B', 'the sea'), right: false, means: [text('Has seen it shine on water.')] },
];

/** Spellings that count on a line. */
function line(spellings: readonly string[], unit?: string): ExpectedAnswer {
  const accepted = spellings.map((spelling) => [text(spelling)]);
  const forgive = { case: true, accents: true };
  return { kind: 'line', accepted, forgive, slips: [], ...(unit === undefined ? {} : { unit }) };
}

function option(letter: string, words: string) {
  return { letter, content: [text(words)] };
}

function text(value: string): ElementContent {
  return { type: 'text', value };
}
