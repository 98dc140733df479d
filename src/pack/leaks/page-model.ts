import type { ElementContent } from 'hast';
import type { Labels } from '../../content/labels.ts';
import type { Handout, ResolvedLesson, ResolvedWeek } from '../../lesson/model.ts';
import type { AnswerSpace, LearnerPaper, QuizSheet } from '../../quiz/model.ts';
import { computePackPaths } from '../pack-paths.ts';
import { listContentAttributes, readContentText } from './read-content.ts';
import { splitWords } from './split-words.ts';

/** What a learners' page is made from, and so may say. */
export type PageModel = { readonly lesson: ResolvedLesson; readonly labels: Labels; readonly schoolName: string } & (
  | { readonly kind: 'papers'; readonly quiz: QuizSheet }
  | { readonly kind: 'handout'; readonly handout: Handout }
);

/** Papers and handouts of a week by the paths of their pages. */
export function listPageModels(week: ResolvedWeek): Map<string, PageModel> {
  const { labels } = week;
  const schoolName = week.school.name;
  const paths = computePackPaths(week);
  return new Map(
    week.lessons.flatMap((lesson, index): (readonly [string, PageModel])[] => [
      ...lesson.quizzes.map(
        (quiz, at) =>
          [paths.lessons[index]?.papers[at] ?? '', { kind: 'papers', lesson, labels, schoolName, quiz }] as const,
      ),
      ...lesson.handouts.map(
        (handout, at) =>
          [paths.lessons[index]?.handouts[at] ?? '', { kind: 'handout', lesson, labels, schoolName, handout }] as const,
      ),
    ]),
  );
}

/** What a page is called. */
export function readTitle(model: PageModel): string {
  return model.kind === 'handout' ? model.handout.title : model.quiz.title;
}

/** All words that a page may show beside its fixed ones, in order; an empty word parts what does not belong together. */
export function readModelWords(model: PageModel): string[] {
  const texts = [readTitle(model), ...listModelContent(model).map(readContentText)];
  return texts.flatMap((text) => [...splitWords(text), '']);
}

/** All that attributes of a page may say beside those of its frame. */
export function readModelValues(model: PageModel): Set<string> {
  const values = new Set<string>();
  for (const content of listModelContent(model)) {
    for (const { value } of listContentAttributes(content)) values.add(value);
  }
  return values;
}

function listModelContent(model: PageModel): (readonly ElementContent[])[] {
  return model.kind === 'handout' ? [model.handout.body] : model.quiz.papers.flatMap(listPaperContent);
}

function listPaperContent({ introduction, questions }: LearnerPaper): (readonly ElementContent[])[] {
  return [introduction, ...questions.flatMap(({ prompt, space }) => [prompt, ...listSpaceContent(space)])];
}

/** What stands in the space for an answer, piece by piece. */
export function listSpaceContent(space: AnswerSpace): (readonly ElementContent[])[] {
  switch (space.kind) {
    case 'options':
      return space.options.map(({ content }) => content);
    case 'order':
      return space.items.map(({ content }) => content);
    case 'match':
      return [...(space.headings ?? []), ...space.left, ...space.right.map(({ content }) => content)];
    default:
      return [];
  }
}
