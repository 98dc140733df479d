import { isMap, isScalar, isSeq, parseDocument, type YAMLMap, type YAMLSeq } from 'yaml';
import type { Observation } from '../calendar/rules.ts';
import { parseYaml } from './yaml-document.ts';

/** Something that goes into a text, and where. */
interface Insertion {
  readonly offset: number;
  readonly text: string;
}

/**
 * Adds an observation to the text of a school file, after those that are there and written as the last of them is; every
 * other byte stays as it was: comments, layout, line ends, a byte order mark. The new text is read again, and counts only
 * when it says exactly what the old one said and the observation.
 * @param text A file without fault.
 * @returns Nothing where the list is written in a way that has no plain place for another entry (an alias, say).
 */
export function addObservation(text: string, observation: Observation): string | undefined {
  const mark = text.startsWith('\uFEFF') ? '\uFEFF' : '';
  const source = text.slice(mark.length);
  const changed = insert(source, findInsertions(source, observation));
  return changed !== source && saysTheSameAnd(text, mark + changed, observation) ? mark + changed : undefined;
}

/** @param insertions In order of their places. */
function insert(source: string, insertions: readonly Insertion[]): string {
  let changed = '';
  let from = 0;
  for (const { offset, text } of insertions) {
    changed += source.slice(from, offset) + text;
    from = offset;
  }
  return changed + source.slice(from);
}

/** An entry of the list on one line, as the authors' reference writes it. */
export function renderObservation(observation: Observation): string {
  return `{ ${listFields(observation).join(', ')} }`;
}

function listFields({ date, night, by }: Observation): readonly string[] {
  const source = by === undefined ? [] : [`by: ${JSON.stringify(by)}`];
  return [`date: ${date}`, `night: ${renderName(night)}`, ...source];
}

/** Plain where no reader can take it for anything but text, else in quotes. */
function renderName(name: string): string {
  const isPlain = /^\p{L}[\p{L}\p{M}\p{N}’ -]*$/u.test(name) && !/^(?:true|false|null)$|\s$/i.test(name);
  return isPlain ? name : JSON.stringify(name);
}

function findInsertions(source: string, observation: Observation): readonly Insertion[] {
  const { contents } = parseDocument(source, { schema: 'core', resolveKnownTags: false, uniqueKeys: false });
  if (!isMap(contents) || contents.flow === true) return [];
  const pair = contents.items.find(({ key }) => isScalar(key) && key.value === 'observations');
  if (pair === undefined) return appendKey(source, contents, observation);
  if (!isSeq(pair.value)) return [];
  return pair.value.flow === true
    ? appendToFlow(source, pair.value, observation)
    : appendToBlock(source, pair.value, observation);
}

function appendKey(source: string, { range }: YAMLMap, observation: Observation): readonly Insertion[] {
  const indent = findIndent(source, range?.[0]);
  if (indent === undefined) return [];
  const end = findLineEnd(source);
  const before = source.endsWith('\n') ? '' : end;
  const lines = [`${indent}observations:`, `${indent}  - ${renderObservation(observation)}`, ''];
  return [{ offset: source.length, text: before + lines.join(end) }];
}

function appendToBlock(source: string, list: YAMLSeq, observation: Observation): readonly Insertion[] {
  const indent = findIndent(source, list.range?.[0]);
  const entryEnd = findEntryEnd(list);
  if (indent === undefined || entryEnd === undefined) return [];
  const end = findLineEnd(source);
  const entry = renderBlockEntry(source, list, indent, observation).join(end);
  // Text over several lines ends after its line end, everything else before; a comment on the line stays there.
  const lineEnd = source[entryEnd - 1] === '\n' ? entryEnd - 1 : source.indexOf('\n', entryEnd);
  if (lineEnd === -1) return [{ offset: source.length, text: end + entry }];
  return [{ offset: skipComments(source, lineEnd + 1, indent), text: entry + end }];
}

/** Past comments that stand deeper than the dashes of a list: they belong to its last entry. */
function skipComments(source: string, offset: number, indent: string): number {
  const comments = new RegExp(`^(?: {${indent.length + 1},}#[^\\n]*\\n)+`).exec(source.slice(offset));
  return offset + (comments?.[0].length ?? 0);
}

/** In braces on one line, or a line for each key under each other, as the last entry is. */
function renderBlockEntry(source: string, list: YAMLSeq, indent: string, observation: Observation): readonly string[] {
  const last: unknown = list.items.at(-1);
  const keysAt = isMap(last) && last.flow !== true ? last.range?.[0] : undefined;
  // From the dash to the first key; where that stands on a line of its own, on one line is as good.
  const dash = keysAt === undefined ? null : /- *$/.exec(source.slice(0, keysAt));
  if (dash === null) return [`${indent}- ${renderObservation(observation)}`];
  const [lead] = dash;
  return listFields(observation).map((field, index) => indent + (index === 0 ? lead : ' '.repeat(lead.length)) + field);
}

function appendToFlow(source: string, list: YAMLSeq, observation: Observation): readonly Insertion[] {
  const entry = renderObservation(observation);
  const entryEnd = findEntryEnd(list);
  const begin = list.range?.[0];
  if (entryEnd === undefined) return begin === undefined ? [] : [{ offset: begin + 1, text: entry }];
  const rest = /^[ \t]*(,?)[ \t]*(?:#.*?)?\r?\n/.exec(source.slice(entryEnd));
  const last: unknown = list.items.at(-1);
  const indent = findIndent(source, isMap(last) ? last.range?.[0] : undefined);
  if (rest === null || indent === undefined) return [{ offset: entryEnd, text: `, ${entry}` }];
  // Entries on lines of their own: the new one gets its line too, so that a comment stays with what it is about.
  const [line, comma = ''] = rest;
  return [
    ...(comma === '' ? [{ offset: entryEnd, text: ',' }] : []),
    { offset: entryEnd + line.length, text: indent + entry + comma + findLineEnd(source) },
  ];
}

function findEntryEnd(list: YAMLSeq): number | undefined {
  const last: unknown = list.items.at(-1);
  return isMap(last) ? last.range?.[1] : undefined;
}

/** The spaces before something that stands first in its line. */
function findIndent(source: string, offset: number | undefined): string | undefined {
  if (offset === undefined) return undefined;
  const before = source.slice(source.lastIndexOf('\n', offset - 1) + 1, offset);
  return /^ *$/.test(before) ? before : undefined;
}

function findLineEnd(source: string): string {
  return source.includes('\r\n') ? '\r\n' : '\n';
}

function saysTheSameAnd(text: string, changed: string, { date, night, by }: Observation): boolean {
  const place = { file: '', line: 1, column: 1 };
  const before = parseYaml(text, place);
  const after = parseYaml(changed, place);
  if (before.faults.length + after.faults.length > 0) return false;
  const fields = Object(before.value);
  const listed: unknown[] = fields['observations'] ?? [];
  const entry = { date, night: night.normalize('NFC'), ...(by === undefined ? {} : { by: by.normalize('NFC') }) };
  return JSON.stringify({ ...fields, observations: [...listed, entry] }) === JSON.stringify(after.value);
}
