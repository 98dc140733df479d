import type { ElementContent } from 'hast';
import type { CivilDate } from '../../calendar/rules.ts';
import type { Hardness } from '../even-band.ts';
import type { Forgiveness, MatchedPair, QuizFacts, Slip } from '../model.ts';

/** How hard a question is for those who know the names: 1 look it up, 2 count or compare, 3 mind a trap as well. */
export type Level = 1 | 2 | 3;

/** A wrong option, and what it means when a group chooses it. */
export interface WrongOption {
  readonly content: ElementContent[];
  readonly means: ElementContent[];
}

/**
 * One question that the calendar answers, of the many of its kind. Most of them are never dealt, so trees and wrong
 * options are made when asked for, new ones each time.
 */
export type QuestionInstance = {
  /**
   * The fact asked for, such as which night a date is; the same on whichever level it is asked, so that no paper asks for
   * it twice, and equal for no two instances of one level of a kind.
   */
  readonly asks: string;
  /** Facts that the question's own words give away; another question of the same paper should not ask for them. */
  readonly tells: readonly string[];
  readonly level: Level;
  readonly hardness: Hardness;
  /** What it is about, for an author who asks about one night or date: places in the run, and dates; may be empty. */
  readonly about: { readonly nights: readonly number[]; readonly dates: readonly CivilDate[] };
  renderPrompt(): ElementContent[];
  /** For the teacher, in words to say aloud: why the right answer is right. */
  renderWorking(): ElementContent[];
} & (
  | {
      readonly kind: 'choice';
      renderRight(): ElementContent[];
      /** Whole sets of wrong options, at least one, none empty; one set goes into a paper. */
      listWrongSets(): readonly (readonly WrongOption[])[];
    }
  | {
      readonly kind: 'line';
      /** Word after the line, the same whatever the answer is. */
      readonly unit?: string;
      readonly forgive: Forgiveness;
      /** Accepted spellings, the shown one first. */
      listAnswers(): readonly (readonly ElementContent[])[];
      /** Wrong answers to be expected; none of them is accepted. */
      listSlips(): readonly Slip[];
    }
  | {
      readonly kind: 'order';
      /** In the right order; no two alike. */
      renderItems(): readonly ElementContent[][];
    }
  | {
      readonly kind: 'match';
      /** No two alike on either side. */
      renderPairs(): readonly MatchedPair[];
    }
);

/** A kind of computed question: its file is all there is of it, but for a line in the registry. */
export interface QuestionKind {
  /** One line for the authors' reference: what is asked. */
  readonly about: string;
  /** What each level asks, for the authors' reference. */
  readonly levels: readonly [look: string, count: string, trap: string];
  /** All questions that the facts allow, in a fixed order; none where nothing can be asked. */
  list(facts: QuizFacts): QuestionInstance[];
}

/** The fact that a date is a certain night, for `asks` and `tells`. */
export function nameNightFact(date: string): string {
  return `night of ${date}`;
}
