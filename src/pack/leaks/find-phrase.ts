/**
 * The places where a phrase stands in a row of words, in order; none for an empty phrase.
 * @param from The first word that counts. @param to The word after the last that counts.
 */
export function* findPhrase(
  words: readonly string[],
  phrase: readonly string[],
  from = 0,
  to = words.length,
): Generator<number> {
  const [first] = phrase;
  if (first === undefined) return;
  for (let at = words.indexOf(first, from); at !== -1 && at + phrase.length <= to; at = words.indexOf(first, at + 1)) {
    if (phrase.every((word, index) => words[at + index] === word)) yield at;
  }
}

/** How often a phrase stands in a row of words. */
export function countPhrase(words: readonly string[], phrase: readonly string[]): number {
  return [...findPhrase(words, phrase)].length;
}
