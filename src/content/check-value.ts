import type * as z from 'zod/mini';
import type { Diagnostic } from './diagnostic.ts';
import { createFault, describeNearMiss, type Finding, type MeaningCheck } from './faults.ts';
import { findNearMiss } from './near-miss.ts';
import { describeFound, describePath, quote } from './wording.ts';
import { compareDiagnostics, type YamlDocument, type YamlPath } from './yaml-document.ts';

/** Finds the word that is meant by one that is not known. */
export type FindMeant = (found: string, words: readonly string[]) => string | undefined;

/** What came of reading one file. */
export interface Checked<Value> {
  /** Absent when there is an error. */
  readonly value?: Value;
  /** All findings of this file, in the order of the lines. */
  readonly diagnostics: readonly Diagnostic[];
  /** For findings that come from comparing files. */
  readonly document: YamlDocument;
}

/**
 * Checks a document against a schema and against checks of meaning; the latter run even where the schema found faults,
 * so that an author sees all of them at once. A document with faults of YAML is not checked further.
 * @param findMeant The word that is meant by one that is not known, among those that may stand there.
 * @param convert The checked value from what was written; not called when there is an error.
 */
export function checkDocument<Schema extends z.ZodMiniType, Value>(
  document: YamlDocument,
  schema: Schema,
  checks: readonly MeaningCheck[],
  convert: (written: z.infer<Schema>) => Value | undefined,
  findMeant: FindMeant = findNearMiss,
): Checked<Value> {
  if (document.faults.length > 0) return { diagnostics: document.faults, document };
  const result = schema.safeParse(document.value);
  const issues = result.error?.issues ?? [];
  const diagnostics = [
    ...issues.flatMap((issue) => describeIssue(document, issue, findMeant)),
    ...checks.flatMap((check) => [...check(document)]),
  ].sort(compareDiagnostics);
  const faulty = !result.success || diagnostics.some(({ severity }) => severity === 'error');
  const value = faulty ? undefined : convert(result.data);
  return { ...(value !== undefined && { value }), diagnostics, document };
}

function describeIssue(document: YamlDocument, issue: z.core.$ZodIssue, findMeant: FindMeant): Diagnostic[] {
  const path = issue.path.filter((part) => typeof part !== 'symbol');
  if (issue.code === 'unrecognized_keys')
    return issue.keys.map((key) => describeUnknownKey(document, path, key, issue));
  if (issue.code === 'invalid_key') return [describeWrongKey(document, path, issue.message)];
  const { there, value } = readAt(document.value, path);
  if (!there) return [describeMissingKey(document, path, issue.message)];
  return [createFault(document, path, describeWrongValue(path, value, issue, findMeant))];
}

function describeUnknownKey(document: YamlDocument, path: YamlPath, key: string, issue: z.core.$ZodIssue): Diagnostic {
  const known = issue.message.split(' ');
  const whole = [...path, key];
  // `{ text: In the east, at sunset }` is two keys for YAML, the second without a value.
  const split = key.includes(' ') && readAt(document.value, whole).value === null;
  const remedy = split ? '; if the comma before it belongs to a text, put that text in quotes' : '';
  const message = `${describePath(whole)}: the key ${quote(key)} is not known${remedy}${describeNearMiss(key, known)}`;
  const expected = known.join(', ');
  return createFault(document, whole, { rule: 'unknown-key', message, found: key, expected, part: 'key' });
}

function describeWrongKey(document: YamlDocument, path: YamlPath, expected: string): Diagnostic {
  const found = String(path.at(-1));
  const message = `${describePath(path)}: found the key ${quote(found)}, expected ${expected}, such as \`full-circle\`.`;
  return createFault(document, path, { rule: 'wrong-value', message, found, expected, part: 'key' });
}

function describeMissingKey(document: YamlDocument, path: YamlPath, expected: string): Diagnostic {
  const message = `${describePath(path)} is missing; expected ${expected}; add it.`;
  return createFault(document, path.slice(0, -1), { rule: 'missing-key', message, expected, part: 'key' });
}

function describeWrongValue(path: YamlPath, value: unknown, issue: z.core.$ZodIssue, findMeant: FindMeant): Finding {
  const rule = 'wrong-value';
  const expected = issue.message;
  if (issue.code === 'invalid_value' && typeof value === 'string') {
    const words = issue.values.map(String);
    const message = `${describePath(path)}: ${quote(value)} is not known${describeNearMiss(value, words, findMeant)}`;
    return { rule, message, found: value, expected };
  }
  const what = describeFound(value);
  const found = typeof value === 'string' ? value : what.replaceAll('`', '');
  const where = path.length === 0 ? '' : `${describePath(path)}: `;
  const message = `${where}found ${what}, expected ${expected}${describeRemedy(value, issue)}.`;
  return { rule, message, found, expected };
}

/** YAML takes some unquoted text for something else, and what stands in quotes for text. */
function describeRemedy(value: unknown, issue: z.core.$ZodIssue): string {
  if (issue.code !== 'invalid_type' || value === null || Array.isArray(value)) return '';
  if (typeof value === 'string') return /^-?[\d.]+$|^(true|false)$/.test(value) ? '; remove the quotes' : '';
  if (issue.expected !== 'string') return '';
  return typeof value === 'object' ? '; if this is text, put it in quotes' : `; put it in quotes: \`"${value}"\``;
}

function readAt(root: unknown, path: YamlPath): { there: boolean; value?: unknown } {
  let value = root;
  for (const part of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, part)) return { there: false };
    // Any own key of an object or list may be read; what it holds stays unknown.
    value = (value as Record<string | number, unknown>)[part];
  }
  return { there: true, value };
}
