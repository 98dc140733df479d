import type { Definition, Root } from 'mdast';
import { gfmTableFromMarkdown } from 'mdast-util-gfm-table';
import { gfmTaskListItemFromMarkdown } from 'mdast-util-gfm-task-list-item';
import { gfmTaskListItem } from 'micromark-extension-gfm-task-list-item';
import remarkFrontmatter from 'remark-frontmatter';
import remarkParse from 'remark-parse';
import { type Processor, unified } from 'unified';
import { findDeepMarks } from './find-too-deep.ts';
import { createDirectiveSyntax, type SyntaxExtension } from './inline-directive.ts';
import { createTableSyntax } from './table-syntax.ts';
import { createWrittenDirectives } from './written-directive.ts';

/** A lesson's Markdown as a tree, before anything in it is checked. */
export interface ParsedLesson {
  readonly tree: Root;
  /** The text that the offsets in the tree count in: what was parsed, without a byte order mark. */
  readonly source: string;
  /** The YAML between the `---` lines and the line of the file it begins on; undefined when there is none. */
  readonly frontMatter: { readonly text: string; readonly line: number } | undefined;
  /** Every link reference definition of the lesson, so that a part of it can be rendered alone. */
  readonly definitions: readonly Definition[];
  /** Offset at which things stand in one another too deep to be parsed; the tree is empty then. */
  readonly tooDeepAt?: number;
}

/** Parses one lesson's text. Never fails: what is not well formed comes out as prose, for `checkSyntax` to find. */
type LessonParser = (text: string) => ParsedLesson;

/**
 * Makes the parser for all lessons: CommonMark with front matter, tables, task lists and directives.
 * `inlineNames` are the names that a colon within a line may begin a directive with.
 * Each directive node tells in `data.written` how it was written, repeated attributes included.
 */
export function createLessonParser(inlineNames: Iterable<string>): LessonParser {
  const tables = createTableSyntax();
  const processor = createProcessor([createDirectiveSyntax(inlineNames), tables.syntax]);
  return (text) => {
    const source = text.startsWith('\uFEFF') ? text.slice(1) : text;
    const tooDeepAt = findDeepMarks(source);
    if (tooDeepAt !== undefined) {
      return { tree: { type: 'root', children: [] }, source, frontMatter: undefined, definitions: [], tooDeepAt };
    }
    tables.prepare(source);
    const tree = processor.parse(source);
    const head = tree.children[0];
    return {
      tree,
      source,
      frontMatter: head?.type === 'yaml' ? { text: head.value, line: 2 } : undefined,
      definitions: tree.data?.definitions ?? [],
    };
  };
}

function createProcessor(syntax: SyntaxExtension[]) {
  return unified()
    .use(remarkParse)
    .use(remarkFrontmatter)
    .use(function (this: Processor) {
      const data = this.data();
      data.micromarkExtensions = [...(data.micromarkExtensions ?? []), ...syntax, gfmTaskListItem()];
      data.fromMarkdownExtensions = [
        ...(data.fromMarkdownExtensions ?? []),
        createWrittenDirectives(),
        gfmTableFromMarkdown(),
        gfmTaskListItemFromMarkdown(),
      ];
    })
    .freeze();
}
