import { readText } from '../../quiz/fold-text.ts';
import type { Forgiveness, KeyAnswer, KeyPaper } from '../../quiz/model.ts';

/**
 * One answer as the marking help knows it: what to enter, and what makes it right. Letters are those of the group's
 * paper, one character each and joined to one text, as they are typed.
 */
export type MarkingAnswer = { readonly number: number; readonly marks: number } & (
  | { readonly kind: 'options'; readonly letters: string; readonly right: string }
  | {
      readonly kind: 'line';
      /** The shown spelling first. */
      readonly accepted: readonly string[];
      readonly forgive: Forgiveness;
      readonly unit?: string;
      /** Wrong answers that are foreseen, in the order of the key. */
      readonly slips: readonly string[];
    }
  /** `right` is the row of letters as it ought to be. */
  | { readonly kind: 'order' | 'match'; readonly letters: string; readonly right: string }
  /** `rows` are the marks that the rubric gives, the most first. */
  | { readonly kind: 'lines'; readonly rows: readonly number[] }
  | { readonly kind: 'disc' }
);

/** One group's answers, in the order of its key. */
export interface MarkingPaper {
  readonly group: string;
  readonly answers: readonly MarkingAnswer[];
}

/** A group's key as the marking help knows it. */
export function describePaper({ group, answers }: KeyPaper): MarkingPaper {
  return { group, answers: answers.map(describeAnswer) };
}

/** An answer of the key as the marking help knows it. What a wrong choice means is read from the page itself. */
export function describeAnswer({ number, marks, expected }: KeyAnswer): MarkingAnswer {
  switch (expected.kind) {
    case 'options': {
      const right = expected.options.filter((option) => option.right);
      return { number, marks, kind: 'options', letters: joinLetters(expected.options), right: joinLetters(right) };
    }
    case 'line': {
      const { accepted, forgive, unit, slips } = expected;
      return {
        number,
        marks,
        kind: 'line',
        accepted: accepted.map(readText),
        forgive,
        ...(unit === undefined ? {} : { unit }),
        slips: slips.map(({ answer }) => answer),
      };
    }
    case 'order':
      return { number, marks, kind: 'order', ...describeRow(expected.items) };
    case 'match':
      return { number, marks, kind: 'match', ...describeRow(expected.pairs.map((pair) => pair.right)) };
    case 'lines':
      return { number, marks, kind: 'lines', rows: expected.rubric.map((row) => row.marks) };
    case 'disc':
      return { number, marks, kind: 'disc' };
  }
}

/** The letters of a row as it ought to be, and the same as they come on the paper. */
function describeRow(row: readonly { readonly letter: string }[]): {
  readonly letters: string;
  readonly right: string;
} {
  const right = joinLetters(row);
  return { letters: [...right].sort().join(''), right };
}

function joinLetters(lettered: readonly { readonly letter: string }[]): string {
  return lettered.map(({ letter }) => letter).join('');
}
