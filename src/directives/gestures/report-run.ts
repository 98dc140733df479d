import { findNearMiss } from '../../content/near-miss.ts';
import type { ResolveContext, WrittenDirective } from '../definition.ts';

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
