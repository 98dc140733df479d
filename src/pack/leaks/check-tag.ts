import type { MarkupAttribute, MarkupTag } from './parse-tag.ts';

/** Something that no page for learners may have, whatever it says. */
export interface TagFault {
  /** Counted from the `<` of the tag. */
  readonly offset: number;
  /** As written. */
  readonly found: string;
  readonly expected: string;
}

/** Elements in which an answer could be chosen already, or that bring in another file or another address. */
const NEVER: ReadonlySet<string> = new Set(
  'base datalist embed form frame iframe input link noscript object option select textarea'.split(' '),
);

/** Attributes that tell a state, an order or a fact to programs only. */
const NEVER_ATTRIBUTES =
  /^(?:data-.*|on[a-z]+|checked|selected|aria-checked|aria-selected|accesskey|item(?:prop|scope|type|ref|id)|typeof|property|vocab|resource|about|contenteditable|srcdoc)$/;

/** What the frame of every page says of itself. */
const META_NAMES: ReadonlySet<string> = new Set(['viewport']);

const ADDRESSES: ReadonlySet<string> = new Set(
  'action background cite data formaction href longdesc ping poster src srcset xlink:href'.split(' '),
);

/**
 * Looks for what stands on no page for learners: states and facts for programs, forms, scripts in attributes, links to
 * the teacher's part.
 * @param pages Paths of the pages for learners.
 */
export function listTagFaults(tag: MarkupTag, path: string, pages: ReadonlySet<string>): TagFault[] {
  const faults: TagFault[] = [];
  if (NEVER.has(tag.name))
    faults.push({ offset: 0, found: `<${tag.name}>`, expected: 'nothing to fill in and no frame' });
  if (tag.name === 'meta' && !isFrameMeta(tag.attributes)) {
    faults.push({ offset: 0, found: writeTag(tag), expected: 'no more metadata than every page has' });
  }
  for (const attribute of tag.attributes) {
    const { name, value, offset } = attribute;
    const found = `${name}="${value}"`;
    if (NEVER_ATTRIBUTES.test(name)) faults.push({ offset, found, expected: 'nothing that only programs read' });
    if (name === 'tabindex' && Number(value) > 0)
      faults.push({ offset, found, expected: 'the order of the page itself' });
    if (name === 'value' && !/^(?:li|progress|meter|button)$/.test(tag.name)) {
      faults.push({ offset, found, expected: 'no `value` there' });
    }
    if (ADDRESSES.has(name) && !isAllowedAddress(value, path, pages)) {
      faults.push({ offset, found, expected: 'links to other files for learners and to the web only' });
    }
  }
  return faults;
}

function writeTag({ name, attributes }: MarkupTag): string {
  return `<${[name, ...attributes.map((each) => `${each.name}="${each.value}"`)].join(' ')}>`;
}

function isFrameMeta(attributes: readonly MarkupAttribute[]): boolean {
  const [first, second] = attributes;
  if (first?.name === 'charset') return second === undefined;
  if (first?.name === 'http-equiv') return first.value === 'Content-Security-Policy';
  return first?.name === 'name' && META_NAMES.has(first.value);
}

/** Whether an attribute is the address of a page for learners. @param path The file in which it stands. */
export function leadsToPage({ name, value }: MarkupAttribute, path: string, pages: ReadonlySet<string>): boolean {
  return ADDRESSES.has(name) && pages.has(resolvePath(path, value.replace(/[?#].*$/s, '')) ?? '');
}

function isAllowedAddress(value: string, path: string, pages: ReadonlySet<string>): boolean {
  if (value.startsWith('#') || /^(?:https?|mailto):/i.test(value)) return true;
  if (/^data:/i.test(value)) return true;
  if (/^[a-z][a-z0-9+.-]*:|^\/|\\/i.test(value)) return false;
  const file = resolvePath(path, value.replace(/[?#].*$/s, ''));
  return file !== undefined && (!/\.x?html?$/i.test(file) || pages.has(file));
}

/** The path that a relative address leads to; undefined when that is outside of the learners' folder. */
function resolvePath(from: string, address: string): string | undefined {
  const steps = from.split('/').slice(0, -1);
  const [root] = steps;
  for (const step of decodePath(address).split('/')) {
    if (step === '..' && steps.pop() === undefined) return undefined;
    if (!/^\.{0,2}$/.test(step)) steps.push(step);
  }
  return steps[0] === root ? steps.join('/') : undefined;
}

function decodePath(address: string): string {
  try {
    return decodeURIComponent(address);
  } catch {
    return address;
  }
}
