import { type CssNode, type Declaration, generate, lexer, parse, walk } from 'css-tree';

/** The parts of the lexer's answer that are read; its types know more. */
interface Match {
  readonly error: { readonly message: string } | null;
}

/** Descriptors of `@page` that the judge does not know: `size` is in CSS Paged Media Level 3, section 7.1, from memory. */
const PAGE_DESCRIPTORS: ReadonlySet<string> = new Set(['size']);

/** What css-tree finds in a style sheet: what does not parse, properties and values that the standards do not know. */
export function findStyleFaults(css: string): string[] {
  const faults: string[] = [];
  const tree = parse(css, {
    parseCustomProperty: true,
    onParseError: ({ message }) => void faults.push(`does not parse: ${message}`),
  });
  const values = listCustomValues(tree);
  walk(tree, {
    visit: 'Declaration',
    enter(node) {
      const { property } = node;
      if (property.startsWith('--')) return;
      const atRule = this.atrule?.name ?? '';
      if (atRule === 'page' && PAGE_DESCRIPTORS.has(property)) return;
      const value = fillIn(generate(node.value), values);
      if (value.includes('var(')) faults.push(`${property}: ${value} is set nowhere`);
      const isDescriptor = atRule === 'font-face';
      const match: Match = isDescriptor
        ? lexer.matchAtruleDescriptor(atRule, property, value)
        : lexer.matchProperty(property, value);
      if (match.error !== null) faults.push(`${property}: ${value} (${match.error.message.split('\n')[0]})`);
    },
  });
  return faults;
}

/** Custom properties with what they are set to; where a scheme sets one again, the first value stands for all. */
function listCustomValues(tree: CssNode): Map<string, string> {
  const values = new Map<string, string>();
  const keep = ({ property, value }: Declaration) => {
    if (property.startsWith('--') && !values.has(property)) values.set(property, generate(value));
  };
  walk(tree, { visit: 'Declaration', enter: keep });
  return values;
}

/** The judge cannot match `var()`: each stands for its value, at most five deep. */
function fillIn(value: string, values: ReadonlyMap<string, string>): string {
  let filled = value;
  for (let depth = 0; depth < 5; depth += 1) {
    filled = filled.replaceAll(/var\((--[\w-]+)(?:,[^()]*)?\)/g, (all, name) => values.get(name) ?? all);
  }
  return filled;
}
