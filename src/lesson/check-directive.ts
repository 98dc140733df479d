import type { Nodes } from 'mdast';
import type { ContainerDirective, Directives } from 'mdast-util-directive';
import { quote } from '../content/wording.ts';
import {
  describeBackslash,
  describeComma,
  describeSmartQuote,
  isSmartQuote,
  readAttributes,
} from './read-attributes.ts';
import { findBlockEnd } from './source-lines.ts';
import { describeFault, findMeant, type SyntaxFault, type SyntaxScan, takesForm, writeExample } from './syntax-scan.ts';
import { readWrittenSyntax, type WrittenAttribute } from './written-directive.ts';

type Fault = Omit<SyntaxFault, 'rule'> & { readonly rule?: SyntaxFault['rule'] };

/** Holds a directive that was read against what its author is likely to have meant. `inside` are the nodes around it. */
export function checkDirective(scan: SyntaxScan, node: Directives, inside: readonly Nodes[]): void {
  const written = readWrittenSyntax(node);
  const { attributes } = written;
  const before = scan.faults.length;
  const report = (fault: Fault): void => {
    scan.faults.push({ rule: 'directive-syntax', ...fault });
  };
  checkName(scan, node, report);
  checkRepeats(attributes, report);
  checkValues(scan.source, attributes, report);
  if (node.type === 'textDirective') checkBrokenEnd(scan, node, report);
  if (scan.faults.length > before) written.misread = true;
  if (node.type === 'containerDirective' && written.closingAt === undefined) checkUnclosed(scan, node, inside);
}

/** A known name in other letters: capitals, or accents in another encoding. Other unknown names are the resolver's. */
function checkName({ known }: SyntaxScan, node: Directives, report: (fault: Fault) => void): void {
  const start = node.position?.start.offset;
  if (start === undefined || known.has(node.name)) return;
  const meant = findMeant(known, node.name);
  if (meant === undefined || node.name.toLowerCase().normalize('NFC') !== meant) return;
  const colons = node.type === 'containerDirective' ? readWrittenSyntax(node).colons : 2;
  const right = takesForm(known, meant, 'container') ? `:::${meant}` : writeExample(known, meant);
  const message = describeFault(`${quote(node.name)} is not a directive`, quote(meant), `write ${quote(right)}`);
  report({ rule: 'directive-unknown', at: start + colons, message, found: node.name, expected: meant });
}

function checkRepeats(attributes: readonly WrittenAttribute[], report: (fault: Fault) => void): void {
  for (const [index, { name, nameAt }] of attributes.entries()) {
    const first = attributes.slice(0, index).find((other) => other.name.normalize('NFC') === name.normalize('NFC'));
    if (first === undefined) continue;
    const message = describeFault(`${quote(name)} is written twice`, 'it once', 'take one of the two out');
    report({ rule: 'attribute-repeated', at: nameAt.offset, message, found: name, related: first.nameAt.offset });
  }
}

