import { isKitScript, isRunData, listOwnStyleLines } from './explain.ts';
import { countPhrase } from './find-phrase.ts';
import { readTitle } from './page-model.ts';
import type { MarkupAside } from './read-markup.ts';
import { sayFault } from './say-leak.ts';
import { reportUnseen, type SearchedPage } from './searched-page.ts';
import { splitWords } from './split-words.ts';

/** Searches what is in a page's file and not on the page: comments, scripts and style sheets. */
export function searchAsides(page: SearchedPage): void {
  for (const aside of page.markup.asides) searchAside(aside, page);
}

function searchAside({ kind, text, at, element }: MarkupAside, page: SearchedPage): void {
  const { origin } = page.setting;
  if (kind === 'instruction' && /^doctype\s/i.test(text)) return;
  if (kind === 'style') return searchStyle(text, at, page);
  if (kind === 'script' && (isKitScript(text) || isRunData(page.markup.elements[element]?.tag, text))) return;
  const [unseen] = page.setting.search.findUnseen(text);
  const where = kind === 'script' ? 'in a script' : 'in a comment';
  if (unseen !== undefined) reportUnseen(unseen, at, where, page);
  else if (!page.setting.isKept) {
    const found = kind === 'script' ? '<script>' : `<!--${text}-->`;
    page.add({ severity: 'error', at, message: sayFault(found, 'no script but the player’s, and no comment', origin) });
  }
}

/** A page's title, which all can read, stands at the foot of its sheets as well. */
function searchStyle(text: string, at: number, page: SearchedPage): void {
  const lines = listOwnStyleLines(text);
  if (lines.length === 0) return;
  const title = page.model === undefined ? [] : splitWords(readTitle(page.model));
  for (const unseen of page.setting.search.findUnseen(lines.join('\n'))) {
    const isTitle = unseen.coding === undefined && countPhrase(title, unseen.secret.words) > 0;
    if (!isTitle) reportUnseen(unseen, at, 'in a style sheet', page);
  }
}
