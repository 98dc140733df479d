/** Every kind of finding the kit reports to an author; the authors' reference explains each. */
export type RuleId =
  | 'text-encoding'
  | 'yaml-syntax'
  | 'unknown-key'
  | 'missing-key'
  | 'wrong-value'
  | 'repeated-name'
  | 'unknown-reference'
  | 'observation'
  | 'missing-file'
  | 'media-file'
  | 'gestures-alike'
  | 'front-matter'
  | 'nesting'
  | 'directive-syntax'
  | 'directive-unclosed'
  | 'directive-unknown'
  | 'directive-place'
  | 'attribute-unknown'
  | 'attribute-repeated'
  | 'attribute-missing'
  | 'attribute-value'
  | 'label-missing'
  | 'html-left-out'
  | 'link-broken'
  | 'step-minutes'
  | 'quiz-question'
  | 'date-range'
  | 'output-changed'
  | 'learner-leak';

/** `error`: the lesson cannot be published. `warning`: it can, but should change. `info`: worth knowing. */
export type Severity = 'error' | 'warning' | 'info';

/** A place in an author's file; lines and columns count from 1, columns in UTF-16 code units. */
export interface SourcePlace {
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

/** One finding about an author's file. Author mistakes are diagnostics; mistakes of the kit are thrown. */
export interface Diagnostic {
  readonly rule: RuleId;
  readonly severity: Severity;
  readonly place: SourcePlace;
  /** One line in plain words: what was unexpected, what was expected, what to do. Values in backticks. */
  readonly message: string;
  /** What was found, and what was expected, for programs; absent where there is no such pair. */
  readonly found?: string;
  readonly expected?: string;
  /** A second place that explains the first, such as the first of two equal names. */
  readonly related?: SourcePlace;
}

/** Where findings go; the caller decides the exit status after all of them are in. */
export type Report = (diagnostic: Diagnostic) => void;
