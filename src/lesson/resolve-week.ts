import type { Almanac } from '../calendar/almanac-types.ts';
import { requireLocalInstant } from '../calendar/local-instant.ts';
import type { CivilDate } from '../calendar/rules.ts';
import { addDays, WEEK_DAYS } from '../content/civil-date.ts';
import type { Diagnostic, SourcePlace } from '../content/diagnostic.ts';
import type { OpenedSchool, OpenLibrary } from '../content/open-library.ts';
import { parseLessonHead } from '../content/parse-lesson-head.ts';
import { parseWeek } from '../content/parse-week.ts';
import type { SourceFile, WeekDay, WeekPlan } from '../content/types.ts';
import { parseYaml, parseYamlFile } from '../content/yaml-document.ts';
import { checkAlikeGestures } from './check-alike-gestures.ts';
import { checkSyntax } from './check-syntax.ts';
import { DIRECTIVES } from './directive-registry.ts';
import type { ResolvedWeek } from './model.ts';
import { createLessonParser } from './parse-lesson.ts';
import { prepareLessons, type ReadLesson, renderLessons } from './resolve-lessons.ts';

/** The files of a week's folder. */
export interface WeekFiles {
  readonly week: SourceFile;
  /** In order of file name. */
  readonly lessons: readonly SourceFile[];
  /** Picture files, as paths from the week's folder. */
  readonly pictures: readonly string[];
}

/** What a week is resolved against. */
export interface WeekSetting {
  readonly library: OpenLibrary;
  /** The computed calendar of an opened school; asked again, it may give the same one. */
  almanacFor(opened: OpenedSchool): Almanac;
  /** Ids that stand in for those of the week's and the school's files. */
  readonly schoolId?: string;
  readonly calendarId?: string;
}

const INLINE_NAMES = DIRECTIVES.filter(({ forms }) => forms.includes('text')).map(({ name }) => name);
const parseLesson = createLessonParser(INLINE_NAMES);

/**
 * Resolves a week: its lessons on their dates, every directive, every page's text.
 * All faults of all files come back together; the week itself only when none of them is an error.
 * Without a good week.yaml and school there are no dates: then directives are checked for how they are written only.
 */
export function resolveWeek(
  files: WeekFiles,
  setting: WeekSetting,
): { readonly week?: ResolvedWeek; readonly diagnostics: readonly Diagnostic[] } {
  const diagnostics: Diagnostic[] = [];
  const report = (diagnostic: Diagnostic) => void diagnostics.push(diagnostic);
  const plan = readPlan(files, setting, report);
  const lessons = files.lessons.flatMap((file) => readLesson(file, report) ?? []);
  const opened = plan === undefined ? undefined : openSchool(plan, setting, report);
  if (plan === undefined || opened === undefined) return { diagnostics };
  const almanac = setting.almanacFor(opened);
  const dates = computeDates(plan);
  if (!checkDates(dates, almanac, opened.school.classBegins, files.week, report)) return { diagnostics };
  checkStrangers(plan, lessons, report);
  // A lesson whose front matter is faulty may be the one of a day that seems to have none.
  if (lessons.length === files.lessons.length) checkMissing(plan, lessons, files.week, report);
  const inOrder = plan.days.flatMap((day) => lessons.filter(({ head }) => head.day === day));
  const banks = setting.library.openBanks(inOrder.map(({ file }) => file.text));
  banks.diagnostics.forEach(report);
  const lessonsSetting = { plan, ...opened, almanac, dates, banks: banks.value ?? new Map(), pictures: files.pictures };
  const prepared = prepareLessons(inOrder, lessonsSetting, report);
  if (diagnostics.some(({ severity }) => severity === 'error')) return { diagnostics };
  return { week: { plan, ...opened, almanac, ...renderLessons(prepared, opened) }, diagnostics };
}

function readPlan({ week }: WeekFiles, { library, schoolId }: WeekSetting, report: (diagnostic: Diagnostic) => void) {
  const { value, diagnostics } = parseWeek(week, library.schools);
  diagnostics.forEach(report);
  return value === undefined || schoolId === undefined ? value : { ...value, school: schoolId };
}

