import type { ElementContent } from 'hast';
import type { RootContent } from 'mdast';
import { requireLocalInstant } from '../calendar/local-instant.ts';
import { markLeavingLink } from '../content/mark-leaving-link.ts';
import type { LessonView, ReadyDirective } from '../directives/definition.ts';
import { renderFigureStore } from '../directives/gestures/shared-figures.ts';
import type { Handout, ResolvedLesson } from './model.ts';
import { isDirective, isForLearners, type NumberedDirective } from './number-directives.ts';
import type { ParsedLesson } from './parse-lesson.ts';
import type { Resolution } from './prepare-directive.ts';
import type { PreparedLesson } from './prepare-lesson.ts';
import { renderMarkdown } from './render-markdown.ts';

/** The page's own heading is the lesson's title; the author's come below it. */
const HEADING_SHIFT = 1;

/** Writes the text of a prepared lesson's pages. */
export function renderLesson(prepared: PreparedLesson, view: LessonView): ResolvedLesson {
  const { parsed, numbered, resolution, pictures, tells } = prepared;
  const { almanac, lesson, school } = prepared.setting;
  const parts = numbered.flatMap(({ node }) => resolution.ready.get(node) ?? []);
  const forTeacher = numbered.flatMap(({ node, around }) =>
    isForLearners(around) ? [] : (resolution.ready.get(node) ?? []),
  );
  const classBegins = lesson.head.begins ?? school.classBegins;
  return {
    file: lesson.file,
    head: lesson.head,
    slug: lesson.slug,
    stem: lesson.stem,
    tonight: almanac.nightOn(lesson.date),
    atClassTime: almanac.nightAt(requireLocalInstant(almanac.place.timeZone, lesson.date, classBegins)),
    steps: parts.flatMap(({ step }) => step ?? []),
    body: [...renderForTeacher(parsed, resolution, view), ...renderFigures(forTeacher)],
    hasRun: forTeacher.some(({ run }) => run !== undefined),
    outdoors: parts.some(({ outdoors }) => outdoors === true),
    handouts: numbered.flatMap((each) => renderHandout(each, prepared, view)),
    tells,
    quizzes: parts.flatMap(({ quiz }) => quiz ?? []),
    pictures,
  };
}

/** Renders a part of a lesson as learners may see it: with no box ticked, and each directive in its learner's view. */
export function renderForLearner(
  nodes: readonly RootContent[],
  { definitions }: ParsedLesson,
  { ready }: Resolution,
  view: LessonView,
): ElementContent[] {
  return renderMarkdown(nodes, {
    headingShift: HEADING_SHIFT,
    definitions,
    slot: (node, children) => ready.get(node)?.renderLearner(children, view) ?? [],
    tickTaskLists: false,
    markLink: (link) => markLeavingLink(link, view.labels),
  });
}

function renderForTeacher(
  { tree, definitions }: ParsedLesson,
  { ready }: Resolution,
  view: LessonView,
): ElementContent[] {
  return renderMarkdown(tree.children, {
    headingShift: HEADING_SHIFT,
    definitions,
    slot: (node, children) => ready.get(node)?.renderTeacher(children, view) ?? [],
    tickTaskLists: { label: view.labels.text('box-ticked') },
    markLink: (link) => markLeavingLink(link, view.labels),
  });
}

function renderHandout({ node, written }: NumberedDirective, prepared: PreparedLesson, view: LessonView): Handout[] {
  const { parsed, resolution } = prepared;
  const handout = resolution.ready.get(node)?.handout;
  if (handout === undefined) return [];
  const inside = listInside(written.children, resolution);
  const body = [...renderForLearner(written.children, parsed, resolution, view), ...renderFigures(inside)];
  return [{ ...handout, body, hasRun: inside.some(({ run }) => run !== undefined) }];
}

function listInside(nodes: readonly RootContent[], resolution: Resolution): ReadyDirective[] {
  return nodes.flatMap((node) => {
    const ready = isDirective(node) ? resolution.ready.get(node) : undefined;
    const inside = 'children' in node ? listInside(node.children, resolution) : [];
    return ready === undefined ? inside : [ready, ...inside];
  });
}

function renderFigures(directives: readonly ReadyDirective[]): ElementContent[] {
  return renderFigureStore(directives.flatMap(({ figures }) => figures ?? []));
}
