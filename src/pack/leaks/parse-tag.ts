import { decodeReferences } from './decode-text.ts';

/** An attribute with its value decoded. */
export interface MarkupAttribute {
  readonly name: string;
  readonly value: string;
  /** Where its name begins, counted from the `<` of its tag. */
  readonly offset: number;
}

/** A start tag as written: the same for all elements that are written the same. */
export interface MarkupTag {
  /** Name in small letters. */
  readonly name: string;
  /** Without those of drawings that hold nothing but numbers and colours. */
  readonly attributes: readonly MarkupAttribute[];
  /** Whether an attribute, or its being a template, keeps it from being shown. */
  readonly hides: boolean;
  readonly selfClosing: boolean;
}

const ATTRIBUTE = /([^\s=/"'][^\s=/]*)(?:\s*=\s*(?:"([^"]*)"|'([^']*)'|([^\s"'][^\s]*)))?/g;

/** Numbers with single letters between them, a colour, or a word that every drawing uses. */
const DRAWING_VALUE =
  '(?:[a-zA-Z]?[-+\\d\\s.,]*(?:[zZ]?[a-zA-Z][-+\\d\\s.,]+)*[zZ]?|#[0-9a-fA-F]{3,8}|none|round|butt|stroke|evenodd|(?:translate|scale|rotate|matrix)\\([-+\\d\\s.,e]*\\))';
const DRAWING_NAME =
  '(?:d|[xyr]|[xy][12]|[cr][xy]|d[xy]|fx|fy|width|height|points|transform|viewBox|fill|stroke|(?:fill|stroke|paint)-[a-z]+|opacity|offset|pathLength)';

/** The attributes of an element that is nothing but drawn. */
const DRAWING = new RegExp(`^(?:\\s+${DRAWING_NAME}="${DRAWING_VALUE}")*\\s*/?$`);

/** Reads a start tag. @param written What stands between `<` and `>`. */
export function parseTag(written: string): MarkupTag {
  const nameEnd = written.search(/[\s/]/);
  const name = (nameEnd === -1 ? written : written.slice(0, nameEnd)).toLowerCase();
  const rest = nameEnd === -1 ? '' : written.slice(nameEnd);
  const attributes = rest === '' || DRAWING.test(rest) ? [] : parseAttributes(rest, nameEnd + 1);
  return { name, attributes, hides: name === 'template' || attributes.some(hides), selfClosing: rest.endsWith('/') };
}

function parseAttributes(text: string, offset: number): MarkupAttribute[] {
  return [...text.matchAll(ATTRIBUTE)].map(({ 1: name = '', 2: double, 3: single, 4: bare, index }) => ({
    name: name.toLowerCase(),
    value: decodeReferences(double ?? single ?? bare ?? ''),
    offset: offset + index,
  }));
}

function hides({ name, value }: MarkupAttribute): boolean {
  if (name === 'hidden') return true;
  return (
    name === 'style' && /display\s*:\s*none|visibility\s*:\s*hidden|opacity\s*:\s*0|font-size\s*:\s*0/i.test(value)
  );
}
