import type { ElementContent } from 'hast';
import type { Labels } from '../../content/labels.ts';
import type { AnswerSpace, LearnerPaper, LearnerQuestion, LetteredContent, QuizSheet } from '../../quiz/model.ts';
import { findPhrase } from './find-phrase.ts';
import { listSpaceContent } from './page-model.ts';
import { readContentText } from './read-content.ts';
import type { MarkupElement } from './read-markup.ts';
import type { PageReading } from './read-page.ts';
import { splitWords } from './split-words.ts';

/** Where a question stands on its page. */
export interface PlacedQuestion {
  readonly paper: number;
  readonly question: LearnerQuestion;
  /** Index of the first word of the question. */
  readonly promptAt: number;
  /** Index of the element that holds the question and no other. */
  readonly element: number;
  /** The same for each lettered option, item or match, in order of letters; empty where they cannot be told apart. */
  readonly items: readonly number[];
}

/** What the page of a quiz is made from, as far as it is read here. */
interface PapersFrame {
  readonly quiz: QuizSheet;
  readonly labels: Labels;
  /** At the foot of the page. */
  readonly schoolName: string;
}

/** The questions of a page, and which of its words they explain. */
export interface PlacedQuestions {
  readonly questions: readonly PlacedQuestion[];
  /** Whether a word of the page is one of its model: of the title, a question, an option … */
  isExplained(at: number): boolean;
}

/**
 * Finds the questions of a quiz on the page of its papers by their words alone, so that it does not hang on how a page
 * is built. A question whose words are not there, as in a pack of an older lesson, is left out.
 */
export function locateQuestions(page: PageReading, { quiz, labels, schoolName }: PapersFrame): PlacedQuestions {
  const { words, ownWords } = page;
  const explained = new Uint8Array(ownWords);
  const mark = (at: number, length: number) => explained.fill(1, at, at + length);
  const prompts = findPrompts(page, quiz.papers);
  const title = splitWords(quiz.title);
  for (const at of findPhrase(words, title, 0, ownWords)) mark(at, title.length);
  const questions = prompts.map(({ paper, question, promptAt, length }, index): PlacedQuestion => {
    const [before, after] = [prompts[index - 1], prompts[index + 1]];
    const end = after?.promptAt ?? ownWords;
    if (before?.paper !== paper) markHead(quiz.papers[paper], before?.promptAt ?? 0, promptAt);
    mark(promptAt, length);
    const marks = splitWords(labels.count('marks', question.marks));
    for (const at of findPhrase(words, marks, promptAt, end)) mark(at, marks.length);
    const lettered = listLettered(question.space);
    const letters = findLetters(page, lettered, promptAt + length, end);
    for (const item of letters) mark(item.at, item.length);
    const unlettered = letters.length === 0 ? listSpaceContent(question.space) : listUnlettered(question.space);
    for (const content of unlettered) markLines(content, promptAt + length, end);
    const items = letters.map(({ at }) => at);
    const neighbour = before?.paper === paper ? before : after;
    const element = findOwnElement(page, promptAt, neighbour?.promptAt);
    return { paper, question, promptAt, element, items: findItems(page, items) };
  });
  const foot = [...findPhrase(words, splitWords(schoolName), prompts.at(-1)?.promptAt ?? 0, ownWords)].at(-1);
  if (foot !== undefined) mark(foot, splitWords(schoolName).length);
  return { questions, isExplained: (at) => explained[at] === 1 };

  /** A paper begins with the name of its group. */
  function markHead(paper: LearnerPaper | undefined, from: number, to: number): void {
    markLines(paper?.introduction ?? [], from, to);
    markLines([{ type: 'text', value: paper?.group ?? '' }], from, to);
  }

  /** Explains, line by line, the first of the places where the words stand that nothing explains yet. */
  function markLines(content: readonly ElementContent[], from: number, to: number): void {
    for (const line of readContentText(content).split('\n')) {
      const row = splitWords(line);
      for (const at of findPhrase(words, row, from, to)) {
        if (explained.subarray(at, at + row.length).includes(1)) continue;
        mark(at, row.length);
        break;
      }
    }
  }
}

interface FoundPrompt {
  readonly paper: number;
  readonly question: LearnerQuestion;
  readonly promptAt: number;
  readonly length: number;
}

/** One after another: a paper has the questions in their order, and the papers stand in theirs. */
function findPrompts(page: PageReading, papers: readonly LearnerPaper[]): FoundPrompt[] {
  const found: FoundPrompt[] = [];
  let from = 0;
  papers.forEach(({ questions }, paper) => {
    for (const question of questions) {
      const words = splitWords(readContentText(question.prompt));
      if (words.length === 0) continue;
      const [promptAt] = findPhrase(page.words, words, from, page.ownWords);
      if (promptAt === undefined) continue;
      found.push({ paper, question, promptAt, length: words.length });
      from = promptAt + words.length;
    }
  });
  return found;
}

/** The lettered things of an answer space, in order of letters. */
export function listLettered(space: AnswerSpace): readonly LetteredContent[] {
  if (space.kind === 'options') return space.options;
  if (space.kind === 'order') return space.items;
  return space.kind === 'match' ? space.right : [];
}

function listUnlettered(space: AnswerSpace): (readonly ElementContent[])[] {
  return space.kind === 'match' ? [...(space.headings ?? []), ...space.left] : [];
}

/** Each letter with the words after it; none when one of them is not there. */
function findLetters(page: PageReading, lettered: readonly LetteredContent[], from: number, to: number) {
  const found: { readonly at: number; readonly length: number }[] = [];
  let next = from;
  for (const { letter, content } of lettered) {
    const words = splitWords(`${letter}\n${readContentText(content)}`);
    const [at] = findPhrase(page.words, words, next, to);
    if (at === undefined) return [];
    found.push({ at, length: words.length });
    next = at + words.length;
  }
  return found;
}

/** The elements that hold one letter each, as high up as they are still apart. */
function findItems({ markup, runOf }: PageReading, letters: readonly number[]): number[] {
  if (letters.length < 2) return [];
  const paths = letters.map((at) => listAround(markup.elements, runOf(at).element));
  const depth = countShared(paths);
  const items = paths.map((path) => path[depth] ?? -1);
  return new Set(items).size === items.length && !items.includes(-1) ? items : [];
}

/** The element around a question that does not hold the question beside it. */
function findOwnElement({ markup, runOf }: PageReading, promptAt: number, neighbourAt: number | undefined): number {
  const path = listAround(markup.elements, runOf(promptAt).element);
  if (neighbourAt === undefined) return path.findLast((index) => markup.elements[index]?.tag.name === 'li') ?? -1;
  return path[countShared([path, listAround(markup.elements, runOf(neighbourAt).element)])] ?? -1;
}

/** An element and those around it, from the outermost. */
export function listAround(elements: readonly MarkupElement[], element: number): number[] {
  const path: number[] = [];
  for (let index = element; index >= 0; index = elements[index]?.parent ?? -1) path.push(index);
  return path.reverse();
}

/** How many elements the paths have in common from the outermost. */
function countShared(paths: readonly (readonly number[])[]): number {
  const [first = []] = paths;
  const depth = first.findIndex((index, at) => paths.some((path) => path[at] !== index));
  return depth === -1 ? first.length : depth;
}
