import type { ElementContent } from 'hast';
import { readText } from '../../quiz/fold-text.ts';
import type { AnswerSpace, LearnerPaper, LearnerQuestion } from '../../quiz/model.ts';
import { type Arrangement, arrangeContents } from './arrange-lettered.ts';
import { holdsPicture } from './holds-picture.ts';

/** Letters that stand on a line of a printed paper in the widest of the fall-back typefaces: measured, rounded down. */
const LETTERS_A_LINE = 62;

/** The same beside box and letter, where a line is shared by so many columns. */
const LETTERS_IN_COLUMNS = { 1: 58, 2: 28, 3: 17, 4: 12 } as const;

/** Lines taken by the paper's head, the roles and the total, and by the space around a question. */
const FRAME_LINES = 8;
const GAP_LINES = 0.9;

/** Lines that a sheet of A4 holds in the usual size of print. */
const LINES_A_SHEET = 41;

/** Longer than this by the estimate, a paper fills a good part of a second sheet in the small size too. Measured. */
const LINES_OF_TWO_SHEETS = 58;

/** Heights of what is no text, in lines of the usual size (6 mm), as the styles of a paper have them in print. */
const LINES = { picture: 6, asked: 8, writing: 1.6, box: 1.6, disc: 8.5 } as const;

/**
 * True when papers may not stand on one sheet of A4 each in the usual size of print, and are not so long that they need
 * two anyway. Papers of one quiz are all set alike. An estimate, on the safe side.
 */
export function areSetSmall(papers: readonly LearnerPaper[]): boolean {
  const lines = Math.max(...papers.map(countPaperLines));
  return lines > LINES_A_SHEET && lines <= LINES_OF_TWO_SHEETS;
}

function countPaperLines({ introduction, questions }: LearnerPaper): number {
  const introductionLines = introduction.length === 0 ? 0 : countLines(introduction, LETTERS_A_LINE) + 1;
  return FRAME_LINES + introductionLines + sum(questions.map(countQuestionLines));
}

function countQuestionLines({ prompt, space }: LearnerQuestion): number {
  const pictureLines = holdsPicture(prompt) ? LINES.asked : 0;
  return countLines(prompt, LETTERS_A_LINE) + pictureLines + GAP_LINES + countSpaceLines(space);
}

function countSpaceLines(space: AnswerSpace): number {
  switch (space.kind) {
    case 'options':
      return countRows(space.options.map(({ content }) => content));
    case 'line':
      return LINES.writing;
    case 'order':
      return countRows(space.items.map(({ content }) => content)) + LINES.box;
    case 'match':
      return countMatchLines(space);
    case 'lines':
      return space.lines * LINES.writing;
    case 'disc':
      return LINES.disc;
  }
}

function countMatchLines({ headings, left, right }: Extract<AnswerSpace, { readonly kind: 'match' }>): number {
  const headingLines = headings === undefined ? 0 : 1;
  const lettered = right.map(({ content }) => content);
  if ([...left, ...lettered].some(holdsPicture)) return 2 * headingLines + countRows(left) + countRows(lettered) + 1;
  const rows = left.map((content, row) => Math.max(LINES.box, ...[content, lettered[row] ?? []].map(countHalfLines)));
  return headingLines + sum(rows);
}

function countHalfLines(content: readonly ElementContent[]): number {
  return countLines(content, LETTERS_IN_COLUMNS[2]);
}

/** Lines of things in rows and columns; the tallest of a row gives its height. */
function countRows(contents: readonly (readonly ElementContent[])[]): number {
  const { columns, pictures }: Arrangement = arrangeContents(contents);
  const lines = contents.map((content) =>
    pictures ? LINES.picture : countLines(content, LETTERS_IN_COLUMNS[columns]),
  );
  const firsts = lines.flatMap((_, index) => (index % columns === 0 ? [index] : []));
  return sum(firsts.map((first) => Math.max(...lines.slice(first, first + columns))));
}

function countLines(content: readonly ElementContent[], lettersALine: number): number {
  return Math.max(1, Math.ceil(readText(content).length / lettersALine));
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}
