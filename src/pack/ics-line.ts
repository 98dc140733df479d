/** Most octets of a content line, its line end left out: RFC 5545, section 3.1. */
const MOST_OCTETS = 75;

/** Octets of a code point in UTF-8. */
function countOctets(codePoint: number): number {
  if (codePoint < 0x80) return 1;
  if (codePoint < 0x800) return 2;
  return codePoint < 0x10000 ? 3 : 4;
}

/** A letter with the marks that belong to it, so that no line ends between them. */
const LETTER_WITH_MARKS = /\P{M}(?:\p{M}|\u200D)*|\p{M}+/gsu;

/**
 * Folds a content line into lines of at most 75 octets, joined by CR LF and a space; no character is cut, and a letter
 * keeps its marks as long as they fit in a line with it. The last line end is left to the writer.
 */
export function foldIcsLine(line: string): string {
  const folded: string[] = [];
  let current = '';
  let octets = 0;
  for (const letter of listPieces(line)) {
    const more = measure(letter);
    if (octets + more > MOST_OCTETS) {
      folded.push(current);
      current = ' ';
      octets = 1;
    }
    current += letter;
    octets += more;
  }
  folded.push(current);
  return folded.join('\r\n');
}

function measure(text: string): number {
  let octets = 0;
  for (const character of text) octets += countOctets(character.codePointAt(0) ?? 0);
  return octets;
}

/** Letters with their marks; where somebody piles marks without end, one character after another. */
function* listPieces(line: string): Generator<string> {
  for (const [letter] of line.matchAll(LETTER_WITH_MARKS)) {
    if (measure(letter) < MOST_OCTETS) yield letter;
    else yield* letter;
  }
}

/** A value of type TEXT: RFC 5545, section 3.3.11. Control characters have no place there and go. */
export function escapeIcsText(text: string): string {
  return text
    .replace(/[\\;,]/g, '\\$&')
    .replace(/\r\n|\r|\n/g, '\\n')
    .replace(/[^\P{Cc}\t]/gu, '');
}
