import type { ErrorCode } from 'yaml';

/** What each kind of YAML fault means and what to do, in plain words. */
const SENTENCES: Readonly<Partial<Record<ErrorCode, string>>> = {
  BAD_ALIAS: 'Unexpected `*` at the start of a value, expected plain text; put the text in quotes.',
  BAD_COLLECTION_TYPE: 'Unexpected `!` tag, expected a plain value; remove the tag or put the text in quotes.',
  BAD_DIRECTIVE: 'Unexpected `%` line, expected a key and its value; remove the line or put the text in quotes.',
  BAD_DQ_ESCAPE: 'Unexpected `\\` in double quotes, expected plain text; write `\\\\` or use single quotes.',
  BAD_INDENT:
    'Unexpected indent, expected this line to stand under its neighbours, with every bracket closed; line it up or close the bracket.',
  BAD_SCALAR_START:
    'Unexpected sign at the start of a value, expected a letter, a digit or a quote; put the text in quotes.',
  BLOCK_AS_IMPLICIT_KEY:
    'Unexpected `: ` inside a value, expected one value on a line; put the text in quotes or line up the key with its neighbours.',
  BLOCK_IN_FLOW: 'Unexpected line inside brackets, expected a value and a comma; close the bracket first.',
  KEY_OVER_1024_CHARS: 'Unexpected key of more than 1024 characters, expected a short word; put the text in quotes.',
  MISSING_CHAR: 'Expected a closing quote, bracket, comma or a space after `:`; add what is missing.',
  MULTILINE_IMPLICIT_KEY:
    'Unexpected key over several lines, expected `key: value` on one line; add the missing `:` or put the text in quotes.',
  MULTIPLE_DOCS: 'Unexpected `---`, expected one document in a file; remove what stands from here on.',
  RESOURCE_EXHAUSTION: 'Unexpected depth of brackets or lists, expected a few levels; close them.',
  TAB_AS_INDENT: 'Unexpected tab at the start of a line, expected spaces; replace the tab by spaces.',
  TAG_RESOLVE_FAILED: 'Unexpected `!` tag, expected a plain value; remove the tag or put the text in quotes.',
  UNEXPECTED_TOKEN:
    'Unexpected text after a value, expected the line to end; put the whole value in quotes or start a new line.',
};

/** One plain sentence for a fault of the YAML reader; `detail` is the reader's own wording, for kinds without a sentence of ours. */
export function describeYamlFault(code: ErrorCode, detail: string): string {
  return (
    SENTENCES[code] ?? `Unexpected YAML here: ${detail.split('\n')[0]?.replace(/[.:]$/, '')}; put the text in quotes.`
  );
}
