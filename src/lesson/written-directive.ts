import type { Root } from 'mdast';
import { type Directives, directiveFromMarkdown } from 'mdast-util-directive';

/** A place in the text of a lesson: line and column from 1, offset from 0, in UTF-16 code units. */
interface SourcePoint {
  readonly line: number;
  readonly column: number;
  readonly offset: number;
}

/** One attribute as written, repeats included. */
export interface WrittenAttribute {
  /** The name; for the short forms the whole text, such as `.wide` or `#first`. */
  readonly name: string;
  readonly nameAt: SourcePoint;
  /** The value with character references decoded; empty when there is none. */
  value: string;
  /** Where the value begins, inside its quotes; absent when no value is written. */
  valueAt?: SourcePoint;
  /** Offset just after the value, before a closing quote. */
  valueEnd?: number;
  quoted: boolean;
}

/** What the tree of Markdown does not tell about a directive as written. */
export interface WrittenSyntax {
  attributes: WrittenAttribute[];
  /** Colons of the opening fence of a container; 0 for the other forms. */
  colons: number;
  /** Where the label's opening bracket stands; absent without a label. */
  labelAt?: SourcePoint;
  /** Where the closing fence of a container begins; absent when it has none. */
  closingAt?: SourcePoint;
  /**
   * Set by the check of syntax when name or attributes are not what the author meant, which it has reported: the values
   * are not worth checking.
   */
  misread?: boolean;
}

declare module 'mdast-util-directive' {
  interface ContainerDirectiveData {
    written?: WrittenSyntax;
  }
  interface LeafDirectiveData {
    written?: WrittenSyntax;
  }
  interface TextDirectiveData {
    written?: WrittenSyntax;
  }
}

declare module 'mdast' {
  interface RootData {
    /** Every link reference definition of the document, in order. */
    definitions?: Definition[];
  }
}

/** What tells the builder of Markdown trees about directives. */
export type TreeExtension = ReturnType<typeof directiveFromMarkdown>;
type Handles = NonNullable<TreeExtension['exit']>;
type Handle = NonNullable<Handles[string]>;
type Context = ThisParameterType<Handle>;
type Token = Parameters<Handle>[0];

/** How the directive was written, attributes with their places among it. */
export function readWrittenSyntax(node: Directives): WrittenSyntax {
  node.data ??= {};
  node.data.written ??= { attributes: [], colons: 0 };
  return node.data.written;
}

/** Turns directives into nodes of the tree, and notes in each one's `data.written` how it was written. */
export function createWrittenDirectives(): TreeExtension {
  const extension = directiveFromMarkdown();
  const exit: Handles = { ...extension.exit, definition: noteDefinition };
  const add = (name: string, note: (context: Context, token: Token) => void): void => {
    const handle = exit[name];
    exit[name] = function (token) {
      handle?.call(this, token);
      note(this, token);
    };
  };
  for (const form of ['directiveContainer', 'directiveLeaf', 'directiveText']) {
    add(`${form}AttributeName`, noteName);
    add(`${form}AttributeId`, noteName);
    add(`${form}AttributeClass`, noteName);
    add(`${form}AttributeValue`, noteValue);
    add(`${form}AttributeValueLiteral`, noteQuotes);
    add(`${form}Label`, noteLabel);
  }
  add('directiveContainerSequence', noteFence);
  return { ...extension, exit };
}

/** The directive being read: on top of the stack, or just under the text that its attributes are collected in. */
function requireDirective({ stack }: Context): Directives {
  for (const node of [stack[stack.length - 1], stack[stack.length - 2]]) {
    if (node?.type === 'containerDirective' || node?.type === 'leafDirective' || node?.type === 'textDirective') {
      return node;
    }
  }
  throw new Error('Part of a directive outside a directive');
}

function noteName(context: Context, token: Token): void {
  const name = context.sliceSerialize(token);
  readWrittenSyntax(requireDirective(context)).attributes.push({
    name,
    nameAt: copyPoint(token.start),
    value: '',
    quoted: false,
  });
}

function noteValue(context: Context, token: Token): void {
  const attribute = readWrittenSyntax(requireDirective(context)).attributes.at(-1);
  if (attribute === undefined) return;
  // The library's own handler ran before and has decoded the value.
  attribute.value = context.data.directiveAttributes?.at(-1)?.[1] ?? '';
  attribute.valueAt = copyPoint(token.start);
  attribute.valueEnd = token.end.offset;
}

function noteQuotes(context: Context, token: Token): void {
  const attribute = readWrittenSyntax(requireDirective(context)).attributes.at(-1);
  if (attribute === undefined) return;
  attribute.quoted = true;
  attribute.valueAt ??= copyPoint(token.start);
  attribute.valueEnd ??= token.end.offset;
}

function noteLabel(context: Context, token: Token): void {
  readWrittenSyntax(requireDirective(context)).labelAt = copyPoint(token.start);
}

/** The first run of colons of a container opens it, the second one closes it. */
function noteFence(context: Context, token: Token): void {
  const written = readWrittenSyntax(requireDirective(context));
  if (written.colons === 0) written.colons = token.end.offset - token.start.offset;
  else written.closingAt = copyPoint(token.start);
}

const noteDefinition: Handle = function (token) {
  const node = this.stack[this.stack.length - 1];
  const root = this.stack[0] as Root; // The bottom of the stack is always the document.
  if (node?.type === 'definition') {
    root.data ??= {};
    root.data.definitions ??= [];
    root.data.definitions.push(node);
  }
  this.exit(token);
};

function copyPoint({ line, column, offset }: Token['start']): SourcePoint {
  return { line, column, offset };
}
