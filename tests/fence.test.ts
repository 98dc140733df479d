import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { parseAst } from 'vite';
import { describe, expect, it } from 'vitest';

const SOURCE = join(import.meta.dirname, '../src');

/** Which rooms a room may import from besides itself: the arrows of the design point down only. */
const ARROWS: Readonly<Record<string, readonly string[]>> = {
  calendar: [],
  content: ['calendar'],
  drawing: ['content', 'calendar'],
  rhythm: ['content', 'calendar'],
  quiz: ['drawing', 'rhythm', 'content', 'calendar'],
  directives: ['quiz', 'drawing', 'rhythm', 'content', 'calendar'],
  lesson: ['directives', 'quiz', 'drawing', 'rhythm', 'content', 'calendar'],
  pack: ['lesson', 'directives', 'quiz', 'drawing', 'rhythm', 'content', 'calendar'],
  node: ['pack', 'lesson', 'directives', 'quiz', 'drawing', 'rhythm', 'content', 'calendar'],
  cli: ['node', 'pack', 'lesson', 'directives', 'quiz', 'drawing', 'rhythm', 'content', 'calendar'],
};

/** Rooms that may touch the world. */
const SHELL: ReadonlySet<string> = new Set(['node', 'cli']);

/**
 * Globals through which clock, chance, environment or the outside would come in. `Date` reads the host's zone too.
 * What only browsers have is unknown to the compiler's settings and needs no line here.
 */
const WORLD: ReadonlySet<string> = new Set([
  'Date',
  'Buffer',
  'console',
  'crypto',
  'fetch',
  'globalThis',
  'performance',
  'process',
  'queueMicrotask',
  'require',
  'setImmediate',
  'setInterval',
  'setTimeout',
]);

/** Members of otherwise pure globals that are not pure. */
const IMPURE_MEMBERS: ReadonlySet<string> = new Set(['Math.random', 'Temporal.Now', 'Intl.DateTimeFormat']);

interface Found {
  readonly imports: string[];
  readonly impure: string[];
}

type TreeNode = { readonly type: string } & Readonly<Record<string, unknown>>;

/** Reads a module's imports and its uses of the world from its syntax tree. */
function inspectModule(code: string): Found {
  const found: Found = { imports: [], impure: [] };
  visit(parseAst(code, { lang: 'ts' }) as unknown as TreeNode, undefined, found);
  return found;
}

function visit(node: TreeNode, parent: { node: TreeNode; key: string } | undefined, found: Found): void {
  const source = node['source'] as { value?: unknown } | null | undefined;
  if (typeof source?.value === 'string') found.imports.push(source.value);
  if (node.type === 'MemberExpression') {
    const name = `${(node['object'] as { name?: string }).name}.${(node['property'] as { name?: string }).name}`;
    if (IMPURE_MEMBERS.has(name)) found.impure.push(name);
  }
  if (node.type === 'Identifier' && WORLD.has(String(node['name'])) && !isJustAName(parent)) {
    found.impure.push(String(node['name']));
  }
  for (const [key, value] of Object.entries(node)) {
    for (const child of Array.isArray(value) ? value : [value]) {
      if (isTreeNode(child)) visit(child, { node, key }, found);
    }
  }
}

function isTreeNode(value: unknown): value is TreeNode {
  return typeof value === 'object' && value !== null && typeof (value as { type?: unknown }).type === 'string';
}

/** A key or a property of some other object that happens to be called like a global. */
function isJustAName(parent: { node: TreeNode; key: string } | undefined): boolean {
  if (parent === undefined) return false;
  const { node, key } = parent;
  return (
    (node.type === 'MemberExpression' && key === 'property' && node['computed'] !== true) ||
    (key === 'key' && node['computed'] !== true) ||
    node.type.startsWith('TS')
  );
}

const files = readdirSync(SOURCE, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts') && !file.endsWith('.d.ts'))
  .map((file) => file.replaceAll('\\', '/'))
  .sort();

const roomOf = (file: string) => file.split('/')[0] ?? '';
const core = files.filter((file) => !SHELL.has(roomOf(file)));

describe('the walls of the source', () => {
  it('knows every room', () => {
    expect([...new Set(files.map(roomOf))].filter((room) => !(room in ARROWS))).toEqual([]);
  });

  it.each(files)('%s imports only from rooms below its own', (file) => {
    const { imports } = inspectModule(readFileSync(join(SOURCE, file), 'utf8'));
    const rooms = imports
      .filter((name) => name.startsWith('.'))
      .map((name) => roomOf(relative(SOURCE, join(SOURCE, dirname(file), name)).replaceAll('\\', '/')));
    const allowed = [roomOf(file), ...(ARROWS[roomOf(file)] ?? [])];
    expect(rooms.filter((room) => !allowed.includes(room))).toEqual([]);
  });

  it.each(core)('%s does not touch the world', (file) => {
    const { imports, impure } = inspectModule(readFileSync(join(SOURCE, file), 'utf8'));
    expect([...imports.filter((name) => name.startsWith('node:')), ...impure]).toEqual([]);
  });

  it('lets one file alone ask astronomy-engine', () => {
    const asking = files.filter((file) =>
      inspectModule(readFileSync(join(SOURCE, file), 'utf8')).imports.includes('astronomy-engine'),
    );
    expect(asking).toEqual(['calendar/sky.ts']);
  });

  it.each([
    ["import { readFileSync } from 'node:fs';", 'imports', 'node:fs'],
    ["export { x } from '../pack/plan.ts';", 'imports', '../pack/plan.ts'],
    ['const now = Date.now();', 'impure', 'Date'],
    ['const today = new Date();', 'impure', 'Date'],
    ['const zone = Temporal.Now.timeZoneId();', 'impure', 'Temporal.Now'],
    ['const chance = Math.random();', 'impure', 'Math.random'],
    ['console.log(1);', 'impure', 'console'],
    ['const home = globalThis.process.env;', 'impure', 'globalThis'],
  ] as const)('sees the hole in %s', (code, kind, name) => {
    expect(inspectModule(code)[kind]).toContain(name);
  });

  it('lets a property be called like a global', () => {
    expect(inspectModule('const a = { document: 1 }; a.document; interface B { process: string }').impure).toEqual([]);
  });
});
