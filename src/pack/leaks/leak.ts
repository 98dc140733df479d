import type { Severity, SourcePlace } from '../../content/diagnostic.ts';

/** Something in a file for learners that must not be there. */
export interface Leak {
  readonly severity: Severity;
  /** Offset in the file: of a character in a text, of a byte in any other file. */
  readonly at: number;
  readonly message: string;
  /** Place in the author's own file, where it comes from there. */
  readonly related?: SourcePlace;
}
