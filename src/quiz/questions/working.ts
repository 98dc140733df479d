import type { ElementContent } from 'hast';
import { fillLabel } from '../../content/fill-label.ts';
import { renderName } from '../../content/render-name.ts';
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

/** A sentence for each name that is passed over. */
export function renderMissing(facts: QuizFacts, missing: readonly { readonly name: string }[]): ElementContent[][] {
  return missing.map(({ name }) =>
    fillLabel(facts.labels, 'quiz-working-not-reached', { night: renderNight(facts, name) }),
  );
}

/** The name of a night, group or month as the content of a sentence, in the calendar's language. */
export function renderNight(facts: QuizFacts, name: string): ElementContent[] {
  return [renderName(name, facts.calendar.language)];
}

/** Plain words as content. */
export function renderText(value: string): ElementContent[] {
  return [{ type: 'text', value }];
}
