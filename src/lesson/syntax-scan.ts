import type { Diagnostic, RuleId, Severity, SourcePlace } from '../content/diagnostic.ts';
import { findNearMiss } from '../content/near-miss.ts';
import type { DirectiveForm, DirectiveSyntax } from '../directives/definition.ts';

/** What the check of syntax needs to know of a directive. */
export type KnownDirective = Pick<DirectiveSyntax, 'name' | 'forms'>;

/** The directives an author can write, by name, each with the forms it may take. */
export type KnownForms = ReadonlyMap<string, readonly DirectiveForm[]>;

/** What is wrong at one place of a lesson's text. */
export interface SyntaxFault {
  readonly rule: RuleId;
  readonly severity?: Severity;
  /** Offset in the text. */
  readonly at: number;
  readonly message: string;
  readonly found?: string;
  readonly expected?: string;
  /** Offset of a second place that explains the first. */
  readonly related?: number;
}

/** One walk over one lesson: what is known, what was found so far, and how far it was explained. */
export interface SyntaxScan {
  readonly source: string;
  readonly known: KnownForms;
  readonly faults: SyntaxFault[];
  /** Colons of the fences whose closing line will come out as plain text, because of a fault already reported. */
  readonly orphans: number[];
  /** Text before this offset belongs to a fault already reported. */
  skipTo: number;
}

/** The message of a fault: what was found, what was expected, what to do now. */
export function describeFault(what: string, expected: string, advice: string): string {
  return `${what}; expected ${expected}; ${advice}`;
}

/** Whether a name is known and may take a form. */
export function takesForm(known: KnownForms, name: string, form: DirectiveForm): boolean {
  return known.get(name)?.includes(form) ?? false;
}

/** The known name that an author most likely meant: the name itself, or a near miss; undefined when none is near. */
export function findMeant(known: KnownForms, name: string): string | undefined {
  return known.has(name) ? name : findNearMiss(name, [...known.keys()]);
}

/** How a directive is begun, in the first form it may take: `::tonight`, `:night{}`. */
export function writeExample(known: KnownForms, name: string): string {
  const form = known.get(name)?.[0];
  if (form === 'text') return `:${name}{}`;
  return form === 'container' ? `:::${name}` : `::${name}`;
}

/** Gives faults, which stand at offsets, their line and column. */
export function placeFaults(source: string, file: string, faults: readonly SyntaxFault[]): Diagnostic[] {
  if (faults.length === 0) return [];
  const starts = [0];
  for (const ending of source.matchAll(/\r\n?|\n/g)) starts.push(ending.index + ending[0].length);
  const findPlace = (offset: number): SourcePlace => {
    const after = starts.findIndex((start) => start > offset);
    const line = after === -1 ? starts.length : after;
    return { file, line, column: offset - (starts[line - 1] ?? 0) + 1 };
  };
  return faults
    .toSorted((one, other) => one.at - other.at)
    .map(({ at, related, severity = 'error', ...fault }) => ({
      ...fault,
      severity,
      place: findPlace(at),
      ...(related === undefined ? {} : { related: findPlace(related) }),
    }));
}
