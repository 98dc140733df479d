import { describe, expect, it } from 'vitest';
import { openLibrary } from '../../src/content/open-library.ts';
import { checkAlikeGestures } from '../../src/lesson/check-alike-gestures.ts';

const TEXT = `title: G
gestures:
  reach: { left: "open at above head, palm front, fingers up", cue: Reach., seated: Reach. }
  low: { right: "fist at low, palm in, fingers front", cue: Hang., seated: Hang. }
  reach-again: { left: "open at above head, palm front, fingers up", cue: Again., seated: Again. }
`;

function open(text: string) {
  const gestures = [{ path: 'gestures/demo.yaml', text }];
  return openLibrary({ calendars: [], schools: [], gestures, questions: [], labels: [] });
}

describe('checkAlikeGestures', () => {
  it('warns at the second of two gestures that look alike, and names both', () => {
    expect(checkAlikeGestures(open(TEXT), 'demo')).toEqual([
      {
        rule: 'gestures-alike',
        severity: 'warning',
        place: { file: 'gestures/demo.yaml', line: 5, column: 3 },
        message:
          '`gestures.reach-again`: found a gesture that looks like `reach` when it is drawn, expected gestures that a class can tell apart; change a hand, its place or the move of one.',
        found: 'reach-again',
        related: { file: 'gestures/demo.yaml', line: 3, column: 3 },
      },
    ]);
  });

  it('gives the same findings again, as the same objects', () => {
    const library = open(TEXT);
    expect(checkAlikeGestures(library, 'demo')).toBe(checkAlikeGestures(library, 'demo'));
  });

  it('has nothing to say of a file that is not there or has an error', () => {
    expect(checkAlikeGestures(open(TEXT), 'other')).toEqual([]);
    expect(checkAlikeGestures(open(TEXT.replace('fist', 'fits')), 'demo')).toEqual([]);
  });
});
