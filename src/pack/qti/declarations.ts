import { type XmlElement, xmlElement } from './xml-element.ts';

/** How many values a variable has, as the standard words it. */
export type Cardinality = 'single' | 'multiple' | 'ordered';

/** What a variable's values are, as the standard words it. */
export type BaseType = 'identifier' | 'directedPair' | 'string' | 'float' | 'file';

/** Names of the variables of an item. SCORE and MAXSCORE are those that tools look for. */
export const RESPONSE = 'RESPONSE';
export const SCORE = 'SCORE';
export const MAX_SCORE = 'MAXSCORE';
export const FEEDBACK = 'FEEDBACK';

/** What a response is, and what is known of right ones. */
export interface ResponseFacts {
  readonly cardinality: Cardinality;
  readonly baseType: BaseType;
  /** The right response; empty where a person decides. */
  readonly correct: readonly string[];
  /** What single values are worth; absent where nothing is added up. */
  readonly mapping?: ResponseMapping;
}

/** What single values of a response are worth, before they are added up. All others are worth nothing. */
export interface ResponseMapping {
  readonly entries: readonly MapEntry[];
  readonly caseSensitive?: boolean;
  /** The sum is never less; no such bound when absent. */
  readonly lowerBound?: number;
}

/** What one value is worth. */
export interface MapEntry {
  readonly key: string;
  readonly value: number;
}

/** Declares what an item asks for. */
export function declareResponse({ cardinality, baseType, correct, mapping }: ResponseFacts): XmlElement {
  return xmlElement('qti-response-declaration', { identifier: RESPONSE, cardinality, 'base-type': baseType }, [
    ...(correct.length === 0 ? [] : [xmlElement('qti-correct-response', {}, correct.map(declareValue))]),
    ...(mapping === undefined ? [] : [declareMapping(mapping)]),
  ]);
}

function declareMapping({ entries, caseSensitive, lowerBound }: ResponseMapping): XmlElement {
  return xmlElement(
    'qti-mapping',
    { 'lower-bound': lowerBound, 'default-value': 0 },
    entries.map(({ key, value }) =>
      xmlElement('qti-map-entry', { 'map-key': key, 'mapped-value': value, 'case-sensitive': caseSensitive }),
    ),
  );
}

/** Declares the marks of an item: what was reached, from nothing, and what can be reached. */
export function declareScore(marks: number, markedBy: 'machine' | 'human'): XmlElement[] {
  const numbers = { cardinality: 'single', 'base-type': 'float' };
  const limits = { 'normal-maximum': marks, 'normal-minimum': 0 };
  const byHand = { 'external-scored': markedBy === 'human' ? 'human' : undefined };
  return [
    declareOutcome({ identifier: SCORE, ...numbers, ...limits, ...byHand }, 0),
    declareOutcome({ identifier: MAX_SCORE, ...numbers }, marks),
  ];
}

/** Declares an outcome that is a number. @param attributes all of them, the name among them */
function declareOutcome(attributes: Readonly<Record<string, string | number | undefined>>, value: number): XmlElement {
  return xmlElement('qti-outcome-declaration', attributes, [
    xmlElement('qti-default-value', {}, [declareValue(String(value))]),
  ]);
}

/** Declares which texts of feedback an answer brings: none to begin with. */
export function declareFeedback(cardinality: Cardinality): XmlElement {
  return xmlElement('qti-outcome-declaration', { identifier: FEEDBACK, cardinality, 'base-type': 'identifier' });
}

/** Declares the sum of a variable of all items of a test. */
export function declareTotal(identifier: string): XmlElement {
  return declareOutcome({ identifier, cardinality: 'single', 'base-type': 'float' }, 0);
}

function declareValue(value: string): XmlElement {
  return xmlElement('qti-value', {}, [value]);
}
