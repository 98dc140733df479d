/** Longest piece of an author's text repeated in a message, in UTF-16 code units. */
const LONGEST_QUOTED = 60;

/** A value for a message: in backticks, on one line, cut when long. */
export function quote(text: string): string {
  const line = text
    .replace(/\s+/g, ' ')
    .replaceAll('`', "'")
    .replace(/[\p{Cc}\p{Cs}]/gu, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`);
  const cut = line.length > LONGEST_QUOTED ? `${line.slice(0, LONGEST_QUOTED).replace(/[\uD800-\uDBFF]$/, '')}…` : line;
  return `\`${cut}\``;
}

/** What may stand somewhere, for a message: "one of `a`, `b`", or "`a`" when there is only one. */
export function describeChoice(words: readonly string[]): string {
  const quoted = words.map(quote).join(', ');
  return words.length === 1 ? quoted : `one of ${quoted}`;
}

/** A path for people: `groups[1].nights[2].name`, places in lists counted from 1. */
export function describePath(path: readonly (string | number)[]): string {
  const text = path.map((part) => (typeof part === 'number' ? `[${part + 1}]` : `.${part}`)).join('');
  return quote(text.replace(/^\./, ''));
}

/** What an author wrote, for a message. */
export function describeFound(value: unknown): string {
  if (value === undefined || value === null) return 'nothing';
  if (typeof value === 'string') return value.trim() === '' ? 'empty text' : quote(value);
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  if (typeof value !== 'object') return `the ${typeof value === 'number' ? 'number' : 'word'} ${quote(String(value))}`;
  const keys = Object.keys(value);
  return keys.length === 0 ? 'no keys' : `${keys.length === 1 ? 'the key' : 'the keys'} ${keys.map(quote).join(', ')}`;
}