function openSchool(plan: WeekPlan, { library, calendarId }: WeekSetting, report: (diagnostic: Diagnostic) => void) {
  // A school that is not there was reported with the week's file, or refused with the command's options.
  const opened = library.openSchool(plan.school, calendarId);
  opened?.diagnostics.forEach(report);
  if (opened?.value !== undefined) checkAlikeGestures(library, opened.value.school.gestures).forEach(report);
  return opened?.value;
}

function readLesson(file: SourceFile, report: (diagnostic: Diagnostic) => void): ReadLesson | undefined {
  if (file.fault !== undefined) {
    report(file.fault);
    return undefined;
  }
  const parsed = parseLesson(file.text);
  const found = checkSyntax(parsed, file.path, DIRECTIVES);
  found.forEach(report);
  if (found.some(({ rule }) => rule === 'nesting')) return undefined;
  const { frontMatter } = parsed;
  if (frontMatter === undefined) {
    report({
      rule: 'front-matter',
      severity: 'error',
      place: { file: file.path, line: 1, column: 1 },
      message:
        'Found no front matter; expected `---`, then `title`, `day` and `minutes`, then `---`, from the first line on; write it',
    });
    return undefined;
  }
  const { value, diagnostics } = parseLessonHead(frontMatter.text, {
    file: file.path,
    line: frontMatter.line,
    column: 1,
  });
  diagnostics.forEach(report);
  return value === undefined ? undefined : { file, parsed, head: value };
}

function computeDates({ begins, days }: WeekPlan): ReadonlyMap<WeekDay, CivilDate> {
  return new Map(days.map((day) => [day, addDays(begins, WEEK_DAYS.indexOf(day))]));
}

/** A date that the calendar does not reach, or that the clocks of the place left out, has no night to teach. */
function checkDates(
  dates: ReadonlyMap<WeekDay, CivilDate>,
  almanac: Almanac,
  classBegins: string,
  week: SourceFile,
  report: (diagnostic: Diagnostic) => void,
): boolean {
  for (const date of dates.values()) {
    try {
      almanac.nightOn(date);
      // Class may lie in the night before, which may be the last one that cannot be told.
      almanac.nightAt(requireLocalInstant(almanac.place.timeZone, date, classBegins));
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      const place = placeInWeek(week, 'begins');
      report({ rule: 'date-range', severity: 'error', place, message: error.message, found: date });
      return false;
    }
  }
  return true;
}

/** The week was parsed and found good before; its text is looked at once more only to say where a fault lies. */
function placeInWeek(week: SourceFile, key: string): SourcePlace {
  return parseYamlFile(week).placeOf([key]);
}

/** Every day of the week has a lesson. */
function checkMissing(
  plan: WeekPlan,
  lessons: readonly ReadLesson[],
  week: SourceFile,
  report: (diagnostic: Diagnostic) => void,
): void {
  for (const day of plan.days.filter((each) => !lessons.some(({ head }) => head.day === each))) {
    report({
      rule: 'missing-file',
      severity: 'error',
      place: placeInWeek(week, 'days'),
      message: `No lesson is for \`${day}\`; expected a lesson file with \`day: ${day}\`; write it, or take the day out of \`days\``,
      found: 'no lesson',
      expected: `day: ${day}`,
    });
  }
}

/** Every lesson stands on a day of the week. */
function checkStrangers(
  plan: WeekPlan,
  lessons: readonly ReadLesson[],
  report: (diagnostic: Diagnostic) => void,
): void {
  for (const { file, head, parsed } of lessons.filter((each) => !plan.days.includes(each.head.day))) {
    const front = parseYaml(parsed.frontMatter?.text ?? '', { file: file.path, line: 2, column: 1 });
    report({
      rule: 'wrong-value',
      severity: 'error',
      place: front.placeOf(['day']),
      message: `\`${head.day}\` is not a day of this week; expected one of ${plan.days.map((day) => `\`${day}\``).join(', ')}; mend the day, or add it to \`days\` in week.yaml`,
      found: head.day,
      expected: plan.days.join(', '),
    });
  }
}
