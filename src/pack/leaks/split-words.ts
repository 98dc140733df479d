const NOT_ASCII = /[\u0080-\uffff]/;

/** What a reader does not see: accents (after decomposition), soft hyphens, joiners, marks of direction, selectors. */
const UNSEEN = /[\u0300-\u036f]|[\u00ad\u061c\u180e\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]|[\ufe00-\ufe0f]/g;

/** Letters other than Latin ones, which need the slower division. */
const OTHER_SCRIPTS = /[\u0250-\u1dff\u2c00-\uffff]/;

/** Scripts that are written without spaces: each of their characters counts as a word. */
const UNSPACED =
  '\\p{Script=Han}\\p{Script=Hiragana}\\p{Script=Katakana}\\p{Script=Thai}\\p{Script=Lao}\\p{Script=Khmer}\\p{Script=Myanmar}';

const ANY_WORD = new RegExp(`[${UNSPACED}]|(?:(?![${UNSPACED}])[\\p{L}\\p{M}\\p{N}])+`, 'gu');

/**
 * A text as words, so that the same words are found however they are written: capitals, accents, ways of encoding,
 * soft hyphens, punctuation and white space make no difference.
 * @param runMark A character that counts as a word of its own, to tell where a run of text ends.
 */
export function splitWords(text: string): string[] {
  if (!NOT_ASCII.test(text)) return text.toLowerCase().match(/[a-z0-9]+/g) ?? [];
  const plain = text.normalize('NFKD').replace(UNSEEN, '').toLowerCase();
  // Latin letters that do not decompose (ß, æ, ø, ł …) are letters too.
  if (!OTHER_SCRIPTS.test(plain)) return plain.match(/[a-z0-9\u00df-\u024f\u1e00-\u1eff]+/g) ?? [];
  return plain.match(ANY_WORD) ?? [];
}
