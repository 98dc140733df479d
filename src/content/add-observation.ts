import { isMap, isScalar, isSeq, parseDocument, type YAMLMap, type YAMLSeq } from 'yaml';
import type { Observation } from '../calendar/rules.ts';
import { parseYaml } from './yaml-document.ts';

/** A change to a text: what goes in, and where. */
interface Insertion {
  readonly offset: number;
  readonly text: string;
}

/**
 * Adds an observation to the text of a school file, after those that are there; every other byte stays as it was:
 * comments, layout, line ends, a byte order mark. The new text is read again, and counts only when it says exactly what
 * the old one said and the observation.
 * @param text A file without fault.
 * @returns Nothing where the list is written in a way that has no plain place for another entry (an alias, say).
 */
export function addObservation(text: string, observation: Observation): string | undefined {
  const mark = text.startsWith('\uFEFF') ? '\uFEFF' : '';
  const source = text.slice(mark.length);
  const insertion = findInsertion(source, renderObservation(observation));
  if (insertion === undefined) return undefined;
  const { offset } = insertion;
  const changed = `${mark}${source.slice(0, offset)}${insertion.text}${source.slice(offset)}`;
  return saysTheSameAnd(text, changed, observation) ? changed : undefined;
}

/** An entry of the list on one line, as the authors' reference writes it. */
export function renderObservation({ date, night, by }: Observation): string {
  const source = by === undefined ? '' : `, by: ${JSON.stringify(by)}`;
  return `{ date: ${date}, night: ${renderName(night)}${source} }`;
}

/** Plain where no reader can take it for anything but text, else in quotes. */
function renderName(name: string): string {
  const isPlain = /^\p{L}[\p{L}\p{M}\p{N}’ -]*$/u.test(name) && !/^(?:true|false|null)$|\s$/i.test(name);
  return isPlain ? name : JSON.stringify(name);
}

function findInsertion(source: string, entry: string): Insertion | undefined {
  const { contents } = parseDocument(source, { schema: 'core', resolveKnownTags: false, uniqueKeys: false });
  if (!isMap(contents) || contents.flow === true) return undefined;
  const pair = contents.items.find(({ key }) => isScalar(key) && key.value === 'observations');
  if (pair === undefined) return appendKey(source, contents, entry);
  if (!isSeq(pair.value)) return undefined;
  return pair.value.flow === true ? appendToFlow(pair.value, entry) : appendToBlock(source, pair.value, entry);
}

function appendKey(source: string, { range }: YAMLMap, entry: string): Insertion | undefined {
  const indent = findIndent(source, range?.[0]);
  if (indent === undefined) return undefined;
  const end = findLineEnd(source);
  const before = source.endsWith('\n') ? '' : end;
  return { offset: source.length, text: `${before}${indent}observations:${end}${indent}  - ${entry}${end}` };
}

function appendToBlock(source: string, list: YAMLSeq, entry: string): Insertion | undefined {
  const indent = findIndent(source, list.range?.[0]);
  const entryEnd = findEntryEnd(list);
  if (indent === undefined || entryEnd === undefined) return undefined;
  const end = findLineEnd(source);
  // Text over several lines ends after its line end, everything else before; a comment on the line stays there.
  const lineEnd = source[entryEnd - 1] === '\n' ? entryEnd - 1 : source.indexOf('\n', entryEnd);
  if (lineEnd === -1) return { offset: source.length, text: `${end}${indent}- ${entry}` };
  return { offset: lineEnd + 1, text: `${indent}- ${entry}${end}` };
}

function appendToFlow(list: YAMLSeq, entry: string): Insertion | undefined {
  const entryEnd = findEntryEnd(list);
  if (entryEnd !== undefined) return { offset: entryEnd, text: `, ${entry}` };
  const begin = list.range?.[0];
  return begin === undefined ? undefined : { offset: begin + 1, text: entry };
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