function checkValues(source: string, attributes: readonly WrittenAttribute[], report: (fault: Fault) => void): void {
  for (let index = 0; index < attributes.length; index++) {
    const attribute = attributes[index];
    if (attribute === undefined || /^[.#]/.test(attribute.name)) continue;
    const following = attributes.slice(index + 1);
    const count = following.findIndex(({ name, valueAt }) => valueAt !== undefined || /^[.#]/.test(name));
    const words = count === -1 ? following : following.slice(0, count);
    const fault = findValueFault(source, attribute, words);
    if (fault === undefined) continue;
    report(fault);
    // The words that a spoilt value left behind are the same fault.
    index += words.length;
  }
}

/** `words` are the names without a value that follow: the rest of a value without quotes, most likely. */
function findValueFault(
  source: string,
  attribute: WrittenAttribute,
  words: readonly WrittenAttribute[],
): Fault | undefined {
  const { name, nameAt, value, valueAt, valueEnd, quoted } = attribute;
  if (valueAt === undefined || valueEnd === undefined) {
    const message = describeFault(`${quote(name)} has no value`, `\`${name}=…\``, 'write its value, or take it out');
    return { at: nameAt.offset, message, found: name };
  }
  if (isSmartQuote(value[0]) || isSmartQuote(value.at(-1))) {
    const at = isSmartQuote(value[0]) ? valueAt.offset : valueEnd - 1;
    return describeSmartQuote(at, source.charAt(at));
  }
  const last = source.charAt(valueEnd - 1);
  if (quoted)
    return words.length > 0 && last === '\\' ? describeBackslash(valueEnd - 1, source.charAt(valueEnd)) : undefined;
  if (last === ',' || last === ';') return describeComma(valueEnd - 1, last);
  const lastWord = words.at(-1);
  if (lastWord === undefined) return undefined;
  const whole = source.slice(valueAt.offset, lastWord.nameAt.offset + lastWord.name.length);
  const right = `${name}="${whole.replace(/\s+/g, ' ')}"`;
  const message = describeFault(
    `A value of more than one word, ${quote(whole)}`,
    'quotes around it',
    `write ${quote(right)}`,
  );
  return { at: valueAt.offset, message, found: whole, expected: right };
}

/** Braces or brackets left over directly after an inline directive: they could not be read as part of it. */
function checkBrokenEnd(scan: SyntaxScan, node: Directives, report: (fault: Fault) => void): void {
  const { source } = scan;
  const start = node.position?.start.offset;
  const end = node.position?.end.offset;
  if (start === undefined || end === undefined) return;
  const next = source.charAt(end);
  if (next !== '{' && next !== '[') return;
  scan.skipTo = Math.max(scan.skipTo, end + 1);
  const last = source.charAt(end - 1);
  if (last === '}' || (last === ']' && next === '[')) {
    const what = last === ']' || next === '{' ? `A second \`${next}\`` : 'A label after the attributes';
    const advice = 'put each part once and in this order, or a space before other text';
    report({ at: end, message: describeFault(what, '`name[label]{attributes}`', advice) });
  } else if (next === '[') {
    report({ at: end, message: describeFault('A `[` is not closed', '`]` after the label', 'add `]`'), found: '[' });
  } else {
    const blockEnd = findBlockEnd(source, end);
    const read = readAttributes(source, end, blockEnd, blockEnd);
    const unread = {
      at: end,
      message: describeFault('Attributes that cannot be read', '`{name=value}`', 'mend the text between the braces'),
    };
    report('end' in read ? unread : read);
  }
}

/** A container without a closing line of its own, and what took it away. */
function checkUnclosed(scan: SyntaxScan, node: ContainerDirective, inside: readonly Nodes[]): void {
  const { colons } = readWrittenSyntax(node);
  const around = inside.findLast((other) => other.type !== 'list');
  const outer = around?.type === 'containerDirective' ? around : undefined;
  const closed = outer === undefined ? undefined : findClosed(inside);
  const nested = closed === undefined ? undefined : outer;
  const tooFew = nested !== undefined && readWrittenSyntax(nested).colons <= colons;
  // The line that was meant to close it, or the one around it, comes out as plain text further down.
  scan.orphans.push(tooFew ? readWrittenSyntax(nested).colons : colons);
  const head = writeHead(node);
  const at = node.position?.start.offset ?? 0;
  const common = { rule: 'directive-unclosed', at, found: head } as const;
  if (tooFew) {
    const more = `:${':'.repeat(colons)}${nested.name}`;
    const line = nested.position?.start.line ?? 0;
    const message = describeFault(
      `${quote(head)} stands in ${quote(writeHead(nested))} of line ${line}, which has no more colons than it`,
      'more colons outside than inside',
      `write ${quote(more)} on line ${line} and as many colons to close it, or close it before this line`,
    );
    scan.faults.push({ ...common, message, expected: more, related: nested.position?.start.offset ?? 0 });
    return;
  }
  const fence = ':'.repeat(colons);
  const what = `${quote(head)} is not closed${describeEnd(around, closed)}`;
  const message = describeFault(what, `a line ${quote(fence)} after its text`, 'add the line');
  const related = closed?.position?.start.offset;
  scan.faults.push({ ...common, message, expected: fence, ...(related === undefined ? {} : { related }) });
}

/** The innermost container around that has a closing line; a list item or a quotation between ends the search. */
function findClosed(inside: readonly Nodes[]): ContainerDirective | undefined {
  for (const node of inside.toReversed()) {
    if (node.type !== 'containerDirective') return undefined;
    if (readWrittenSyntax(node).closingAt !== undefined) return node;
  }
  return undefined;
}

function describeEnd(around: Nodes | undefined, closed: ContainerDirective | undefined): string {
  if (around?.type === 'listItem') return ' before its list item ends';
  if (around?.type === 'blockquote') return ' before its quotation ends';
  if (closed === undefined) return '';
  const line = readWrittenSyntax(closed).closingAt?.line ?? 0;
  return ` before line ${line}, which closes ${quote(writeHead(closed))} of line ${closed.position?.start.line ?? 0}`;
}

function writeHead(node: ContainerDirective): string {
  return `${':'.repeat(readWrittenSyntax(node).colons)}${node.name}`;
}
