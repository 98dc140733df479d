import type { ElementContent } from 'hast';
import { fillLabel } from '../../content/fill-label.ts';
import { renderName } from '../../content/render-name.ts';
import type { Distractor, DistractorReason } from '../distractors.ts';
import type { QuizFacts } from '../model.ts';

/** Sentences one after the other, a space between; empty ones are left out. */
export function joinSentences(sentences: readonly ElementContent[][]): ElementContent[] {
  return joinContent(
    sentences.filter((sentence) => sentence.length > 0),
    ' ',
  );
}

/** Parts one after the other with a text between. */
export function joinContent(parts: readonly ElementContent[][], between: string): ElementContent[] {
  return parts.flatMap((part, place) => (place === 0 ? part : [{ type: 'text', value: between }, ...part]));
}

const REASON_LABELS = {
  'too-early': 'quiz-working-too-early',
  'too-late': 'quiz-working-too-late',
  mirror: 'quiz-working-mirror',
  'not-reached': 'quiz-working-not-reached',
} as const satisfies Record<DistractorReason, string>;

/** A sentence for each wrong option: what slip it stands for. */
export function renderReasons(facts: QuizFacts, wrong: readonly Distractor[]): ElementContent[][] {
  return wrong.map(({ name, reason }) =>
    fillLabel(facts.labels, REASON_LABELS[reason], { night: renderNight(facts, name) }),
  );
}

/** The name of a night or month as the content of a sentence, in the calendar's language. */
export function renderNight(facts: QuizFacts, name: string): ElementContent[] {
  return [renderName(name, facts.calendar.language)];
}
