/** References to characters that are no letters and stand in names that an author's tools write. */
const NAMED: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
  nbsp: ' ',
  ensp: ' ',
  emsp: ' ',
  thinsp: ' ',
  Tab: ' ',
  NewLine: ' ',
  aelig: 'æ',
  AElig: 'Æ',
  oelig: 'œ',
  OElig: 'Œ',
  szlig: 'ß',
  oslash: 'ø',
  Oslash: 'Ø',
  inodot: 'i',
  imath: 'i',
};

/** Names of invisible characters, by which a word could be split. */
const UNSEEN_NAMES: ReadonlySet<string> = new Set([
  'shy',
  'zwnj',
  'zwj',
  'lrm',
  'rlm',
  'ZeroWidthSpace',
  'NegativeThinSpace',
  'NoBreak',
]);

/** `eacute`, `Amacr`, `ccedil`: a letter and its mark, which the search overlooks anyway. */
const MARKED_LETTER =
  /^([A-Za-z])(?:acute|grave|circ|uml|tilde|ring|cedil|macr|caron|breve|ogon|dot|dblac|slash|strok|midot)/;

/**
 * Resolves the character references of HTML: numbers, the names of Latin letters and of the characters that split
 * words. Any other name that ends in a semicolon is that of a sign, and becomes a space.
 */
export function decodeReferences(text: string): string {
  if (!text.includes('&')) return text;
  return text.replace(
    /&(?:#[xX]([0-9a-fA-F]{1,6})|#(\d{1,7})|([A-Za-z][A-Za-z0-9]*));?/g,
    (all: string, hex: string | undefined, decimal: string | undefined, name: string | undefined) => {
      if (hex !== undefined) return readCodePoint(Number.parseInt(hex, 16));
      if (decimal !== undefined) return readCodePoint(Number.parseInt(decimal, 10));
      return readName(name ?? '') ?? (all.endsWith(';') ? ' ' : all);
    },
  );
}

function readName(name: string): string | undefined {
  if (Object.hasOwn(NAMED, name)) return NAMED[name];
  if (UNSEEN_NAMES.has(name)) return '';
  // Old names count without their semicolon too: letters that follow then are text.
  return MARKED_LETTER.test(name) ? name.replace(MARKED_LETTER, '$1') : undefined;
}

function readCodePoint(code: number): string {
  return code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : ' ';
}

/** Resolves the escapes of strings in scripts and JSON (`\u0041`, `\x41`, `\u{41}`) and in style sheets (`\41 `). */
export function decodeEscapes(text: string): string {
  if (!text.includes('\\')) return text;
  return text.replace(
    /\\(?:u\{([0-9a-fA-F]{1,6})\}|u([0-9a-fA-F]{4})|x([0-9a-fA-F]{2})|([0-9a-fA-F]{1,6})[ \n]?|\r?\n|([nrtvf])|([\s\S]))/g,
    (_all, ...groups: (string | undefined)[]) => {
      const [braced, four, two, css, blank, plain] = groups;
      const hex = braced ?? four ?? two ?? css;
      if (hex !== undefined) return readCodePoint(Number.parseInt(hex, 16));
      return blank === undefined ? (plain ?? '') : ' ';
    },
  );
}

const UTF8 = new TextDecoder('utf-8');

/** Resolves percent-coding, as in addresses; undefined where there is none. */
export function decodePercents(text: string): string | undefined {
  if (!/%[0-9a-fA-F]{2}/.test(text)) return undefined;
  return text.replace(/(?:%[0-9a-fA-F]{2})+/g, (run) => UTF8.decode(Uint8Array.from(run.slice(1).split('%'), readHex)));
}

function readHex(digits: string): number {
  return Number.parseInt(digits, 16);
}

/** Twelve letters hold nine bytes: no shorter text is told from chance. */
const BASE64_RUN = /[A-Za-z0-9+/_-]{12,}={0,2}/g;

/** Such a run has a capital behind a small letter or a digit, as few words have. */
const MIXED = /[a-z0-9][A-Z]/;

/** Whether a text on a page may hold another in percent-coding or base64. */
export function mayBeCoded(text: string): boolean {
  return /%[0-9a-fA-F]{2}/.test(text) || (MIXED.test(text) && /[A-Za-z0-9+/_-]{12}/.test(text));
}

/** What every run of a text that may be base64 decodes to. */
export function findBase64(text: string): Uint8Array[] {
  if (!MIXED.test(text)) return [];
  return (text.match(BASE64_RUN) ?? []).flatMap((run) => (MIXED.test(run) ? (decodeBase64(run) ?? []) : []));
}

function decodeBase64(run: string): Uint8Array | undefined {
  const plain = run.replace(/=+$/, '').replaceAll('-', '+').replaceAll('_', '/');
  if (plain.length % 4 === 1) return undefined;
  return Uint8Array.from(atob(plain), (letter) => letter.charCodeAt(0));
}
