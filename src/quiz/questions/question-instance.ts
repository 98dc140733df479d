import type { ElementContent } from 'hast';
import type { Distractor } from '../distractors.ts';
import type { Hardness } from '../even-band.ts';
import type { QuizFacts } from '../model.ts';

/**
 * One question that the calendar answers, of the many of its kind. Most of them are never dealt, so trees and wrong
 * options are made when asked for, new ones each time.
 */
export type QuestionInstance = {
  /** The fact asked for, such as which night a date is; equal for no two instances of a kind. */
  readonly asks: string;
  /** Facts that the question's own words give away; another question of the same paper should not ask for them. */
  readonly tells: readonly string[];
  readonly hardness: Hardness;
  renderPrompt(): ElementContent[];
} & (
  | {
      readonly kind: 'choice';
      /** Name of the right night. */
      readonly right: string;
      /** Whole sets of wrong options, at least one, none empty; one set goes into a paper. */
      listWrongSets(): readonly (readonly Distractor[])[];
      /** For the teacher: why the right one is right, and what each of the wrong ones stands for. */
      renderWorking(wrong: readonly Distractor[]): ElementContent[];
    }
  | {
      readonly kind: 'line';
      /** Word after the line, the same whatever the answer is. */
      readonly unit: string;
      writeAnswer(): string;
      renderWorking(): ElementContent[];
    }
);

/** All questions of one kind that the facts allow, in a fixed order. */
export type ListInstances = (facts: QuizFacts) => QuestionInstance[];

/** The fact that a date is a certain night, for `asks` and `tells`. */
export function nameNightFact(date: string): string {
  return `night of ${date}`;
}
