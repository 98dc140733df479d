import { directive } from 'micromark-extension-directive';

/** What tells the tokenizer of Markdown about directives. */
export type SyntaxExtension = ReturnType<typeof directive>;

type ConstructRecord = NonNullable<SyntaxExtension['text']>;
type Construct = Exclude<NonNullable<ConstructRecord[string]>, unknown[]>;
type Tokenizer = Construct['tokenize'];
type State = ReturnType<Tokenizer>;

const COLON = 58;
const LEFT_SQUARE_BRACKET = 91;
const LEFT_CURLY_BRACE = 123;

/**
 * The syntax of directives with a narrower inline form: within a line a colon begins a directive only when one of
 * `inlineNames` follows it and `{` or `[` follows that, with nothing between. Every other colon ("9:30", "John 3:16",
 * "https://x.org:80", a bare ":night") is never read as a directive, so prose stays as written.
 * The forms that fill a line of their own are not narrowed: any name opens them.
 */
export function createDirectiveSyntax(inlineNames: Iterable<string>): SyntaxExtension {
  const syntax = directive();
  const inline = syntax.text?.[COLON];
  if (inline === undefined || Array.isArray(inline)) throw new Error('The directive syntax has no single inline form');
  const guard: Construct = { tokenize: createLookAhead(new Set(inlineNames)), partial: true };
  const tokenize: Tokenizer = function (effects, ok, nok) {
    return effects.check(guard, inline.tokenize.call(this, effects, ok, nok), nok);
  };
  return { ...syntax, text: { ...syntax.text, [COLON]: { ...inline, tokenize } } };
}

/** Reads a colon, a known name and an opening bracket; the caller takes back what was read. */
function createLookAhead(names: ReadonlySet<string>): Tokenizer {
  const longest = Math.max(0, ...[...names].map((name) => name.length));
  return (effects, ok, nok) => {
    let name = '';
    const readName: State = (code) => {
      if (code === LEFT_CURLY_BRACE || code === LEFT_SQUARE_BRACKET) {
        effects.exit('data');
        return names.has(name) ? ok(code) : nok(code);
      }
      // Line endings, tabs and the end of the text have negative codes or none.
      if (code === null || code < 0 || name.length === longest) return nok(code);
      name += String.fromCharCode(code);
      effects.consume(code);
      return readName;
    };
    return (code) => {
      // What is consumed must stand in a token; it is taken back with the rest.
      effects.enter('data');
      effects.consume(code);
      return readName;
    };
  };
}
