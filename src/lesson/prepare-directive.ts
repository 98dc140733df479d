import type { Directives } from 'mdast-util-directive';
import type { Diagnostic } from '../content/diagnostic.ts';
import { findNearMiss } from '../content/near-miss.ts';
import { checkAttributes, writeDirectiveName } from '../directives/check-attributes.ts';
import type {
  CheckedValues,
  Directive,
  ReadyDirective,
  ResolveContext,
  WrittenDirective,
} from '../directives/definition.ts';
import { DIRECTIVES } from './directive-registry.ts';
import type { NumberedDirective } from './number-directives.ts';

/** A directive as the author wrote it, with the checked values of its attributes. */
export interface Reading {
  readonly written: WrittenDirective;
  readonly values: CheckedValues;
}

/** Directives of a lesson by their nodes: as read, and ready to be drawn. */
export interface Resolution {
  readonly readings: Map<Directives, Reading>;
  readonly ready: Map<Directives, ReadyDirective>;
}

const BY_NAME: ReadonlyMap<string, Directive> = new Map(DIRECTIVES.map((directive) => [directive.name, directive]));

/** Checks and resolves one directive into `resolution`; what is wrong with it is reported, and it is then left out. */
export function prepareDirective(
  { node, written, around, inLabel }: NumberedDirective,
  context: ResolveContext,
  { readings, ready }: Resolution,
): void {
  // Its syntax was found wrong and reported: what it holds is not what the author meant.
  if (node.data?.written?.misread === true) return;
  const directive = BY_NAME.get(written.name);
  if (directive === undefined) {
    context.report(describeUnknown(written));
    return;
  }
  const misplaced = inLabel ? describeInLabel(written, around) : findMisplacement(written, directive, around);
  if (misplaced !== undefined) context.report(misplaced);
  const values = checkAttributes(written, directive, context, context.report);
  if (values === undefined || misplaced !== undefined) return;
  readings.set(node, { written, values });
  const prepared = directive.prepare(written, values, context);
  if (prepared !== undefined) ready.set(node, prepared);
}

function describeUnknown({ name, form, place }: WrittenDirective): Diagnostic {
  const found = writeDirectiveName(name, form);
  const known = DIRECTIVES.filter(({ forms }) => forms.includes(form)).map((each) => each.name);
  const near = findNearMiss(name, known) ?? findNearMiss(name, [...BY_NAME.keys()]);
  const nearForms = BY_NAME.get(near ?? '')?.forms ?? [];
  const nearForm = nearForms.includes(form) ? form : nearForms[0];
  const advice =
    near === undefined || nearForm === undefined
      ? 'see the list of directives'
      : `did you mean \`${writeDirectiveName(near, nearForm)}\`?`;
  const expected = known.map((each) => `\`${each}\``).join(', ');
  const message = `\`${found}\` is not a directive; expected one of ${expected}; ${advice}`;
  return { rule: 'directive-unknown', severity: 'error', place, message, found, expected };
}

/** What stands in square brackets becomes a title or an answer as plain text; a directive there would be lost. */
function describeInLabel({ name, form, place }: WrittenDirective, around: readonly string[]): Diagnostic {
  const found = writeDirectiveName(name, form);
  const expected = 'plain words';
  const message = `\`${found}\` stands in the square brackets of \`${around.at(-1) ?? ''}\`; expected ${expected}; write the words themselves`;
  return { rule: 'directive-place', severity: 'error', place, message, found, expected };
}

function findMisplacement(
  { name, form, place }: WrittenDirective,
  { inside, notInside }: Directive,
  around: readonly string[],
): Diagnostic | undefined {
  const found = writeDirectiveName(name, form);
  const outer = around.find((each) => notInside?.includes(each));
  const common = { rule: 'directive-place', severity: 'error', place, found } as const;
  if (outer !== undefined) {
    const expected = `a place outside \`:::${outer}\``;
    return {
      ...common,
      expected,
      message: `\`${found}\` stands inside \`:::${outer}\`; expected ${expected}; move it out`,
    };
  }
  if (inside === undefined || inside.some((each) => around.includes(each))) return undefined;
  const expected = inside.map((each) => `\`:::${each}\``).join(' or ');
  return {
    ...common,
    expected,
    message: `\`${found}\` stands by itself; expected it inside ${expected}; move it there`,
  };
}
