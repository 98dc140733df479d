import { type Checked, checkDocument } from './check-value.ts';
import type { Diagnostic } from './diagnostic.ts';
import { collect, createFault, type Located } from './faults.ts';
import { computeFileId } from './file-id.ts';
import { getLabelEntry, isLabelKey, LABEL_KEYS, type LabelKey } from './label-catalogue.ts';
import type { LabelFile, PluralText } from './labels.ts';
import { findNearMiss } from './near-miss.ts';
import { labelsSchema, type WrittenLabels } from './schemas/labels.ts';
import { findPlaceholders } from './template.ts';
import type { SourceFile } from './types.ts';
import { describeChoice, describePath, quote } from './wording.ts';
import { parseYamlFile, type YamlDocument } from './yaml-document.ts';

/** So many missing labels are named in a message; our own choice. */
const MOST_NAMED = 12;

/** Parses and checks a labels file. Labels it lacks are a warning; those come out in English. */
export function parseLabelFile(file: SourceFile): Checked<LabelFile> {
  const document = parseYamlFile(file);
  const id = computeFileId(file.path);
  const checks = [checkKeys, checkForms, (written: YamlDocument) => checkLanguage(written, id)];
  return checkDocument(document, labelsSchema, checks, (written) => convertLabels(written, id));
}

function* checkLanguage(document: YamlDocument, id: string): Generator<Diagnostic> {
  for (const { path, value } of collect(document.value, ['language'])) {
    if (typeof value !== 'string' || value.toLowerCase() === id.toLowerCase()) continue;
    const message = `\`language\`: found ${quote(value)} in a file called ${quote(id)}, expected both to be alike; rename the file or change the tag.`;
    yield createFault(document, path, { rule: 'wrong-value', message, found: value, expected: id });
  }
}

function* checkKeys(document: YamlDocument): Generator<Diagnostic> {
  const there = new Set<string>();
  for (const { path } of collect(document.value, ['labels', '*'])) {
    const key = String(path.at(-1));
    there.add(key);
    if (isLabelKey(key)) continue;
    const near = findNearMiss(key, LABEL_KEYS);
    const advice = near === undefined ? 'use a label of the kit or remove it.' : `did you mean ${quote(near)}?`;
    const message = `${describePath(path)}: the label ${quote(key)} is not known; ${advice}`;
    yield createFault(document, path, { rule: 'unknown-key', message, found: key, part: 'key' });
  }
  const missing = LABEL_KEYS.filter((key) => !there.has(key));
  if (missing.length === 0) return;
  const count = missing.length === 1 ? 'a label is' : `${missing.length} labels are`;
  const message = `\`labels\`: ${count} missing and will be English; add ${nameSome(missing)}.`;
  yield createFault(document, ['labels'], {
    rule: 'label-missing',
    severity: 'warning',
    message,
    expected: missing.join(', '),
    part: 'key',
  });
}

/** Names as many as a line can hold; `expected` of the finding has them all. */
function nameSome(keys: readonly LabelKey[]): string {
  const named = keys.slice(0, MOST_NAMED).map(quote).join(', ');
  const left = keys.length - MOST_NAMED;
  return left > 0 ? `${named} and ${left} more (all are in \`check --json\`)` : named;
}

function* checkForms(document: YamlDocument): Generator<Diagnostic> {
  for (const label of collect(document.value, ['labels', '*'])) {
    const key = String(label.path.at(-1));
    if (isLabelKey(key)) yield* checkLabel(document, key, label);
  }
}

function* checkLabel(document: YamlDocument, key: LabelKey, { path, value }: Located): Generator<Diagnostic> {
  const { english } = getLabelEntry(key);
  if (typeof value === 'string') yield* checkPlaceholders(document, key, path, value, true);
  else if (typeof value !== 'object' || value === null || Array.isArray(value)) return;
  else if (typeof english === 'string') {
    const message = `${describePath(path)}: found forms for a number, expected text; this label goes with no number.`;
    yield createFault(document, path, { rule: 'wrong-value', message, expected: 'text' });
  } else {
    for (const [form, text] of Object.entries(value)) {
      // "one night" may do without the number; the general form may not.
      if (typeof text === 'string') yield* checkPlaceholders(document, key, [...path, form], text, form === 'other');
    }
  }
}

function* checkPlaceholders(
  document: YamlDocument,
  key: LabelKey,
  path: Located['path'],
  text: string,
  complete: boolean,
): Generator<Diagnostic> {
  const { english, mayUse } = getLabelEntry(key);
  const wanted = findPlaceholders(typeof english === 'string' ? english : english.other);
  const allowed = mayUse ?? wanted;
  const there = findPlaceholders(text);
  const expected = allowed.length === 0 ? 'no placeholder' : describeChoice(allowed.map((name) => `{${name}}`));
  for (const name of there.filter((each) => !allowed.includes(each))) {
    const message = `${describePath(path)}: ${quote(`{${name}}`)} is not known here, expected ${expected}; remove or correct it.`;
    yield createFault(document, path, { rule: 'wrong-value', message, found: `{${name}}`, expected });
  }
  const missing = mayUse === undefined && complete ? wanted.filter((name) => !there.includes(name)) : [];
  for (const name of missing) {
    const message = `${describePath(path)}: ${quote(`{${name}}`)} is missing, expected it as in the English ${quote(typeof english === 'string' ? english : english.other)}; add it.`;
    yield createFault(document, path, { rule: 'wrong-value', message, found: text, expected: `{${name}}` });
  }
}

function convertLabels(written: WrittenLabels, id: string): LabelFile {
  const labels: Partial<Record<LabelKey, string | PluralText>> = {};
  for (const [key, label] of Object.entries(written.labels)) if (isLabelKey(key)) labels[key] = dropAbsent(label);
  return { id, language: written.language, labels };
}

function dropAbsent(label: WrittenLabels['labels'][string]): string | PluralText {
  if (typeof label === 'string') return label;
  const { other, ...rest } = label;
  return { ...Object.fromEntries(Object.entries(rest).filter(([, text]) => text !== undefined)), other };
}
