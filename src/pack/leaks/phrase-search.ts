/** A search for many phrases at once. */
export interface PhraseSearch {
  /** Calls back for each phrase that stands in a row of words, with its index and the place of its first word. */
  find(words: readonly string[], found: (phrase: number, at: number) => void): void;
}

interface Candidate {
  readonly phrase: number;
  /** Numbers of the words. */
  readonly words: readonly number[];
  /** Place in the phrase of the pair of words that it is looked up by. */
  readonly pairAt: number;
}

/** More than any text has different words; two numbers below it make one that is exact. */
const MOST_WORDS = 2 ** 26;

/**
 * Prepares a search: the words of the phrases get numbers, and each phrase is looked up by the pair of neighbouring
 * words in it that are met last, and so in few others. A text is then read once, however many phrases there are.
 * @param phrases Folded words as `splitWords` gives them; an empty phrase is never found.
 */
export function createPhraseSearch(phrases: readonly (readonly string[])[]): PhraseSearch {
  const numbers = new Map<string, number>();
  const singles = new Map<number, number[]>();
  const pairs = new Map<number, Candidate[]>();
  phrases.forEach((phrase, index) => {
    const words = phrase.map((word) => numberWord(word, numbers));
    const [first] = words;
    if (first === undefined) return;
    const pairAt = findRarestPair(words);
    if (words.length === 1) push(singles, first, index);
    else push(pairs, keyOf(words[pairAt] ?? 0, words[pairAt + 1] ?? 0), { phrase: index, words, pairAt });
  });
  return {
    find(words, found) {
      let before = -1;
      for (let at = 0; at < words.length; at += 1) {
        const number = numbers.get(words[at] ?? '') ?? -1;
        if (number >= 0) {
          const alone = singles.get(number);
          if (alone !== undefined) for (const phrase of alone) found(phrase, at);
          const candidates = before < 0 ? undefined : pairs.get(keyOf(before, number));
          if (candidates !== undefined) findCandidates(candidates, words, at - 1, numbers, found);
        }
        before = number;
      }
    },
  };
}

function numberWord(word: string, numbers: Map<string, number>): number {
  const known = numbers.get(word) ?? numbers.size;
  numbers.set(word, known);
  return known;
}

function push<Value>(map: Map<number, Value[]>, key: number, value: Value): void {
  const there = map.get(key);
  if (there === undefined) map.set(key, [value]);
  else there.push(value);
}

function keyOf(first: number, second: number): number {
  return first * MOST_WORDS + second;
}

/** Words that came late are in few phrases before. */
function findRarestPair(words: readonly number[]): number {
  let best = 0;
  for (let at = 1; at < words.length - 1; at += 1) {
    if (sumPair(words, at) > sumPair(words, best)) best = at;
  }
  return best;
}

function sumPair(words: readonly number[], at: number): number {
  return (words[at] ?? 0) + (words[at + 1] ?? 0);
}

/** @param pairAt Where the pair that the candidates share stands in the text. */
function findCandidates(
  candidates: readonly Candidate[],
  text: readonly string[],
  pairAt: number,
  numbers: ReadonlyMap<string, number>,
  found: (phrase: number, at: number) => void,
): void {
  for (const { phrase, words, pairAt: offset } of candidates) {
    const start = pairAt - offset;
    if (start >= 0 && words.every((word, index) => numbers.get(text[start + index] ?? '') === word)) {
      found(phrase, start);
    }
  }
}
