import type { BuiltPack, BuiltPage } from './built-packs.ts';
import type { PageFacts, ShownName } from './look-at.ts';

/** Headings that skip a level on the way down. */
export function findSkippedLevels({ headings }: PageFacts): string[] {
  return headings.filter(({ level }, index) => level > (headings[index - 1]?.level ?? 0) + 1).map(({ text }) => text);
}

export function findRepeated(values: readonly string[]): string[] {
  return values.filter((value, index) => values.indexOf(value) !== index);
}

/** Links that lead to no file of the pack, or to no place of the page; and links from a learners' page to any other part. */
export function findDeadLinks(pack: BuiltPack, page: BuiltPage, hrefs: readonly string[]): string[] {
  const home = page.path.startsWith('learners/') ? `${pack.url}learners/` : pack.url;
  return hrefs.filter((href) => {
    const { href: target, hash } = new URL(href, page.url);
    const path = decodeURIComponent(target.slice(pack.url.length).replace(/[?#].*$/, ''));
    if (!target.startsWith(home) || !pack.files.has(path)) return true;
    const other = pack.pages.find((each) => each.path === path);
    return hash !== '' && !other?.html.includes(` id="${decodeURIComponent(hash.slice(1))}"`);
  });
}

/** Whatever names another place on the network: in links, pictures, styles and scripts alike. */
export function findOutsideAddresses(html: string): string[] {
  // What a name space or a vocabulary is called is no address that anything is fetched from.
  const text = html.replaceAll('xmlns="http://www.w3.org/2000/svg"', '').replace('"@context":"https://schema.org"', '');
  return text.match(/(?:\b(?:https?|wss?|ftp):\/\/|\b(?:src|href)="\/\/|url\(\s*["']?\/\/|@import)[^"'<\s]*/gi) ?? [];
}

/**
 * Names of the calendar which no tag gives to its language. A name in words or a table that the author wrote is left
 * out: there it is the author's own word. It counts as such when the word before or after it is the author's too.
 */
export function findUntaggedNames(pack: BuiltPack, shown: readonly ShownName[]): string[] {
  const written = squeeze(pack.authorsText);
  return shown
    .filter(({ tag }) => tag !== pack.calendar.language)
    .filter((each) => !listSurroundings(each).some((words) => written.includes(words)))
    .map(({ name, text }) => `${name}, in: ${text.slice(0, 120)}`);
}

/** A name with the word before it, and with the word after it; alone in the cell of a table, as an author writes that. */
function listSurroundings({ name, text, inCell }: ShownName): string[] {
  const line = squeeze(text);
  if (line === name) return inCell ? [`| ${name} |`] : [];
  const at = line.indexOf(name);
  const before = /\S+\s*$/.exec(line.slice(0, at))?.[0] ?? '';
  const after = /^\s*\S+/.exec(line.slice(at + name.length))?.[0] ?? '';
  return [before + name, name + after].filter((words) => words !== name);
}

function squeeze(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}
