import type { Code, Html, Nodes } from 'mdast';
import type { Diagnostic } from '../content/diagnostic.ts';
import { quote } from '../content/wording.ts';
import { checkDirective } from './check-directive.ts';
import { checkText, describeIndent } from './check-text.ts';
import { describeDepth, MOST_LEVELS } from './find-too-deep.ts';
import { isDirective } from './number-directives.ts';
import type { ParsedLesson } from './parse-lesson.ts';
import { matchAt } from './read-attributes.ts';
import { COLONS, DIRECTIVE_NAME } from './read-opening.ts';
import { describeFault, findMeant, type KnownDirective, placeFaults, type SyntaxScan } from './syntax-scan.ts';

/**
 * Finds every directive that is not written as it must be: those that the parser took for prose or code, those it
 * read in part, fences that do not match; and raw HTML, which packs leave out.
 * Names and values of attributes, unknown directives and where a directive may stand are not checked here.
 * What is nested too deep gives a `nesting` finding: such a lesson must not be worked on any further.
 * `known` are all directives; `file` is what messages call the lesson. Sets `misread` in the `data.written` of directives
 * whose attributes are reported here already.
 * @returns The findings in order of place.
 */
export function checkSyntax(
  { tree, source, tooDeepAt }: ParsedLesson,
  file: string,
  known: readonly KnownDirective[],
): Diagnostic[] {
  if (tooDeepAt !== undefined) return placeFaults(source, file, [describeDepth(tooDeepAt)]);
  const byName = new Map(known.map(({ name, forms }) => [name, forms]));
  const scan: SyntaxScan = { source, known: byName, faults: [], orphans: [], skipTo: 0 };
  checkNode(scan, tree, []);
  return placeFaults(source, file, scan.faults);
}

function checkNode(scan: SyntaxScan, node: Nodes, inside: Nodes[]): void {
  if (inside.length > MOST_LEVELS) {
    // What lies beside it, as deep, is the same fault.
    if (!scan.faults.some(({ rule }) => rule === 'nesting')) {
      scan.faults.push(describeDepth(node.position?.start.offset ?? 0));
    }
    return;
  }
  if (node.type === 'text') checkText(scan, node);
  else if (node.type === 'html') checkHtml(scan, node);
  else if (node.type === 'code') checkCode(scan, node);
  else if (isDirective(node)) checkDirective(scan, node, inside);
  if (!('children' in node)) return;
  inside.push(node);
  for (const child of node.children) checkNode(scan, child, inside);
  inside.pop();
}

/** Comments are for authors and go unsaid, unless one never ends and hides what follows. */
function checkHtml({ faults }: SyntaxScan, node: Html): void {
  const at = node.position?.start.offset ?? 0;
  const value = node.value.replace(/<!--[\s\S]*?-->/g, '').trim();
  if (value === '' || /^<\/[a-z][^>]*>$/i.test(value)) return;
  const start = /^\S*/.exec(value)?.[0] ?? '';
  if (value.startsWith('<!--')) {
    const message = describeFault('A comment does not end and hides all that follows', '`-->` after it', 'add `-->`');
    faults.push({ rule: 'html-left-out', severity: 'error', at, message, found: '<!--', expected: '-->' });
    return;
  }
  const lines = node.position === undefined ? 1 : node.position.end.line - node.position.start.line + 1;
  const what =
    lines > 1
      ? `HTML (${quote(start)}, ${lines} lines up to the next empty one) is left out`
      : `HTML (${quote(start)}) is left out`;
  const message = describeFault(what, 'Markdown', 'write it in Markdown, or put code between backticks');
  faults.push({ rule: 'html-left-out', severity: 'warning', at, message, found: start });
}

/** Code by indentation that reads like a directive: it would be printed instead of being one. */
function checkCode(scan: SyntaxScan, node: Code): void {
  const { source, known } = scan;
  const from = node.position?.start.offset ?? 0;
  const to = node.position?.end.offset ?? 0;
  if (!node.value.includes('::') || /^[`~]/.test(source.charAt(from))) return;
  for (const line of source.slice(from, to).matchAll(/(?:^|[\r\n])[ \t>]*(?=::)/g)) {
    const at = from + line.index + line[0].length;
    const colons = matchAt(COLONS, source, at) ?? '';
    const name = matchAt(DIRECTIVE_NAME, source, at + colons.length);
    const fence = name === undefined && colons.length > 2 && /[\r\n]|^$/.test(source.charAt(at + colons.length));
    if (!fence && (name === undefined || findMeant(known, name) === undefined)) continue;
    scan.faults.push({ rule: 'directive-syntax', ...describeIndent(at, colons + (name ?? '')) });
    if (colons.length > 2 && name !== undefined) scan.orphans.push(colons.length);
    return;
  }
}
