import { type CssNode, type Declaration, generate, parse, walk } from 'css-tree';

const SIDED = /^(?:(?:margin|padding|border|scroll-margin|scroll-padding)-)?(?:left|right)(?:-|$)/;
const FOUR_SIDED = /^(?:margin|padding|inset|border-(?:width|style|color))$/;

/** Declarations that say left or right where words may run the other way; a page's own margins are no such. */
export function findSidedStyles(css: string): string[] {
  const faults: string[] = [];
  walk(parse(css), {
    visit: 'Declaration',
    enter(node) {
      if (this.atrule?.name === 'page' || isOverruled(node, this.block?.children.toArray() ?? [])) return;
      const value = generate(node.value);
      if (isSided(node.property, value, node.value)) faults.push(`${node.property}: ${value}`);
    },
  });
  return faults;
}

function isSided(property: string, value: string, tree: CssNode): boolean {
  if (SIDED.test(property)) return true;
  if (property === 'text-align' || property === 'float' || property === 'clear') return /left|right/.test(value);
  if (!FOUR_SIDED.test(property) || tree.type !== 'Value') return false;
  const [, right, , left] = tree.children.toArray().map((part) => generate(part));
  return left !== undefined && left !== right;
}

/** Whether a rule says it a second time, for browsers that know the words for where lines begin and end. */
function isOverruled(node: Declaration, siblings: readonly CssNode[]): boolean {
  const after = siblings.slice(siblings.indexOf(node) + 1);
  return after.some(
    (each) => each.type === 'Declaration' && each.property === node.property && /inline-/.test(generate(each.value)),
  );
}
