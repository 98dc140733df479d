import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';

/** A block of JSON-LD, as far as it is looked at here. */
export type DataNode = Readonly<Record<string, unknown>>;

const BLOCK = /<script type="application\/ld\+json">([^<]*)<\/script>/g;

/** The blocks of JSON-LD in a page, read. @throws SyntaxError where one is no JSON. */
export function readData(html: string): DataNode[] {
  return [...html.matchAll(BLOCK)].map(([, json = '']) => JSON.parse(json));
}

/**
 * The vocabulary of schema.org as the package schema-dts has it: types and properties with what each comes from. Nothing
 * is fetched: `@context` is only compared.
 */
const VOCABULARY = readVocabulary();

interface Vocabulary {
  /** Bases by type or base. */
  readonly bases: ReadonlyMap<string, readonly string[]>;
  readonly properties: ReadonlyMap<string, ReadonlySet<string>>;
}

function readVocabulary(): Vocabulary {
  const main = createRequire(import.meta.url).resolve('schema-dts/package.json');
  const text = readFileSync(join(main, '../dist/schema.d.ts'), 'utf8');
  const bases = new Map<string, string[]>();
  const properties = new Map<string, Set<string>>();
  for (const [, name = '', from = '', body = ''] of text.matchAll(/interface (\w+) extends ([^{]+) \{\n(.*?)^\}/gms)) {
    bases.set(
      name,
      from.split(',').map((each) => each.trim()),
    );
    properties.set(name, new Set([...body.matchAll(/^ {4}"(\w+)"\?:/gm)].map(([, property = '']) => property)));
  }
  return { bases, properties };
}

function hasProperty(name: string, property: string): boolean {
  if (VOCABULARY.properties.get(name)?.has(property) === true) return true;
  return (VOCABULARY.bases.get(name) ?? []).some((base) => hasProperty(base, property));
}

/** What is wrong with a node: types and properties that schema.org has not, and values that say nothing. */
export function findDataFaults(node: DataNode, where = ''): string[] {
  const type = String(node['@type']);
  if (!VOCABULARY.properties.has(`${type}Leaf`)) return [`${where}: there is no type ${type}`];
  return Object.entries(node).flatMap(([key, value]) => {
    if (key === '@type') return [];
    if (key === '@context') return value === 'https://schema.org' && where === '' ? [] : [`${where}/${key}: ${value}`];
    const place = `${where}/${key}`;
    const unknown = hasProperty(`${type}Leaf`, key) ? [] : [`${place}: ${type} has no such property`];
    const values = Array.isArray(value) ? value : [value];
    return [
      ...unknown,
      ...(values.length === 0 ? [`${place} is empty`] : []),
      ...values.flatMap((each) => findIn(each, place)),
    ];
  });
}

function findIn(value: unknown, place: string): string[] {
  if (typeof value === 'number') return [];
  if (typeof value === 'string') return value.trim() === '' ? [`${place} is empty`] : [];
  // What JSON gives is read as it stands; everything else in it is a node.
  if (typeof value === 'object' && value !== null) return findDataFaults(value as DataNode, place);
  return [`${place}: ${value}`];
}
