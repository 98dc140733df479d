import { RESPONSE, SCORE } from './declarations.ts';
import { type XmlElement, xmlElement } from './xml-element.ts';

/** The value of a variable. */
export function readVariable(identifier: string): XmlElement {
  return xmlElement('qti-variable', { identifier });
}

/** A number as it stands. */
export function writeNumber(value: number): XmlElement {
  return xmlElement('qti-base-value', { 'base-type': 'float' }, [String(value)]);
}

/** A name as it stands, such as that of an option. */
export function writeIdentifier(value: string): XmlElement {
  return xmlElement('qti-base-value', { 'base-type': 'identifier' }, [value]);
}

/** What the mapping of the response gives. */
const mapResponse: XmlElement = xmlElement('qti-map-response', { identifier: RESPONSE });

/** The rule that gives an outcome its value. */
export function setOutcome(identifier: string, expression: XmlElement): XmlElement {
  return xmlElement('qti-set-outcome-value', { identifier }, [expression]);
}

/** The rule for a condition; without it, nothing is done or what `otherwise` says. */
export function when(
  condition: XmlElement,
  then: readonly XmlElement[],
  otherwise: readonly XmlElement[] = [],
): XmlElement {
  return xmlElement('qti-response-condition', {}, [
    xmlElement('qti-response-if', {}, [condition, ...then]),
    ...(otherwise.length === 0 ? [] : [xmlElement('qti-response-else', {}, otherwise)]),
  ]);
}

/** True where two values are the same. */
export function isSame(one: XmlElement, other: XmlElement): XmlElement {
  return xmlElement('qti-match', {}, [one, other]);
}

/** How marks are shared out among points, such as right places. */
export interface MarkShare {
  /** What a point counts for while points are added up. */
  readonly worth: number;
  /** Makes marks of the sum; absent where it is marks already. */
  readonly settle?: (sum: XmlElement) => XmlElement;
}

/**
 * Shares marks out evenly, as the key says: all points are all marks, half marks may come of it, and smaller parts are
 * dropped.
 * @param most All points; above 0.
 */
export function shareMarks(marks: number, most: number): MarkShare {
  const worth = marks / most;
  if (Number.isInteger(2 * worth)) return { worth };
  const halves = (sum: XmlElement) =>
    xmlElement('qti-divide', {}, [xmlElement('qti-product', {}, [sum, writeNumber(2 * marks)]), writeNumber(most)]);
  const settle = (sum: XmlElement) =>
    xmlElement('qti-divide', {}, [xmlElement('qti-truncate', {}, [halves(sum)]), writeNumber(2)]);
  return { worth: 1, settle };
}

/** The rules of the standard's own template for mapped responses, written out: what no answer is given to earns nothing. */
export function scoreByMapping({ settle }: Pick<MarkShare, 'settle'> = {}): XmlElement[] {
  const noResponse = xmlElement('qti-is-null', {}, [readVariable(RESPONSE)]);
  const marks = settle === undefined ? mapResponse : settle(mapResponse);
  return [when(noResponse, [setOutcome(SCORE, writeNumber(0))], [setOutcome(SCORE, marks)])];
}
