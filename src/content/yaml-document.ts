import { type Document, isAlias, isMap, isScalar, isSeq, type Node, type Pair, parseDocument } from 'yaml';
import type { Diagnostic, SourcePlace } from './diagnostic.ts';
import { findPlainYaml } from './quick-yaml.ts';
import type { SourceFile } from './types.ts';
import { findYamlDepth } from './yaml-depth.ts';
import { describeYamlFault } from './yaml-faults.ts';
import { toYamlValue } from './yaml-value.ts';

/** Where a value stands: keys of maps, and places in lists counted from 0. */
export type YamlPath = readonly (string | number)[];

/** YAML text as plain values, with the place of each in the author's file. */
export interface YamlDocument {
  /** What messages show as the file. */
  readonly file: string;
  /**
   * Maps as objects without prototype, lists as arrays, and text, numbers, `true`/`false` and `null` by the core schema
   * of YAML 1.2: `09:00`, `no`, `06-18` and dates stay text. Text is in Unicode form NFC. Only to be trusted when `faults` is empty.
   */
  readonly value: unknown;
  /** Faults of the YAML itself, in order. */
  readonly faults: readonly Diagnostic[];
  /** The place of a path's key or value; where the path leads nowhere, of the nearest part of it that is there. */
  placeOf(path: YamlPath, part?: 'key' | 'value'): SourcePlace;
}

/** Parses a YAML file. One that could not be read as text has that fault alone. */
export function parseYamlFile({ path, text, fault }: SourceFile): YamlDocument {
  if (fault === undefined) return parseYaml(text, { file: path, line: 1, column: 1 });
  return { file: path, value: null, faults: [fault], placeOf: () => fault.place };
}

/**
 * Parses YAML text. Never throws for what an author may write.
 * @param text The whole text; a byte order mark is passed over, lines end in LF, CRLF or CR.
 * @param start Where the text begins in its file: front matter sits inside a Markdown file.
 */
export function parseYaml(text: string, start: SourcePlace): YamlDocument {
  const marked = text.startsWith('\uFEFF') ? text.slice(1) : text;
  // A carriage return alone ends a line (YAML 1.2.2, section 5.4); the readers know only the other two.
  const source = marked.includes('\r') ? marked.replace(/\r(?!\n)/g, '\n') : marked;
  const deepAt = findYamlDepth(source);
  if (deepAt !== undefined) return describeTooDeep(computePlace(source, deepAt, start));
  const plain = findPlainYaml(source);
  if (plain === undefined) return parseWithPlaces(source, start);
  // Places are asked for by findings only: most files have none.
  let full: YamlDocument | undefined;
  return {
    file: start.file,
    value: plain.value,
    faults: [],
    placeOf(path, part) {
      full ??= parseWithPlaces(source, start);
      return full.placeOf(path, part);
    },
  };
}

/** A text that is not read at all. */
function describeTooDeep(place: SourcePlace): YamlDocument {
  const message = describeYamlFault('RESOURCE_EXHAUSTION', '');
  return {
    file: place.file,
    value: null,
    faults: [{ rule: 'yaml-syntax', severity: 'error', place, message }],
    placeOf: () => place,
  };
}

/** Parses YAML text with all its faults and places; `source` is without a byte order mark. Ten times slower than the quick way. */
export function parseWithPlaces(source: string, start: SourcePlace): YamlDocument {
  // Repeated keys are found by our own walk, which knows both places; the reader's own check compares each with each.
  const document = parseDocument(source, {
    schema: 'core',
    resolveKnownTags: false,
    uniqueKeys: false,
    prettyErrors: false,
  });
  const placeAt = (offset: number) => computePlace(source, offset, start);
  const { value, faults } = toYamlValue(document.contents, placeAt);
  return {
    file: start.file,
    value,
    faults: [...listSyntaxFaults(document, placeAt), ...faults].sort(compareDiagnostics),
    placeOf: (path, part = 'value') => placeAt(findOffset(document, path, part)),
  };
}

/** Order of diagnostics of one file: by line, then column; equal ones stay as they were. */
export function compareDiagnostics(a: Diagnostic, b: Diagnostic): number {
  return a.place.line - b.place.line || a.place.column - b.place.column;
}

/** Only the first fault of a line is listed: the others follow from it as a rule. */
function listSyntaxFaults(document: Document.Parsed, placeAt: (offset: number) => SourcePlace): Diagnostic[] {
  const byLine = new Map<number, Diagnostic>();
  for (const fault of [...document.errors, ...document.warnings]) {
    const place = placeAt(fault.pos[0]);
    if (byLine.has(place.line)) continue;
    const message = describeYamlFault(fault.code, fault.message);
    byLine.set(place.line, { rule: 'yaml-syntax', severity: 'error', place, message });
  }
  return [...byLine.values()];
}

function computePlace(source: string, offset: number, start: SourcePlace): SourcePlace {
  let line = 0;
  let lineBegins = 0;
  for (let next = source.indexOf('\n'); next !== -1 && next < offset; next = source.indexOf('\n', lineBegins)) {
    line += 1;
    lineBegins = next + 1;
  }
  const column = Math.min(offset, source.length) - lineBegins + (line === 0 ? start.column : 1);
  return { file: start.file, line: start.line + line, column };
}

function findOffset(document: Document.Parsed, path: YamlPath, part: 'key' | 'value'): number {
  let node: unknown = document.contents;
  let offset = offsetOf(node) ?? 0;
  for (const [index, segment] of path.entries()) {
    const container: unknown = isAlias(node) ? node.resolve(document) : node;
    const pair = isMap(container) ? container.items.find((item) => isKey(item, segment)) : undefined;
    node = isSeq(container) && typeof segment === 'number' ? container.items[segment] : pair?.value;
    if (node === undefined && pair === undefined) return offset;
    const wantsKey = index === path.length - 1 && part === 'key';
    offset = (wantsKey ? offsetOf(pair?.key) : undefined) ?? offsetOf(node) ?? offsetOf(pair?.key) ?? offset;
  }
  return offset;
}

function isKey(pair: Pair, segment: string | number): boolean {
  return isScalar(pair.key) && String(pair.key.source ?? pair.key.value).normalize('NFC') === segment;
}

function offsetOf(node: unknown): number | undefined {
  // The reader gives every node of a parsed document its range; only nodes made by hand lack it.
  return (node as Node | null | undefined)?.range?.[0];
}
