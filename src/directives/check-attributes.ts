import type { Diagnostic, RuleId, SourcePlace } from '../content/diagnostic.ts';
import { findNearMiss } from '../content/near-miss.ts';
import type {
  AttributeSchema,
  CheckedValues,
  DirectiveForm,
  DirectiveSyntax,
  ResolveContext,
  WrittenDirective,
} from './definition.ts';

const FORM_MARKS: Readonly<Record<DirectiveForm, string>> = { text: ':', leaf: '::', container: ':::' };

type Known = Pick<ResolveContext, 'almanac' | 'dates'>;
type Fault = Omit<Diagnostic, 'severity'>;

/**
 * Holds a directive as written against its syntax: form, label, and each attribute's name, presence and value.
 * Every fault is reported at its own place. Returns the values, typed by their schemas, or undefined after any fault.
 */
export function checkAttributes(
  written: WrittenDirective,
  syntax: DirectiveSyntax,
  known: Known,
  report: (diagnostic: Diagnostic) => void,
): CheckedValues | undefined {
  const faults = [...findFormFaults(written, syntax), ...findNameFaults(written, syntax)];
  const values: Record<string, string | number> = {};
  for (const [name, schema] of Object.entries(syntax.attributes)) {
    const text = written.attributes[name];
    if (text === undefined) {
      if (schema.required === true) faults.push(describeMissing(written, name, schema));
      continue;
    }
    const value = parseValue(text.normalize('NFC').trim(), schema, known);
    if (typeof value === 'object') faults.push(describeValue(written, name, text, value));
    else values[name] = value;
  }
  for (const fault of faults) report({ severity: 'error', ...fault });
  return faults.length === 0 ? values : undefined;
}

/** How a directive is written in one of its forms, for messages: `::tonight`. */
export function writeDirectiveName(name: string, form: DirectiveForm): string {
  return `${FORM_MARKS[form]}${name}`;
}

function findFormFaults(written: WrittenDirective, syntax: DirectiveSyntax): Fault[] {
  const faults: Fault[] = [];
  const found = writeDirectiveName(written.name, written.form);
  if (!syntax.forms.includes(written.form)) {
    const expected = syntax.forms.map((form) => `\`${writeDirectiveName(written.name, form)}\``).join(' or ');
    faults.push(
      fault(
        'directive-place',
        written.place,
        `\`${found}\` is not a way to write this directive`,
        found,
        expected,
        `write ${expected}`,
      ),
    );
  }
  if (syntax.label.use === 'none' && written.label !== '') {
    faults.push(
      fault(
        'directive-syntax',
        written.place,
        `\`${found}\` takes no text in square brackets`,
        `[${written.label}]`,
        'no text',
        'take the brackets out',
      ),
    );
  }
  if (syntax.label.use === 'required' && written.label === '') {
    faults.push(
      fault(
        'directive-syntax',
        written.place,
        `\`${found}\` has no text in square brackets`,
        'nothing',
        syntax.label.about ?? 'a text',
        `write \`${found}[…]\``,
      ),
    );
  }
  return faults;
}

function findNameFaults(written: WrittenDirective, syntax: DirectiveSyntax): Fault[] {
  const names = Object.keys(syntax.attributes);
  return Object.keys(written.attributes)
    .filter((name) => !names.includes(name))
    .map((name) => {
      const near = findNearMiss(name, names);
      const advice =
        near !== undefined ? `did you mean \`${near}\`?` : names.length > 0 ? 'take it out' : 'take the braces out';
      return fault(
        'attribute-unknown',
        written.attributePlace(name),
        `\`${name}\` is not an attribute of \`${written.name}\``,
        name,
        names.length > 0 ? names.map((each) => `\`${each}\``).join(', ') : 'no attributes',
        advice,
      );
    });
}

function describeMissing(written: WrittenDirective, name: string, schema: AttributeSchema): Fault {
  return fault(
    'attribute-missing',
    written.place,
    `\`${written.name}\` has no \`${name}\``,
    'nothing',
    schema.about,
    `write \`${writeDirectiveName(written.name, written.form)}{${name}=…}\``,
  );
}

function describeValue(written: WrittenDirective, name: string, found: string, wrong: WrongValue): Fault {
  const empty = found.trim() === '';
  const advice = empty ? 'write it, or take the attribute out' : 'mend the value';
  return fault(
    'attribute-value',
    written.attributePlace(name),
    empty
      ? `\`${name}\` in \`${written.name}\` is empty`
      : `\`${found}\` is not a value of \`${name}\` in \`${written.name}\``,
    found,
    wrong.expected,
    wrong.near !== undefined ? `did you mean \`${wrong.near}\`?` : advice,
  );
}

function fault(rule: RuleId, place: SourcePlace, what: string, found: string, expected: string, advice: string): Fault {
  return { rule, place, message: `${what}; expected ${expected}; ${advice}`, found, expected };
}

interface WrongValue {
  readonly expected: string;
  readonly near?: string | undefined;
}

function parseValue(text: string, schema: AttributeSchema, known: Known): string | number | WrongValue {
  switch (schema.type) {
    case 'text':
      return text === '' ? { expected: schema.about } : text;
    case 'integer':
      return parseInteger(text, schema.min, schema.max);
    case 'choice':
      return parseOneOf(text, schema.values);
    case 'day':
      return parseOneOf(text, [...known.dates.keys()], 'a day of this week: ');
    case 'night':
      return parseNight(text, known);
  }
}

function parseInteger(text: string, min: number, max: number): number | WrongValue {
  const value = /^\d{1,9}$/.test(text) ? Number(text) : Number.NaN;
  return value >= min && value <= max ? value : { expected: `a whole number from ${min} to ${max}` };
}

function parseOneOf(text: string, values: readonly string[], lead = 'one of '): string | WrongValue {
  if (values.includes(text)) return text;
  return { expected: lead + values.map((value) => `\`${value}\``).join(', '), near: findNearMiss(text, values) };
}

function parseNight(text: string, { almanac }: Known): string | WrongValue {
  const names = almanac.run.map((night) => night.name);
  if (names.includes(text)) return text;
  return { expected: 'the name of a night of the calendar', near: findNearMiss(text, names) };
}
