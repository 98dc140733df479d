import type { ElementContent } from 'hast';
import type { Almanac } from '../calendar/almanac-types.ts';
import type { CivilDate } from '../calendar/rules.ts';
import type { SourcePlace } from '../content/diagnostic.ts';
import type { Labels } from '../content/labels.ts';
import type { Calendar, GestureSet, School } from '../content/types.ts';
import type { Level } from './questions/question-instance.ts';
import type { ComputedKind } from './questions/question-kinds.ts';

/** What a marker overlooks in a written answer; the key states it. White space at the ends never counts. */
export interface Forgiveness {
  /** Capital and small letters are taken as the same. */
  readonly case: boolean;
  /** Letters with and without marks (macrons and other accents) are taken as the same. */
  readonly accents: boolean;
}

/** What an author may give with any handwritten question. Texts are sanitised hast. */
interface WrittenCommon {
  readonly place: SourcePlace;
  readonly marks?: number;
  readonly prompt: ElementContent[];
  /** How to find the answer, for the teacher to say aloud. */
  readonly working?: string;
  /** What the teacher may say to a group that is stuck; key only. */
  readonly hint?: string;
}

/** One option of a handwritten choice. */
export interface WrittenOption {
  readonly content: ElementContent[];
  readonly right: boolean;
  /** Of a wrong one: what it means when a group chooses it; key only. */
  readonly means?: ElementContent[];
}

/** One line of a marking rubric. */
export interface RubricRow {
  readonly marks: number;
  /** What earns the marks. */
  readonly words: string;
}

/** A handwritten question, before papers are dealt. Its right answer agrees with the calendar where `check` was given. */
export type WrittenSource = WrittenCommon &
  (
    | { readonly kind: 'choice'; readonly options: readonly WrittenOption[] }
    | {
        readonly kind: 'short';
        /** Accepted spellings; the first is the one the key shows. */
        readonly answers: readonly string[];
        readonly forgive: Forgiveness;
      }
    | { readonly kind: 'order' /** In the right order. */; readonly items: readonly ElementContent[][] }
    | {
        readonly kind: 'match';
        /** Headings of the two columns. */
        readonly headings: readonly [left: ElementContent[], right: ElementContent[]];
        readonly pairs: readonly MatchedPair[];
      }
    | {
        readonly kind: 'open';
        /** Lines to write on. */
        readonly lines: number;
        /** From the most marks to the fewest; the first one's marks are the question's. */
        readonly rubric: readonly RubricRow[];
      }
    | {
        readonly kind: 'draw';
        /** The Moon as it should be drawn, made when asked for, a new tree each time. */
        readonly renderDrawing: () => ElementContent[];
        /** The same in words. */
        readonly description: string;
      }
  );

/** Two things that belong together. */
export interface MatchedPair {
  readonly left: ElementContent[];
  readonly right: ElementContent[];
}

/** A computed question as the author asked for it. */
export interface ComputedSource {
  readonly kind: 'computed';
  readonly place: SourcePlace;
  readonly marks?: number;
  readonly hint?: string;
  readonly ask: ComputedKind;
  /** Absent: any level, the same for all groups where there is enough to ask. */
  readonly level?: Level;
  /** Dates asked about lie between these, both included; absent: those of the facts. */
  readonly within?: { readonly from: CivilDate; readonly to: CivilDate };
  /** Only about the night with this place in the run. */
  readonly night?: number;
  /** Only about the night of this date. */
  readonly on?: CivilDate;
}

export type QuestionSource = WrittenSource | ComputedSource;

/** What computed questions are asked about. */
export interface QuizFacts {
  readonly almanac: Almanac;
  readonly calendar: Calendar;
  readonly gestures: GestureSet;
  readonly school: School;
  readonly labels: Labels;
  /** The date of the lesson; "tonight" in questions. */
  readonly today: CivilDate;
  /** Dates asked about lie between these, both included. */
  readonly from: CivilDate;
  readonly to: CivilDate;
  /** Dates whose night the learners have on paper already. */
  readonly toldDates: ReadonlySet<CivilDate>;
}

/** Something with a letter before it, as printed: A, B, C … */
export interface LetteredContent {
  readonly letter: string;
  readonly content: ElementContent[];
}

/** Where a learner answers. Holds nothing that tells right from wrong. */
export type AnswerSpace =
  /** Boxes to tick. */
  | { readonly kind: 'options'; readonly several: boolean; readonly options: readonly LetteredContent[] }
  /** A line to write on. `unit` is a word after it, such as "nights". */
  | { readonly kind: 'line'; readonly unit?: string }
  /** Lettered items, shuffled; the letters are written in order on as many places. */
  | { readonly kind: 'order'; readonly items: readonly LetteredContent[] }
  /** Numbered things, and lettered ones, shuffled, one for each; a letter is written beside each number. */
  | {
      readonly kind: 'match';
      readonly headings: readonly [left: ElementContent[], right: ElementContent[]] | undefined;
      readonly left: readonly ElementContent[][];
      readonly right: readonly LetteredContent[];
    }
  /** Lines for an open answer. */
  | { readonly kind: 'lines'; readonly lines: number }
  /** An empty disc in which the Moon is drawn. */
  | { readonly kind: 'disc' };

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

/** What earns the marks, for the teacher. Letters are those of the group's own paper. */
export type ExpectedAnswer =
  | {
      readonly kind: 'options';
      /** As on the paper. */
      readonly options: readonly KeyOption[];
    }
  | {
      readonly kind: 'line';
      /** Accepted spellings, the shown one first. */
      readonly accepted: readonly ElementContent[][];
      readonly forgive: Forgiveness;
      readonly unit?: string;
      /** Wrong answers to be expected, and what each means. */
      readonly slips: readonly Slip[];
    }
  | { readonly kind: 'order' /** In the right order. */; readonly items: readonly LetteredContent[] }
  | {
      readonly kind: 'match';
      /** In the order of the numbers on the paper. */
      readonly pairs: readonly { readonly left: ElementContent[]; readonly right: LetteredContent }[];
    }
  | { readonly kind: 'lines'; readonly rubric: readonly RubricRow[] }
  | { readonly kind: 'disc'; readonly drawing: ElementContent[]; readonly description: string };

export interface KeyOption extends LetteredContent {
  readonly right: boolean;
  /** Of a wrong one: what it means when a group chooses it; empty where nothing is known. */
  readonly means: ElementContent[];
}

/** A wrong answer to be expected on a line, and what it means. */
export interface Slip {
  readonly answer: string;
  readonly means: ElementContent[];
}

/** The answer to one question of one paper, for the teacher. */
export interface KeyAnswer {
  readonly number: number;
  /** The question once more, so that the key can be read alone. */
  readonly prompt: ElementContent[];
  readonly expected: ExpectedAnswer;
  /** In words a relief teacher can say aloud; empty when there is nothing to add. */
  readonly working: ElementContent[];
  /** For a group that is stuck; absent where there is none. */
  readonly hint?: string;
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
