/** Longer words are not compared: nobody mistypes them by a letter or two, and the cost grows with the square. */
const LONGEST_COMPARED = 64;

/** Upper and lower case, accents and ways of encoding them are no difference. */
function foldWord(word: string): string {
  return word.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
}

/**
 * Number of letters to insert, drop, change or swap with a neighbour to make one word the other (Damerau's distance in
 * its "optimal string alignment" form: no part is edited twice). Counts UTF-16 code units.
 */
export function countEdits(from: string, to: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, column) => column);
  for (let row = 1; row <= from.length; row++) {
    const current = [row];
    for (let column = 1; column <= to.length; column++) {
      const same = from[row - 1] === to[column - 1];
      let edits = Math.min(
        (last[column] ?? 0) + 1,
        (current[column - 1] ?? 0) + 1,
        (last[column - 1] ?? 0) + (same ? 0 : 1),
      );
      const swapped = row > 1 && column > 1 && from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1];
      if (swapped) edits = Math.min(edits, (beforeLast[column - 2] ?? 0) + 1);
      current.push(edits);
    }
    beforeLast = last;
    last = current;
  }
  return last[to.length] ?? 0;
}

/** A word cut short, such as `wed` for `wednesday`, when it can only be one. */
function findByBeginning(word: string, candidates: readonly string[]): string | undefined {
  const matches = word.length < 3 ? [] : candidates.filter((candidate) => foldWord(candidate).startsWith(word));
  return matches.length === 1 ? matches[0] : undefined;
}

/**
 * The candidate an author most likely meant, or nothing when none is close: at most one edit in three letters, three
 * edits at the most, or else the beginning (three letters or more) of one of them alone. Of equally close ones the
 * first is taken.
 */
export function findNearMiss(found: string, candidates: readonly string[]): string | undefined {
  const word = foldWord(found);
  if (word === '' || word.length > LONGEST_COMPARED) return undefined;
  let best: string | undefined;
  let fewest = Math.min(3, Math.max(1, Math.floor(word.length / 3))) + 1;
  for (const candidate of candidates) {
    const other = foldWord(candidate);
    if (Math.abs(other.length - word.length) >= fewest) continue;
    const edits = countEdits(word, other);
    if (edits >= fewest || edits >= other.length) continue;
    best = candidate;
    fewest = edits;
  }
  return best ?? findByBeginning(word, candidates);
}
