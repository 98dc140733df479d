import type { ElementContent } from 'hast';
import type { RootContent } from 'mdast';
import type { Directives } from 'mdast-util-directive';
import { requireLocalInstant } from '../calendar/local-instant.ts';
import type { CivilDate } from '../calendar/rules.ts';
import type { Diagnostic } from '../content/diagnostic.ts';
import { findNearMiss } from '../content/near-miss.ts';
import { checkAttributes, writeDirectiveName } from '../directives/check-attributes.ts';
import type {
  CheckedValues,
  Directive,
  ReadyDirective,
  ResolveContext,
  ViewContext,
  WrittenDirective,
} from '../directives/definition.ts';
import { DIRECTIVES } from './directive-registry.ts';
import type { ResolvedLesson } from './model.ts';
import { isDirective, type NumberedDirective, numberDirectives, placeOf } from './number-directives.ts';
import type { ParsedLesson } from './parse-lesson.ts';
import { renderMarkdown } from './render-markdown.ts';
import { type KnownTargets, resolveReferences } from './resolve-references.ts';

/** Everything around a lesson that its directives may look at. */
export type LessonSetting = Omit<ResolveContext, 'renderPlain' | 'readDirective' | 'placeOf' | 'report'>;

interface Reading {
  readonly written: WrittenDirective;
  readonly values: CheckedValues;
}

/** Directives of a lesson by their nodes: as read, and ready to be drawn. */
interface Resolution {
  readonly readings: Map<Directives, Reading>;
  readonly ready: Map<Directives, ReadyDirective>;
}

const BY_NAME: ReadonlyMap<string, Directive> = new Map(DIRECTIVES.map((directive) => [directive.name, directive]));

/** The page's own heading is the lesson's title; the author's come below it. */
const HEADING_SHIFT = 1;

/**
 * Resolves every directive of a parsed lesson and renders its pages' text. All faults are reported; what they leave
 * out of the result must not be published.
 */
export function resolveLesson(
  parsed: ParsedLesson,
  setting: LessonSetting,
  targets: KnownTargets,
  report: (diagnostic: Diagnostic) => void,
): ResolvedLesson {
  const { almanac, lesson, labels, calendar, school } = setting;
  const pictures = resolveReferences(parsed.tree, parsed.definitions, targets, lesson.file, report);
  const numbered = numberDirectives(parsed.tree, lesson.file);
  const resolution: Resolution = { readings: new Map(), ready: new Map() };
  const view: ViewContext = { labels, namesLanguage: calendar.language };
  const shared = { headingShift: HEADING_SHIFT, definitions: parsed.definitions };
  const renderForLearner = (nodes: readonly RootContent[]): ElementContent[] =>
    renderMarkdown(nodes, {
      ...shared,
      slot: (node, children) => resolution.ready.get(node)?.renderLearner(children, view) ?? [],
      tickTaskLists: false,
    });
  const context: ResolveContext = {
    ...setting,
    renderPlain: renderForLearner,
    readDirective: (node) => (isDirective(node) ? resolution.readings.get(node) : undefined),
    placeOf: (node) => placeOf(node, lesson.file),
    report,
  };
  // A quiz must not ask what a handout tells, and the handout may come after it.
  for (const each of numbered) if (!isQuiz(each)) prepareDirective(each, context, resolution);
  const tells = listTold(numbered, resolution);
  const quizContext = { ...context, toldDates: new Set([...context.toldDates, ...tells]) };
  for (const each of numbered) if (isQuiz(each)) prepareDirective(each, quizContext, resolution);
  checkMinutes(numbered, resolution, setting, report);
  const parts = numbered.flatMap(({ node }) => resolution.ready.get(node) ?? []);
  const classBegins = lesson.head.begins ?? school.classBegins;
  return {
    head: lesson.head,
    slug: lesson.slug,
    tonight: almanac.nightOn(lesson.date),
    atClassTime: almanac.nightAt(requireLocalInstant(almanac.place.timeZone, lesson.date, classBegins)),
    steps: parts.flatMap(({ step }) => step ?? []),
    body: renderMarkdown(parsed.tree.children, {
      ...shared,
      slot: (node, children) => resolution.ready.get(node)?.renderTeacher(children, view) ?? [],
      tickTaskLists: { label: labels.text('box-ticked') },
    }),
    handouts: numbered.flatMap(({ node, written }) => {
      const handout = resolution.ready.get(node)?.handout;
      return handout === undefined ? [] : [{ ...handout, body: renderForLearner(written.children) }];
    }),
    tells,
    quizzes: parts.flatMap(({ quiz }) => quiz ?? []),
    pictures,
  };
}

