/**
 * Andika by SIL International (SIL Open Font License 1.1), a typeface made for early readers, comes in files by
 * range of characters. The ranges are those of the package `@fontsource/andika` 5.3.0, as its `unicode.json` lists them.
 */
export const FONT_RANGES = {
  latin:
    'U+0000-00FF,U+0131,U+0152-0153,U+02BB-02BC,U+02C6,U+02DA,U+02DC,U+0304,U+0308,U+0329,U+2000-206F,U+20AC,U+2122,U+2191,U+2193,U+2212,U+2215,U+FEFF,U+FFFD',
  'latin-ext':
    'U+0100-02BA,U+02BD-02C5,U+02C7-02CC,U+02CE-02D7,U+02DD-02FF,U+0304,U+0308,U+0329,U+1D00-1DBF,U+1E00-1E9F,U+1EF2-1EFF,U+2020,U+20A0-20AB,U+20AD-20C0,U+2113,U+2C60-2C7F,U+A720-A7FF',
  vietnamese:
    'U+0102-0103,U+0110-0111,U+0128-0129,U+0168-0169,U+01A0-01A1,U+01AF-01B0,U+0300-0301,U+0303-0304,U+0308-0309,U+0323,U+0329,U+1EA0-1EF9,U+20AB',
  cyrillic: 'U+0301,U+0400-045F,U+0490-0491,U+04B0-04B1,U+2116',
  'cyrillic-ext': 'U+0460-052F,U+1C80-1C8A,U+20B4,U+2DE0-2DFF,U+A640-A69F,U+FE2E-FE2F',
} as const;

export type FontRange = keyof typeof FONT_RANGES;

const RANGE_NAMES = Object.keys(FONT_RANGES) as FontRange[];

/** The ranges that a text needs, in a fixed order. */
export function listFontRanges(text: string): FontRange[] {
  const ranges = new Set([...new Set(text)].map(findRange));
  return RANGE_NAMES.filter((range) => ranges.has(range));
}

/** The characters of a text that are taken from a range, each once, in order of code points. */
export function listCharactersOf(text: string, range: FontRange): string {
  return [...new Set(text)]
    .filter((character) => findRange(character) === range)
    .sort()
    .join('');
}

/** Ranges overlap: a character is taken from the first that holds it. Nothing for one that no range holds. */
function findRange(character: string): FontRange | undefined {
  return RANGE_NAMES.find((range) => requirePattern(range).test(character));
}

const patterns = new Map<FontRange, RegExp>();

function requirePattern(range: FontRange): RegExp {
  const known = patterns.get(range);
  if (known !== undefined) return known;
  const parts = FONT_RANGES[range].split(',').map((part) => part.replace('U+', '').split('-'));
  const toEscape = (hex: string | undefined) => `\\u{${hex}}`;
  const body = parts
    .map(([from, to]) => (to === undefined ? toEscape(from) : `${toEscape(from)}-${toEscape(to)}`))
    .join('');
  const pattern = new RegExp(`[${body}]`, 'u');
  patterns.set(range, pattern);
  return pattern;
}
