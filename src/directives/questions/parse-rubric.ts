import { MOST_MARKS } from '../../content/question-words.ts';
import { quote } from '../../content/wording.ts';
import type { RubricRow } from '../../quiz/model.ts';

/** Why a rubric cannot be used. */
export interface RubricFault {
  readonly found: string;
  readonly expected: string;
  readonly advice: string;
}

const EXAMPLE = '`2: says why; 1: says what`';

/**
 * Reads a rubric in one line: marks, a colon, what earns them; a semicolon between, the most marks first. A semicolon
 * that no marks follow belongs to the words.
 */
export function parseRubric(text: string): RubricRow[] | RubricFault {
  const parts = text.split(/;(?=\s*\d+\s*:)|;\s*$/u).filter((part) => part.trim() !== '');
  const rows: RubricRow[] = [];
  for (const part of parts) {
    const [, marks, words] = /^(\d{1,2})\s*:\s*(\S.*)$/su.exec(part.trim()) ?? [];
    if (marks === undefined || words === undefined) return describeUnread(part);
    rows.push({ marks: Number(marks), words });
  }
  return rows.length === 0 ? describeUnread(text) : (findOrderFault(rows) ?? rows);
}

function describeUnread(part: string): RubricFault {
  const expected = `marks, a colon and what earns them, as in ${EXAMPLE}`;
  return { found: `${quote(part.trim())} in a rubric`, expected, advice: 'write it so' };
}

function findOrderFault(rows: readonly RubricRow[]): RubricFault | undefined {
  const most = rows[0]?.marks ?? 0;
  if (most < 1 || most > MOST_MARKS) {
    const expected = `1 to ${MOST_MARKS} marks for the best answer`;
    return { found: `a rubric that begins with \`${most}\` marks`, expected, advice: 'mend the numbers' };
  }
  const wrong = rows.find((row, index) => index > 0 && row.marks >= (rows[index - 1]?.marks ?? 0));
  if (wrong === undefined) return undefined;
  const expected = 'the most marks first, then fewer, each number once, for the whole answer';
  return {
    found: `\`${wrong.marks}:\` where it stands in a rubric`,
    expected,
    advice: 'mend the numbers or their order',
  };
}
