import type { Definition, Image, Link, Root, RootContent } from 'mdast';
import type { Diagnostic } from '../content/diagnostic.ts';
import { findNearMiss } from '../content/near-miss.ts';
import type { UsedPicture } from './model.ts';
import { isDirective, placeOf } from './number-directives.ts';

/** What links and pictures may point at. */
export interface KnownTargets {
  /** Picture files of the week, as paths from its folder. */
  readonly pictures: readonly string[];
  /** The teacher's pages: what a link may call each, and the name of its file. */
  readonly pages: ReadonlyMap<string, string>;
}

/** Directives whose text goes to learners' pages. */
const FOR_LEARNERS: ReadonlySet<string> = new Set(['handout', 'group-quiz']);

/** Schemes of links that stay in a page when it is cleaned. */
const SCHEMES: ReadonlySet<string> = new Set(['http', 'https', 'mailto']);

/** A scheme, as RFC 3986 section 3.1 writes it, or an address without one. */
const LEAVES_THE_PACK = /^(?:[a-z][a-z0-9+.-]*:|\/\/)/i;

/**
 * Checks every link and picture of a lesson. Both are turned to where the pack keeps what they point at.
 * Reported: a picture that is not there or is on the web, a link into the pack that leads nowhere or, on a learner's
 * page, to the teacher's part.
 */
export function resolveReferences(
  tree: Root,
  definitions: readonly Definition[],
  known: KnownTargets,
  file: string,
  report: (diagnostic: Diagnostic) => void,
): UsedPicture[] {
  const used: UsedPicture[] = [];
  // A definition that two pictures share is turned once.
  const turned = new Map<Image | Definition, string>();
  const byIdentifier = new Map(definitions.toReversed().map((definition) => [definition.identifier, definition]));
  const usePicture = (node: Image | Definition, from: RootContent, forLearners: boolean): void => {
    const path = turned.get(node) ?? findPicture(node.url, known.pictures);
    if (path === undefined) {
      report(describePicture(node.url, known.pictures, placeOf(from, file)));
      return;
    }
    const name = flattenPath(path);
    const same = known.pictures.find((other) => other !== path && sameFile(flattenPath(other), name));
    if (same !== undefined) report(describeSameName(path, same, placeOf(from, file)));
    used.push({ path, name, forLearners });
    turned.set(node, path);
    node.url = writePictureUrl(name);
  };
  const useLink = (node: Link | Definition, from: RootContent, forLearners: boolean): void => {
    const message = describeLink(node.url, known.pages, forLearners);
    if (message === undefined) {
      node.url = turnLink(node.url, known.pages);
      return;
    }
    report({ rule: 'link-broken', severity: 'error', place: placeOf(from, file), message, found: node.url });
  };
  const visit = (node: RootContent, forLearners: boolean): void => {
    const defined = 'identifier' in node ? byIdentifier.get(node.identifier) : undefined;
    if (node.type === 'image') usePicture(node, node, forLearners);
    if (node.type === 'imageReference' && defined !== undefined) usePicture(defined, node, forLearners);
    if (node.type === 'link') useLink(node, node, forLearners);
    if (node.type === 'linkReference' && defined !== undefined) useLink(defined, node, forLearners);
    const inside = forLearners || (isDirective(node) && FOR_LEARNERS.has(node.name));
    if ('children' in node) for (const child of node.children) visit(child, inside);
  };
  for (const node of tree.children) visit(node, false);
  return used;
}

/** All pictures of a pack lie in one folder. */
function flattenPath(path: string): string {
  return path.replaceAll('/', '-');
}

/** Some file systems tell capitals and encodings of letters apart, some do not; a pack goes to both. */
function sameFile(one: string, other: string): boolean {
  return one.normalize('NFC').toLowerCase() === other.normalize('NFC').toLowerCase();
}

function describeSameName(path: string, same: string, place: Diagnostic['place']): Diagnostic {
  const message = `The pictures \`${path}\` and \`${same}\` would have the same name in the pack; expected different names; rename one`;
  return { rule: 'repeated-name', severity: 'error', place, message, found: path };
}

function writePictureUrl(name: string): string {
  return `images/${encodeURIComponent(name)}`;
}

function findPicture(url: string, pictures: readonly string[]): string | undefined {
  if (LEAVES_THE_PACK.test(url)) return undefined;
  const path = decodePath(url)
    .replace(/^(?:\.\/)+/, '')
    .normalize('NFC');
  return pictures.find((picture) => picture.normalize('NFC') === path);
}

/** Escapes decoded; an address with a wrong escape stays as it is and is then not found. */
function decodePath(url: string): string {
  try {
    return decodeURIComponent(url);
  } catch {
    return url;
  }
}

function describePicture(url: string, pictures: readonly string[], place: Diagnostic['place']): Diagnostic {
  const web = LEAVES_THE_PACK.test(url);
  const near = web ? undefined : findNearMiss(url, pictures);
  const expected = "a picture file in the week's folder";
  const advice = web
    ? 'a pack opens without a network: save the picture in the folder'
    : near === undefined
      ? 'put the file there'
      : `did you mean \`${near}\`?`;
  return {
    rule: web ? 'link-broken' : 'missing-file',
    severity: 'error',
    place,
    message: `The picture \`${url}\` ${web ? 'is on the web' : 'is not there'}; expected ${expected}; ${advice}`,
    found: url,
    expected,
  };
}

/** What stands after a page's name stays. A link that was turned before leads to where it leads. */
function turnLink(url: string, pages: ReadonlyMap<string, string>): string {
  const { page, rest } = splitLink(url);
  return `${pages.get(page) ?? page}${rest}`;
}

function splitLink(url: string): { page: string; rest: string } {
  const page = url.replace(/[?#].*$/s, '');
  return { page, rest: url.slice(page.length) };
}

function describeLink(url: string, pages: ReadonlyMap<string, string>, forLearners: boolean): string | undefined {
  if (url === '' || url.startsWith('#')) return undefined;
  if (LEAVES_THE_PACK.test(url)) {
    const scheme = url.slice(0, url.indexOf(':')).toLowerCase();
    if (SCHEMES.has(scheme)) return undefined;
    return `The link \`${url}\` cannot stand in a pack; expected an address that begins with \`https://\`, \`http://\` or \`mailto:\`; mend the address`;
  }
  const { page } = splitLink(url);
  if (forLearners) {
    return `The link \`${url}\` would lead a learner out of the learners' pages; expected a web address or \`#…\`; take the link out`;
  }
  if (pages.has(page)) return undefined;
  const near = findNearMiss(page, [...pages.keys()]);
  const advice = near === undefined ? 'mend the address' : `did you mean \`${near}\`?`;
  return `The link \`${url}\` leads to no page of the pack; expected a web address or one of ${listNames(pages)}; ${advice}`;
}

/** Each page once, by the first of the names that lead to it. */
function listNames(pages: ReadonlyMap<string, string>): string {
  const names = new Map<string, string>();
  for (const [name, page] of pages) if (!names.has(page)) names.set(page, `\`${name}\``);
  return [...names.values()].join(', ');
}
