import { type CssNode, type Declaration, generate, parse, type Rule, walk } from 'css-tree';

const SIDED = /^(?:(?:margin|padding|border|scroll-margin|scroll-padding)-)?(?:left|right)(?:-|$)/;
const FOUR_SIDED = /^(?:margin|padding|inset|border-(?:width|style|color))$/;

/** Declarations that say left or right where words may run the other way; a page's own margins are no such. */
export function findSidedStyles(css: string): string[] {
  const tree = parse(css);
  const overruled = listOverruled(tree);
  const faults: string[] = [];
  walk(tree, {
    visit: 'Declaration',
    enter(node) {
      if (this.atrule?.name === 'page' || overruled.has(nameDeclaration(node, this.rule))) return;
      const value = generate(node.value);
      if (isSided(node.property, value, node.value)) faults.push(`${node.property}: ${value}`);
    },
  });
  return faults;
}

/** What is said a second time of the same elements, for browsers that know the words for where lines begin and end. */
function listOverruled(tree: CssNode): ReadonlySet<string> {
  const overruled = new Set<string>();
  walk(tree, {
    visit: 'Declaration',
    enter(node) {
      if (/^inline-/.test(generate(node.value))) overruled.add(nameDeclaration(node, this.rule));
    },
  });
  return overruled;
}

function nameDeclaration({ property }: Declaration, rule: Rule | null): string {
  return `${rule === null ? '' : generate(rule.prelude)} ${property}`;
}

function isSided(property: string, value: string, tree: CssNode): boolean {
  if (SIDED.test(property)) return true;
  if (property === 'text-align' || property === 'float' || property === 'clear') return /left|right/.test(value);
  if (!FOUR_SIDED.test(property) || tree.type !== 'Value') return false;
  const [, right, , left] = tree.children.toArray().map((part) => generate(part));
  return left !== undefined && left !== right;
}
