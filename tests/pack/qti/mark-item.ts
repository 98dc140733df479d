import type { XmlElement } from '@rgrove/parse-xml';
import { findAll, findOne, listChildren, requireAttribute } from './read-xml.ts';

/** What a learner answers: texts, in order; none for no answer. */
export type Answer = readonly string[];

/** A value of the standard: single values in a container, or nothing. */
type Value = readonly (string | number | boolean)[];

/** The outcomes of an item by name. */
export type Outcomes = ReadonlyMap<string, Value>;

const NOTHING: Value = [];

/**
 * Marks an answer as an assessment tool does: by the declarations and rules that stand in an item, and nothing else.
 * Written from the standard's words, from memory (1EdTech, QTI 3.0 Assessment, Section and Item, on response processing),
 * and only for the operators that our items use; any other throws.
 */
export function markItem(item: XmlElement, response: Answer): Outcomes {
  const outcomes = new Map<string, Value>();
  for (const declaration of findAll(item, 'qti-outcome-declaration')) {
    const values = findAll(declaration, 'qti-value').map(({ text }) => Number(text));
    outcomes.set(requireAttribute(declaration, 'identifier'), values);
  }
  for (const processing of findAll(item, 'qti-response-processing')) {
    for (const rule of listChildren(processing)) runRule(rule, { item, response, outcomes });
  }
  return outcomes;
}

/** The marks that an answer earns. */
export function scoreOf(item: XmlElement, response: Answer): number {
  return Number(markItem(item, response).get('SCORE')?.[0]);
}

interface Run {
  readonly item: XmlElement;
  readonly response: Answer;
  readonly outcomes: Map<string, Value>;
}

function runRule(rule: XmlElement, run: Run): void {
  if (rule.name === 'qti-set-outcome-value') {
    run.outcomes.set(requireAttribute(rule, 'identifier'), evaluate(requireFirst(rule), run));
    return;
  }
  if (rule.name !== 'qti-response-condition') throw new Error(`The rule ${rule.name} is not known.`);
  for (const branch of listChildren(rule)) {
    const parts = listChildren(branch);
    const isElse = branch.name === 'qti-response-else';
    // A condition without a value counts as false.
    if (!isElse && evaluate(requireFirst(branch), run)[0] !== true) continue;
    for (const inner of isElse ? parts : parts.slice(1)) runRule(inner, run);
    return;
  }
}

function evaluate(expression: XmlElement, run: Run): Value {
  const inside = () => listChildren(expression).map((child) => evaluate(child, run));
  switch (expression.name) {
    case 'qti-variable':
      return readVariable(requireAttribute(expression, 'identifier'), run);
    case 'qti-correct':
      return findAll(findOne(run.item, 'qti-correct-response'), 'qti-value').map(({ text }) => text);
    case 'qti-base-value':
      return [expression.attributes['base-type'] === 'float' ? Number(expression.text) : expression.text];
    case 'qti-map-response':
      return [mapResponse(run)];
    case 'qti-is-null':
      return [inside()[0]?.length === 0];
    case 'qti-match':
      return compare(inside(), run);
    case 'qti-string-match':
      return matchStrings(inside(), expression.attributes['case-sensitive'] === 'true');
    case 'qti-or':
      return [inside().some(([value]) => value === true)];
    case 'qti-index':
      return (inside()[0] ?? NOTHING).slice(Number(expression.attributes['n']) - 1, Number(expression.attributes['n']));
    case 'qti-truncate':
      return [Math.trunc(Number(inside()[0]?.[0]))];
    case 'qti-sum':
    case 'qti-product':
    case 'qti-divide':
      return compute(expression.name, inside().flat());
    default:
      throw new Error(`The operator ${expression.name} is not known.`);
  }
}

function readVariable(name: string, { response, outcomes }: Run): Value {
  if (name === 'RESPONSE') return response;
  const value = outcomes.get(name);
  if (value === undefined) throw new Error(`The variable ${name} is not declared.`);
  return value;
}

/** Each value counts once, however often it stands in the container; then the bounds are kept. */
function mapResponse({ item, response }: Run): number {
  const mapping = findOne(item, 'qti-mapping');
  const entries = findAll(mapping, 'qti-map-entry');
  const sum = [...new Set(response)]
    .map((value) => {
      const entry = entries.find((each) => {
        const [key, exact] = [requireAttribute(each, 'map-key'), each.attributes['case-sensitive'] === 'true'];
        return exact ? key === value : key.toLowerCase() === value.toLowerCase();
      });
      return Number(
        entry === undefined ? mapping.attributes['default-value'] : requireAttribute(entry, 'mapped-value'),
      );
    })
    .reduce((total, value) => total + value, 0);
  const lower = mapping.attributes['lower-bound'];
  const upper = mapping.attributes['upper-bound'];
  const raised = lower === undefined ? sum : Math.max(Number(lower), sum);
  return upper === undefined ? raised : Math.min(Number(upper), raised);
}

/** Containers that are ordered match in order, others in any. */
function compare([one = NOTHING, other = NOTHING]: Value[], { item }: Run): Value {
  if (one.length === 0 || other.length === 0) return NOTHING;
  const ordered = findOne(item, 'qti-response-declaration').attributes['cardinality'] !== 'multiple';
  const list = (value: Value) => JSON.stringify(ordered ? value : [...value].sort());
  return [list(one) === list(other)];
}

function matchStrings([[one] = NOTHING, [other] = NOTHING]: Value[], exact: boolean): Value {
  if (one === undefined || other === undefined) return NOTHING;
  return [exact ? one === other : String(one).toLowerCase() === String(other).toLowerCase()];
}

function compute(operator: string, values: Value): Value {
  const numbers = values.map(Number);
  if (operator === 'qti-sum') return [numbers.reduce((sum, value) => sum + value, 0)];
  if (operator === 'qti-product') return [numbers.reduce((product, value) => product * value, 1)];
  const [dividend = Number.NaN, divisor = 0] = numbers;
  return divisor === 0 ? NOTHING : [dividend / divisor];
}

function requireFirst(element: XmlElement): XmlElement {
  const [first] = listChildren(element);
  if (first === undefined) throw new Error(`${element.name} is empty.`);
  return first;
}
