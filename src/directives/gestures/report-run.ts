import { findNearMiss } from '../../content/near-miss.ts';
import type { NightSelectionFault } from '../../rhythm/select-nights.ts';
import type { ResolveContext, WrittenDirective } from '../definition.ts';

const WORDS = ['all', 'up-to-tonight', 'this-week', 'months', 'months-then-nights'] as const;

/** What `nights` takes, for messages and the authors' reference. */
export const EXPECTED_NIGHTS =
  '`all`, `up-to-tonight`, `this-week`, `months`, `months-then-nights`, the name of a group or a night, or `First night..Last night`';

/** Reports a `nights` attribute that does not say which nights. */
export function reportSelection(
  written: WrittenDirective,
  nights: string,
  fault: NightSelectionFault,
  { almanac, report }: ResolveContext,
): void {
  const known = [...almanac.run.flatMap(({ name, group }) => [name, group]), ...WORDS];
  const name = fault.kind === 'unknown-name' ? fault.name : nights;
  const near = fault.kind === 'unknown-name' ? (fault.hint ?? findNearMiss(fault.name, known)) : undefined;
  const what =
    fault.kind === 'unknown-name'
      ? `\`${name}\` is not a night or a group of the calendar`
      : `\`${nights}\` does not say which nights`;
  report({
    rule: 'attribute-value',
    severity: 'error',
    place: written.attributePlace('nights'),
    message: `${what}; expected ${EXPECTED_NIGHTS}; ${near === undefined ? 'mend `nights`' : `did you mean \`${near}\`?`}`,
    found: nights,
    expected: EXPECTED_NIGHTS,
  });
}

/** Reports a recording that the gestures file does not have. */
export function reportRecording(
  written: WrittenDirective,
  recording: string,
  { gestures, report }: ResolveContext,
): void {
  const known = Object.keys(gestures.recordings);
  const near = findNearMiss(recording, known);
  const expected = known.length === 0 ? 'a name under `recordings`' : known.map((name) => `\`${name}\``).join(', ');
  const advice =
    known.length === 0
      ? `the gestures file \`${gestures.id}\` has no recordings: add it there, or take \`recording\` out`
      : near === undefined
        ? 'mend the name'
        : `did you mean \`${near}\`?`;
  report({
    rule: 'attribute-value',
    severity: 'error',
    place: written.attributePlace('recording'),
    message: `\`${recording}\` is not a recording of a run; expected ${expected}; ${advice}`,
    found: recording,
    expected,
  });
}

/** Reports a tempo beside a recording, which keeps its own. */
export function reportTwoTempi(
  written: WrittenDirective,
  tempo: number,
  recordedTempo: number,
  { report }: ResolveContext,
): void {
  report({
    rule: 'attribute-value',
    severity: 'error',
    place: written.attributePlace('tempo'),
    message: `\`tempo\` stands beside \`recording\`, which keeps \`${recordedTempo}\` beats a minute; expected one of the two; take \`tempo\` out`,
    found: String(tempo),
    expected: String(recordedTempo),
  });
}
