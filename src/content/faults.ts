import type { Diagnostic, RuleId, Severity } from './diagnostic.ts';
import { findNearMiss } from './near-miss.ts';
import { cleanText } from './schemas/parts.ts';
import { describeChoice, describePath, quote } from './wording.ts';
import type { YamlDocument, YamlPath } from './yaml-document.ts';

/** A value of a document with its path. */
export interface Located {
  readonly path: YamlPath;
  readonly value: unknown;
}

/** A check of what a schema cannot say. It sees the file as written, which may have any other fault too. */
export type MeaningCheck = (document: YamlDocument) => Iterable<Diagnostic>;

/** What a finding says, without its place. */
export interface Finding {
  readonly rule: RuleId;
  readonly severity?: Severity;
  readonly message: string;
  readonly found?: string;
  readonly expected?: string;
  /** Path of what explains the finding. */
  readonly related?: YamlPath;
  /** `key` points at the key instead of the value. */
  readonly part?: 'key' | 'value';
}

/** A finding at a path of a document. */
export function createFault(document: YamlDocument, path: YamlPath, finding: Finding): Diagnostic {
  const { related, part, severity = 'error', ...rest } = finding;
  const place = document.placeOf(path, part);
  return { ...rest, severity, place, ...(related && { related: document.placeOf(related) }) };
}

/** All values that are there under a pattern of keys, in order; `*` stands for every entry of a list or map. */
export function* collect(value: unknown, pattern: readonly string[], path: YamlPath = []): Generator<Located> {
  const [key, ...rest] = pattern;
  if (key === undefined) yield { path, value };
  else if (typeof value !== 'object' || value === null) return;
  else if (Array.isArray(value)) {
    if (key === '*') for (const [index, item] of value.entries()) yield* collect(item, rest, [...path, index]);
  } else {
    for (const [name, item] of Object.entries(value)) {
      if (key === '*' || key === name) yield* collect(item, rest, [...path, name]);
    }
  }
}

/** The texts under a pattern, cleaned as the schemas clean them. */
export function collectTexts(document: YamlDocument, pattern: readonly string[]): { path: YamlPath; text: string }[] {
  return [...collect(document.value, pattern)].flatMap(({ path, value }) =>
    typeof value === 'string' ? [{ path, text: cleanText(value) }] : [],
  );
}

/** Each text under the patterns may be there once. */
export function* checkUnique(document: YamlDocument, what: string, ...patterns: string[][]): Generator<Diagnostic> {
  const first = new Map<string, YamlPath>();
  for (const { path, text } of patterns.flatMap((pattern) => collectTexts(document, pattern))) {
    const related = first.get(text);
    if (related === undefined) first.set(text, path);
    else {
      const message = `${describePath(path)}: the ${what} ${quote(text)} is there twice, first at ${describePath(related)}; give each its own.`;
      yield createFault(document, path, { rule: 'repeated-name', message, found: text, related });
    }
  }
}

/** A map may hold exactly one of some keys. */
export function* checkOneOf(document: YamlDocument, pattern: string[], keys: readonly string[]): Generator<Diagnostic> {
  for (const { path, value } of collect(document.value, pattern)) {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) continue;
    const there = keys.filter((key) => Object.hasOwn(value, key));
    const expected = describeChoice(keys);
    if (there.length === 0) {
      const message = `${describePath(path)}: expected ${expected}; add one of them.`;
      yield createFault(document, path, { rule: 'missing-key', message, expected, part: 'key' });
    }
    const second = there[1];
    if (second === undefined) continue;
    const message = `${describePath(path)}: found ${there.map(quote).join(' and ')}, expected only ${expected}; keep the one that is meant.`;
    const found = there.join(', ');
    yield createFault(document, [...path, second], { rule: 'wrong-value', message, found, expected, part: 'key' });
  }
}

/** A text must be one of the names that are there. */
export function* checkReference(
  document: YamlDocument,
  pattern: string[],
  what: string,
  known: readonly string[],
): Generator<Diagnostic> {
  for (const { path, text } of collectTexts(document, pattern)) {
    if (known.includes(text)) continue;
    yield createFault(document, path, {
      rule: 'unknown-reference',
      message: `${describePath(path)}: there is no ${what} ${quote(text)}${describeNearMiss(text, known)}`,
      found: text,
      ...(known.length > 0 && { expected: describeChoice(known) }),
    });
  }
}

/** The end of a message about a word that is not known: "; did you mean `x`? Expected one of …." */
export function describeNearMiss(
  found: string,
  candidates: readonly string[],
  findMeant: (found: string, candidates: readonly string[]) => string | undefined = findNearMiss,
): string {
  if (candidates.length === 0) return '; none is there yet: add it first.';
  const near = findMeant(found, candidates);
  return `${near === undefined ? '.' : `; did you mean ${quote(near)}?`} Expected ${describeChoice(candidates)}.`;
}
