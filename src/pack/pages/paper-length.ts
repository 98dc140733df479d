import { readText } from '../../quiz/fold-text.ts';
import type { LearnerPaper, LearnerQuestion } from '../../quiz/model.ts';

/** Letters that stand on a line of a printed paper in the widest of the fall-back typefaces: measured, rounded down. */
const LETTERS_A_LINE = 62;
const LETTERS_AN_OPTION_LINE = 28;

/** Lines taken by the paper's head, the roles and the total, and by the space around a question. */
const FRAME_LINES = 8;
const GAP_LINES = 0.9;

/** Lines that a sheet of A4 holds in the usual size of print. */
const LINES_A_SHEET = 41;

/** True when a paper may not stand on one sheet of A4 in the usual size: it is then set smaller. An estimate, on the safe side. */
export function isLongPaper({ introduction, questions }: LearnerPaper): boolean {
  const introductionLines = introduction.length === 0 ? 0 : countLines(readText(introduction), LETTERS_A_LINE) + 1;
  const questionLines = questions.reduce((sum, question) => sum + countQuestionLines(question), 0);
  return FRAME_LINES + introductionLines + questionLines > LINES_A_SHEET;
}

function countQuestionLines({ prompt, space }: LearnerQuestion): number {
  const asked = countLines(readText(prompt), LETTERS_A_LINE) + GAP_LINES;
  if (space.kind === 'line') return asked + 1.5;
  const lines = space.options.map(({ content }) => countLines(readText(content), LETTERS_AN_OPTION_LINE));
  // Options stand in two columns; the longer one of a row gives its height.
  const rows = lines.filter((_, index) => index % 2 === 0).map((left, row) => Math.max(left, lines[2 * row + 1] ?? 0));
  return asked + rows.reduce((sum, row) => sum + row, 0);
}

function countLines(text: string, lettersALine: number): number {
  return Math.max(1, Math.ceil(text.length / lettersALine));
}
