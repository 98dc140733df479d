import { findNearMiss } from '../content/near-miss.ts';
import type { NightSelectionFault } from '../rhythm/select-nights.ts';
import type { ResolveContext, WrittenDirective } from './definition.ts';

/** What a `nights` attribute takes, for messages and the authors' reference, where it knows these words beside names. */
export function describeNights(words: readonly string[]): string {
  return `${words.map((word) => `\`${word}\``).join(', ')}, the name of a group or a night, or \`First night..Last night\``;
}

/** Reports a `nights` attribute that does not say which nights. */
export function reportNights(
  written: WrittenDirective,
  nights: string,
  fault: NightSelectionFault,
  words: readonly string[],
  { almanac, report }: ResolveContext,
): void {
  const known = [...almanac.run.flatMap(({ name, group }) => [name, group]), ...words];
  const name = fault.kind === 'unknown-name' ? fault.name : nights;
  // The hint may be a word that this directive does not know: it would lead nowhere.
  const hint = fault.kind === 'unknown-name' && known.includes(fault.hint ?? '') ? fault.hint : undefined;
  const near = fault.kind === 'unknown-name' ? (hint ?? findNearMiss(name, known)) : undefined;
  const what =
    fault.kind === 'unknown-name'
      ? `\`${name}\` is not a night or a group of the calendar`
      : `\`${nights}\` does not say which nights`;
  const expected = describeNights(words);
  report({
    rule: 'attribute-value',
    severity: 'error',
    place: written.attributePlace('nights'),
    message: `${what}; expected ${expected}; ${near === undefined ? 'mend `nights`' : `did you mean \`${near}\`?`}`,
    found: nights,
    expected,
  });
}
