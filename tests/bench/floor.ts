import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import rehypeStringify from 'rehype-stringify';
import remarkParse from 'remark-parse';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';

// The least that turning the same Markdown into HTML costs: every Markdown file of the named folders, each to one file.
const [out = '.', ...folders] = process.argv.slice(2);
const processor = unified().use(remarkParse).use(remarkRehype).use(rehypeStringify).freeze();
for (const [index, folder] of folders.entries()) {
  for (const name of readdirSync(folder).filter((file) => file.endsWith('.md'))) {
    const html = String(processor.processSync(readFileSync(join(folder, name), 'utf8')));
    writeFileSync(join(out, `${index}-${name}.html`), html);
  }
}
