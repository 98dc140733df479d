import type { RootContent } from 'mdast';
import type { CivilDate } from '../calendar/rules.ts';
import type { Diagnostic } from '../content/diagnostic.ts';
import type { LessonView, ResolveContext } from '../directives/definition.ts';
import { checkRunMinutes, checkStepMinutes } from './check-minutes.ts';
import type { UsedPicture } from './model.ts';
import { isDirective, type NumberedDirective, numberDirectives, placeOf } from './number-directives.ts';
import type { ParsedLesson } from './parse-lesson.ts';
import { prepareDirective, type Resolution } from './prepare-directive.ts';
import { renderForLearner } from './render-lesson.ts';
import { type KnownTargets, resolveReferences } from './resolve-references.ts';

/** Everything around a lesson that its directives may look at. */
export type LessonSetting = Omit<ResolveContext, 'renderPlain' | 'readDirective' | 'placeOf' | 'report'>;

/** A lesson whose directives are resolved and whose pages are not yet written. */
export interface PreparedLesson {
  readonly parsed: ParsedLesson;
  readonly setting: LessonSetting;
  readonly numbered: readonly NumberedDirective[];
  readonly resolution: Resolution;
  readonly pictures: readonly UsedPicture[];
  /** Dates whose night a handout names, or the words of a quiz. */
  readonly tells: readonly CivilDate[];
}

/** Resolves every directive of a parsed lesson. All faults are reported; what they leave out must not be published. */
export function prepareLesson(
  parsed: ParsedLesson,
  setting: LessonSetting,
  targets: KnownTargets,
  report: (diagnostic: Diagnostic) => void,
): PreparedLesson {
  const { lesson } = setting;
  const pictures = resolveReferences(parsed.tree, parsed.definitions, targets, lesson.file, report);
  const numbered = numberDirectives(parsed.tree, lesson.file);
  const resolution: Resolution = { readings: new Map(), ready: new Map() };
  const view = createQuizView(setting);
  const context: ResolveContext = {
    ...setting,
    renderPlain: (nodes: readonly RootContent[]) => renderForLearner(nodes, parsed, resolution, view),
    readDirective: (node) => (isDirective(node) ? resolution.readings.get(node) : undefined),
    placeOf: (node) => placeOf(node, lesson.file),
    report,
  };
  // A quiz must not ask what a handout tells, and the handout may come after it.
  for (const each of numbered) if (!isQuiz(each)) prepareDirective(each, context, resolution);
  const tells = listTold(numbered, resolution);
  const quizContext = { ...context, toldDates: new Set([...context.toldDates, ...tells]) };
  for (const each of numbered) if (isQuiz(each)) prepareDirective(each, quizContext, resolution);
  checkStepMinutes(numbered, resolution, lesson.head.minutes, report);
  checkRunMinutes(numbered, resolution, lesson.head.minutes, report);
  return { parsed, setting, numbered, resolution, pictures, tells };
}

/** Words of a quiz are rendered while it is resolved; no run stands among them. */
function createQuizView({ labels, calendar }: LessonSetting): LessonView {
  return {
    labels,
    namesLanguage: calendar.language,
    ...(calendar.explainedIn === undefined ? {} : { explainedIn: calendar.explainedIn }),
    trackOf: () => {
      throw new Error('A run was rendered before the tracks of the week were planned.');
    },
  };
}

function isQuiz({ written }: NumberedDirective): boolean {
  return written.name === 'group-quiz';
}

function listTold(numbered: readonly NumberedDirective[], { ready }: Resolution): CivilDate[] {
  return numbered
    .filter(({ around }) => around.includes('handout') || around.includes('group-quiz'))
    .flatMap(({ node }) => ready.get(node)?.tells ?? []);
}
