import type { ElementContent } from 'hast';
import type { Almanac } from '../calendar/almanac-types.ts';
import type { CivilDate } from '../calendar/rules.ts';
import type { SourcePlace } from '../content/diagnostic.ts';
import type { Labels } from '../content/labels.ts';
import type { Calendar } from '../content/types.ts';

/** The kinds of question the kit computes from the calendar. */
export type ComputedKind = 'night-of-date' | 'nights-until' | 'next-in-run';

/** A question as the author gave it, before papers are dealt. Texts are sanitised hast. */
export type QuestionSource = { readonly place: SourcePlace; readonly marks?: number } & (
  | {
      readonly kind: 'choice';
      readonly prompt: ElementContent[];
      readonly options: readonly { readonly content: ElementContent[]; readonly right: boolean }[];
      readonly working?: string;
    }
  | {
      readonly kind: 'short';
      readonly prompt: ElementContent[];
      /** Accepted spellings; the first is the one the key shows. */
      readonly answers: readonly string[];
      readonly working?: string;
    }
  | { readonly kind: 'computed'; readonly ask: ComputedKind }
);

/** What computed questions are asked about. */
export interface QuizFacts {
  readonly almanac: Almanac;
  readonly calendar: Calendar;
  readonly labels: Labels;
  /** The date of the lesson; "tonight" in questions. */
  readonly today: CivilDate;
  /** Dates asked about lie between these, both included. */
  readonly from: CivilDate;
  readonly to: CivilDate;
  /** Dates whose night the learners have on paper already. */
  readonly toldDates: ReadonlySet<CivilDate>;
}

/** Where a learner writes: boxes to tick, or a line. Holds nothing that tells right from wrong. */
export type AnswerSpace =
  | { readonly kind: 'options'; readonly several: boolean; readonly options: readonly LearnerOption[] }
  /** `unit` is a word after the line, such as "nights". */
  | { readonly kind: 'line'; readonly unit?: string };

export interface LearnerOption {
  /** A, B, C … as printed. */
  readonly letter: string;
  readonly content: ElementContent[];
}

/** A question as a learner gets it. This type has no answer in it. */
export interface LearnerQuestion {
  readonly number: number;
  readonly prompt: ElementContent[];
  readonly marks: number;
  readonly space: AnswerSpace;
}

/** One group's paper. This type has no answer in it. */
export interface LearnerPaper {
  readonly title: string;
  readonly group: string;
  readonly minutes?: number;
  /** What the author tells the group before the first question; may be empty. */
  readonly introduction: ElementContent[];
  readonly questions: readonly LearnerQuestion[];
  readonly totalMarks: number;
}

/** The answer to one question of one paper, for the teacher. */
export interface KeyAnswer {
  readonly number: number;
  /** The question once more, so that the key can be read alone. */
  readonly prompt: ElementContent[];
  /** Letters of the right options; empty for a written answer. */
  readonly letters: readonly string[];
  /** The right options' texts, or the accepted spellings, the shown one first. */
  readonly answers: readonly ElementContent[][];
  /** In words a relief teacher can say aloud; empty when there is nothing to add. */
  readonly working: ElementContent[];
  readonly marks: number;
}

export interface KeyPaper {
  readonly group: string;
  readonly answers: readonly KeyAnswer[];
  readonly totalMarks: number;
}

/** A quiz, dealt: a paper and a key for each group, in the same order. */
export interface QuizSheet {
  readonly title: string;
  /** 1-based among the lesson's quizzes. */
  readonly number: number;
  readonly minutes?: number;
  readonly papers: readonly LearnerPaper[];
  readonly key: readonly KeyPaper[];
}
