import type { SourcePlace } from '../../content/diagnostic.ts';
import type { ResolveContext } from '../definition.ts';

/** Reports a fault in the questions of a group quiz. */
export function reportQuestion(
  { report }: Pick<ResolveContext, 'report'>,
  place: SourcePlace,
  found: string,
  expected: string,
  advice: string,
): void {
  report({
    rule: 'quiz-question',
    severity: 'error',
    place,
    message: `Found ${found}; expected ${expected}; ${advice}`,
    found,
    expected,
  });
}
