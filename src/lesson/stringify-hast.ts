import type { Root, RootContent } from 'hast';
import rehypeStringify from 'rehype-stringify';
import { unified } from 'unified';

/** Standard HTML as people write it: double quotes, every tag written out, no slash in empty elements. */
const STRINGIFIER = unified()
  .use(rehypeStringify, { quote: '"', omitOptionalTags: false, closeSelfClosing: false, allowParseErrors: false })
  .freeze();

/** The HTML text of a tree, or of nodes in a row. Raw nodes are not let through: their text comes out escaped. */
export function stringifyHast(tree: Root | readonly RootContent[]): string {
  const root: Root = 'type' in tree ? tree : { type: 'root', children: [...tree] };
  return STRINGIFIER.stringify(root);
}
