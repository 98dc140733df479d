import type { Diagnostic } from '../content/diagnostic.ts';
import type { OpenLibrary } from '../content/open-library.ts';
import type { GestureSet } from '../content/types.ts';
import { listAlikeGestures } from '../drawing/figure/figure.ts';

const found = new WeakMap<GestureSet, readonly Diagnostic[]>();

/**
 * Warns of gestures of a file that look alike when they are drawn, at the second of each two. The file's own faults
 * are told where it is opened. Asked again of the same file, gives the same objects.
 */
export function checkAlikeGestures(library: OpenLibrary, id: string): readonly Diagnostic[] {
  const gestures = library.findGestures(id);
  if (gestures === undefined) return [];
  const { set, placeOf } = gestures;
  const diagnostics = found.get(set) ?? listAlikeGestures(set).map((pair) => describePair(pair, placeOf));
  found.set(set, diagnostics);
  return diagnostics;
}

function describePair(
  { first, second }: { readonly first: string; readonly second: string },
  placeOf: (key: string) => Diagnostic['place'],
): Diagnostic {
  return {
    rule: 'gestures-alike',
    severity: 'warning',
    place: placeOf(second),
    message: `\`gestures.${second}\`: found a gesture that looks like \`${first}\` when it is drawn, expected gestures that a class can tell apart; change a hand, its place or the move of one.`,
    found: second,
    related: placeOf(first),
  };
}
