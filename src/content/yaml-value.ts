import { isAlias, isMap, isScalar, isSeq, type Node, type YAMLMap, type YAMLSeq } from 'yaml';
import type { Diagnostic, RuleId, SourcePlace } from './diagnostic.ts';
import { quote } from './wording.ts';

/** Values an alias may bring in, counted over the whole file: far above honest use, far below what would be slow. */
const MOST_ALIASED_VALUES = 10_000;

interface Walk {
  readonly faults: Diagnostic[];
  /** What each anchor seen so far stands for, and how many values it holds. */
  readonly anchors: Map<string, { readonly value: unknown; readonly size: number }>;
  /** Values so far, those behind aliases counted each time. */
  size: number;
  aliased: number;
  placeAt(offset: number): SourcePlace;
}

/**
 * Turns the nodes of a YAML document into plain values. Faults: repeated keys (with the first place), keys that are no
 * text, aliases of nothing or of what they stand in, and aliases that multiply beyond {@link MOST_ALIASED_VALUES} values.
 */
export function toYamlValue(
  contents: Node | null,
  placeAt: (offset: number) => SourcePlace,
): { value: unknown; faults: Diagnostic[] } {
  const walk: Walk = { faults: [], anchors: new Map(), size: 0, aliased: 0, placeAt };
  return { value: convert(contents, walk), faults: walk.faults };
}

function convert(node: unknown, walk: Walk): unknown {
  const sizeBefore = walk.size;
  walk.size += 1;
  if (isAlias(node)) return convertAlias(node.source, node.range?.[0] ?? 0, walk);
  const value = convertPlain(node, walk);
  if ((isScalar(node) || isMap(node) || isSeq(node)) && node.anchor !== undefined) {
    walk.anchors.set(node.anchor, { value, size: walk.size - sizeBefore });
  }
  return value;
}

function convertPlain(node: unknown, walk: Walk): unknown {
  if (isMap(node)) return convertMap(node, walk);
  if (isSeq(node)) return convertList(node, walk);
  if (!isScalar(node)) return null;
  return typeof node.value === 'string' ? node.value.normalize('NFC') : node.value;
}

function convertList(list: YAMLSeq, walk: Walk): unknown[] {
  return list.items.map((item) => convert(item, walk));
}

function convertMap(map: YAMLMap, walk: Walk): Record<string, unknown> {
  const value: Record<string, unknown> = Object.create(null);
  const offsets = new Map<string, number>();
  for (const pair of map.items) {
    const offset = (isScalar(pair.key) || isAlias(pair.key) ? pair.key.range?.[0] : undefined) ?? map.range?.[0] ?? 0;
    const key = readKey(pair.key);
    const first = key === undefined ? undefined : offsets.get(key);
    if (key === undefined) {
      addFault(walk, 'yaml-syntax', offset, 'Unexpected key, expected a word before the `:`; put the text in quotes.');
    } else if (first !== undefined) {
      const message = `The key ${quote(key)} is there twice; expected each key once; remove or rename one.`;
      addFault(walk, 'repeated-name', offset, message, walk.placeAt(first));
    } else {
      offsets.set(key, offset);
      value[key] = convert(pair.value, walk);
    }
  }
  return value;
}

/** Keys are text as written: a term called `3` keeps its name. */
function readKey(key: unknown): string | undefined {
  if (!isScalar(key) || key.value === null) return undefined;
  const text = String(key.source ?? key.value).normalize('NFC');
  // The one key that would reach behind the object instead of into it.
  return text === '' || text === '__proto__' ? undefined : text;
}

function convertAlias(name: string, offset: number, walk: Walk): unknown {
  const anchor = walk.anchors.get(name);
  if (anchor === undefined) {
    const message = `Unexpected ${quote(`*${name}`)}, expected plain text, or the name of an anchor written before; put the text in quotes.`;
    addFault(walk, 'yaml-syntax', offset, message);
    return null;
  }
  walk.size += anchor.size;
  if (walk.aliased <= MOST_ALIASED_VALUES && walk.aliased + anchor.size > MOST_ALIASED_VALUES) {
    const message = `The aliases of this file stand for more than ${MOST_ALIASED_VALUES} values; write out what is meant.`;
    addFault(walk, 'yaml-syntax', offset, message);
  }
  walk.aliased += anchor.size;
  return walk.aliased > MOST_ALIASED_VALUES ? null : anchor.value;
}

function addFault(walk: Walk, rule: RuleId, offset: number, message: string, related?: SourcePlace): void {
  const place = walk.placeAt(offset);
  walk.faults.push({ rule, severity: 'error', place, message, ...(related && { related }) });
}
