import type { SourcePlace } from '../../content/diagnostic.ts';
import type { ResolveContext } from '../definition.ts';

/** Reports a fault in the questions of a group quiz. */
export function reportQuestion(
  context: ResolveContext,
  place: SourcePlace,
  found: string,
  expected: string,
  advice: string,
): void {
  context.report({
    rule: 'quiz-question',
    severity: 'error',
    place,
    message: `Found ${found}; expected ${expected}; ${advice}`,
    found,
    expected,
  });
}
