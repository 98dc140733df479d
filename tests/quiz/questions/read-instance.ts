import type { ElementContent } from 'hast';
import { readText } from '../../../src/quiz/fold-text.ts';
import type { QuestionInstance } from '../../../src/quiz/questions/question-instance.ts';

export type ChoiceInstance = QuestionInstance & { readonly kind: 'choice' };
export type LineInstance = QuestionInstance & { readonly kind: 'line' };
export type MatchInstance = QuestionInstance & { readonly kind: 'match' };

/** The instances of a kind that has no other answers than these; throws for others. */
export function requireChoices(instances: readonly QuestionInstance[]): ChoiceInstance[] {
  return instances.map((instance) => {
    if (instance.kind !== 'choice') throw new Error(`${instance.asks} is no choice.`);
    return instance;
  });
}

export function requireLines(instances: readonly QuestionInstance[]): LineInstance[] {
  return instances.map((instance) => {
    if (instance.kind !== 'line') throw new Error(`${instance.asks} has no line.`);
    return instance;
  });
}

export function requireMatches(instances: readonly QuestionInstance[]): MatchInstance[] {
  return instances.map((instance) => {
    if (instance.kind !== 'match') throw new Error(`${instance.asks} is no match.`);
    return instance;
  });
}

/** What is read aloud of a tree: its text, and of a picture the words for it. */
export function readAloud(content: readonly ElementContent[]): string {
  return content
    .map((node) => {
      if (node.type !== 'element') return readText([node]);
      const { ariaLabel } = node.properties;
      return typeof ariaLabel === 'string' ? ariaLabel : readAloud(node.children);
    })
    .join('');
}

/** Ids, classes and other attributes of a tree that are neither words nor shapes. */
export function listIds(content: readonly ElementContent[]): unknown[] {
  return content.flatMap((node) =>
    node.type === 'element' ? [node.properties['id'], ...listIds(node.children)].filter((id) => id !== undefined) : [],
  );
}

/** Whether no two texts are the same to a reader. */
export function areAllDifferent(texts: readonly string[]): boolean {
  return new Set(texts.map((text) => text.toLowerCase().trim())).size === texts.length;
}
