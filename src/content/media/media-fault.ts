import type { SourcePlace } from '../diagnostic.ts';

/** Why a picture or sound file cannot be used as it is, in words that follow "the file …". */
export interface MediaFault {
  /** "holds a GIF picture". */
  readonly found: string;
  /** "an SVG, PNG or JPEG picture". */
  readonly expected: string;
  /** "save it as PNG". */
  readonly remedy: string;
  /** Where in a text file. */
  readonly place?: Pick<SourcePlace, 'line' | 'column'>;
}

/** Either what a file holds, or why it cannot be used. */
export type Parsed<Value> =
  | { readonly value: Value; readonly fault?: never }
  | { readonly fault: MediaFault; readonly value?: never };