function isQuiz({ written }: NumberedDirective): boolean {
  return written.name === 'group-quiz';
}

/** Dates whose night a handout of the lesson names, or the words of a quiz. */
function listTold(numbered: readonly NumberedDirective[], { ready }: Resolution): CivilDate[] {
  return numbered
    .filter(({ around }) => around.includes('handout') || around.includes('group-quiz'))
    .flatMap(({ node }) => ready.get(node)?.tells ?? []);
}

function prepareDirective(
  { node, written, around, inLabel }: NumberedDirective,
  context: ResolveContext,
  { readings, ready }: Resolution,
): void {
  // Its syntax was found wrong and reported: what it holds is not what the author meant.
  if (node.data?.written?.misread === true) return;
  const directive = BY_NAME.get(written.name);
  if (directive === undefined) {
    context.report(describeUnknown(written));
    return;
  }
  const misplaced = inLabel ? describeInLabel(written, around) : findMisplacement(written, directive, around);
  if (misplaced !== undefined) context.report(misplaced);
  const values = checkAttributes(written, directive, context, context.report);
  if (values === undefined || misplaced !== undefined) return;
  readings.set(node, { written, values });
  const prepared = directive.prepare(written, values, context);
  if (prepared !== undefined) ready.set(node, prepared);
}

function describeUnknown({ name, form, place }: WrittenDirective): Diagnostic {
  const found = writeDirectiveName(name, form);
  const known = DIRECTIVES.filter(({ forms }) => forms.includes(form)).map((each) => each.name);
  const near = findNearMiss(name, known) ?? findNearMiss(name, [...BY_NAME.keys()]);
  const nearForms = BY_NAME.get(near ?? '')?.forms ?? [];
  const nearForm = nearForms.includes(form) ? form : nearForms[0];
  const advice =
    near === undefined || nearForm === undefined
      ? 'see the list of directives'
      : `did you mean \`${writeDirectiveName(near, nearForm)}\`?`;
  const expected = known.map((each) => `\`${each}\``).join(', ');
  const message = `\`${found}\` is not a directive; expected one of ${expected}; ${advice}`;
  return { rule: 'directive-unknown', severity: 'error', place, message, found, expected };
}

/** What stands in square brackets becomes a title or an answer as plain text; a directive there would be lost. */
function describeInLabel({ name, form, place }: WrittenDirective, around: readonly string[]): Diagnostic {
  const found = writeDirectiveName(name, form);
  const expected = 'plain words';
  const message = `\`${found}\` stands in the square brackets of \`${around.at(-1) ?? ''}\`; expected ${expected}; write the words themselves`;
  return { rule: 'directive-place', severity: 'error', place, message, found, expected };
}

function findMisplacement(
  { name, form, place }: WrittenDirective,
  { inside, notInside }: Directive,
  around: readonly string[],
): Diagnostic | undefined {
  const found = writeDirectiveName(name, form);
  const outer = around.find((each) => notInside?.includes(each));
  const common = { rule: 'directive-place', severity: 'error', place, found } as const;
  if (outer !== undefined) {
    const expected = `a place outside \`:::${outer}\``;
    return {
      ...common,
      expected,
      message: `\`${found}\` stands inside \`:::${outer}\`; expected ${expected}; move it out`,
    };
  }
  if (inside === undefined || inside.some((each) => around.includes(each))) return undefined;
  const expected = inside.map((each) => `\`:::${each}\``).join(' or ');
  return {
    ...common,
    expected,
    message: `\`${found}\` stands by itself; expected it inside ${expected}; move it there`,
  };
}

/**
 * The minutes of the steps must be the lesson's minutes; a lesson without steps makes no such promise.
 * A faulty step was reported already, and its minutes are not known.
 */
function checkMinutes(
  numbered: readonly NumberedDirective[],
  { readings }: Resolution,
  { lesson }: LessonSetting,
  report: (diagnostic: Diagnostic) => void,
): void {
  const steps = numbered.filter(({ written }) => written.name === 'step');
  const last = steps.reduce<NumberedDirective | undefined>(
    (latest, each) => (latest !== undefined && latest.written.number > each.written.number ? latest : each),
    undefined,
  );
  if (last === undefined || steps.some(({ node }) => !readings.has(node))) return;
  const total = last.written.minutesBefore + Number(last.written.attributes['minutes']);
  if (total === lesson.head.minutes) return;
  report({
    rule: 'step-minutes',
    severity: 'error',
    place: last.written.attributePlace('minutes'),
    message: `The steps take \`${total}\` minutes; expected \`${lesson.head.minutes}\`, as \`minutes\` at the top of the lesson says; change a step or the top`,
    found: String(total),
    expected: String(lesson.head.minutes),
  });
}
