import type { Root, RootContent } from 'mdast';
import type { Directives } from 'mdast-util-directive';
import { toString as readPlainText } from 'mdast-util-to-string';
import type { SourcePlace } from '../content/diagnostic.ts';
import type { DirectiveForm, WrittenDirective } from '../directives/definition.ts';
import { readWrittenSyntax } from './written-directive.ts';

const FORMS = {
  textDirective: 'text',
  leafDirective: 'leaf',
  containerDirective: 'container',
} as const satisfies Record<Directives['type'], DirectiveForm>;

/** A directive of a lesson with its place among the others. */
export interface NumberedDirective {
  readonly node: Directives;
  readonly written: WrittenDirective;
  /** Names of the directives around it, the outermost first. */
  readonly around: readonly string[];
  /** Stands in the square brackets of the innermost directive around it, which are read as plain text. */
  readonly inLabel: boolean;
}

/**
 * Counts the directives of a lesson, by name, in the order in which they are read, before any of them is resolved.
 * @returns Every directive after those inside it, so that what a container holds is resolved before it.
 */
export function numberDirectives(tree: Root, file: string): NumberedDirective[] {
  const counts = new Map<string, { number: number; minutes: number }>();
  const found: NumberedDirective[] = [];
  const visit = (node: RootContent, around: readonly string[], inLabel: boolean): void => {
    if (!isDirective(node)) {
      if ('children' in node) for (const child of node.children) visit(child, around, inLabel);
      return;
    }
    const count = counts.get(node.name) ?? { number: 0, minutes: 0 };
    const written = readWritten(node, file, count.number + 1, count.minutes);
    counts.set(node.name, { number: count.number + 1, minutes: count.minutes + readMinutes(node) });
    for (const child of node.children) {
      visit(child, [...around, node.name], node.type !== 'containerDirective' || isLabel(child));
    }
    found.push({ node, written, around, inLabel });
  };
  for (const node of tree.children) visit(node, [], false);
  return found;
}

/** Whether a node is a directive of any form. */
export function isDirective(node: { readonly type: string }): node is Directives {
  return Object.hasOwn(FORMS, node.type);
}

/** Whether what stands inside these directives is on a learner's page alone. */
export function isForLearners(around: readonly string[]): boolean {
  return around.includes('handout');
}

/** Where a node begins. Every node of a parsed lesson has a position. */
export function placeOf(node: { readonly position?: Directives['position'] }, file: string): SourcePlace {
  const { line = 1, column = 1 } = node.position?.start ?? {};
  return { file, line, column };
}

function readWritten(node: Directives, file: string, number: number, minutesBefore: number): WrittenDirective {
  const place = placeOf(node, file);
  const { attributes } = readWrittenSyntax(node);
  const isContainer = node.type === 'containerDirective';
  const label = isContainer
    ? node.children.find(isLabel)
    : node.type === 'leafDirective' || node.type === 'textDirective'
      ? node
      : undefined;
  return {
    name: node.name,
    form: FORMS[node.type],
    label: label === undefined ? '' : readPlainText(label).trim(),
    attributes: readAttributes(node),
    place,
    children: isContainer ? node.children.filter((child) => !isLabel(child)) : [],
    number,
    minutesBefore,
    attributePlace(name) {
      const at = attributes.find((attribute) => attribute.name === name)?.nameAt;
      return at === undefined ? place : { file, line: at.line, column: at.column };
    },
  };
}

/** Short forms such as `.wide` keep their mark, so that the check can name them as they were written. */
function readAttributes(node: Directives): Record<string, string> {
  return Object.fromEntries(readWrittenSyntax(node).attributes.map(({ name, value }) => [name, value]));
}

function readMinutes(node: Directives): number {
  const minutes = Number(node.attributes?.['minutes'] ?? 0);
  return Number.isInteger(minutes) && minutes > 0 ? minutes : 0;
}

/** The parser keeps the text in brackets of a container as its first paragraph. */
function isLabel(node: RootContent): boolean {
  return node.type === 'paragraph' && node.data?.directiveLabel === true;
}
