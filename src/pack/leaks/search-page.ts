import { checkPapers } from './check-papers.ts';
import { mayBeCoded } from './decode-text.ts';
import { isPlayerText } from './explain.ts';
import { countPhrase } from './find-phrase.ts';
import type { Leak } from './leak.ts';
import { type PageModel, readModelWords } from './page-model.ts';
import { readPage } from './read-page.ts';
import { sayFault, sayLeak } from './say-leak.ts';
import { searchAsides } from './search-asides.ts';
import { searchTags } from './search-tags.ts';
import { type PageSearch, reportAuthors, reportUnseen, type SearchedPage } from './searched-page.ts';
import type { Secret } from './secret.ts';

/** Searches an HTML page: its text, tags, comments, scripts and styles, and on papers the order of things. */
export function searchPage(path: string, source: string, model: PageModel | undefined, setting: PageSearch): Leak[] {
  // What stands on a page again and again is told once, where it stands first.
  const leaks = new Map<string, Leak>();
  const add = (leak: Leak) => void (leaks.has(leak.message) || leaks.set(leak.message, leak));
  const page: SearchedPage = { ...readPage(source, setting.tags), path, source, model, setting, add };
  searchText(page);
  searchTags(page);
  searchAsides(page);
  if (!setting.isKept) {
    searchHidden(page);
    if (model?.kind === 'papers') checkPapers(page, model);
  }
  return [...leaks.values()];
}

/** Sentences that only the key holds, in the words of the page. */
function searchText(page: SearchedPage): void {
  const places = new Map<Secret, number[]>();
  page.setting.search.find(page.words, (secret, at) => {
    if (secret.telling !== 'anywhere') return;
    const known = places.get(secret);
    if (known === undefined) places.set(secret, [at]);
    else known.push(at);
  });
  if (places.size > 0) {
    const model = page.model === undefined ? [] : readModelWords(page.model);
    for (const [secret, all] of places) judgeSentence(secret, all, model, page);
  }
  for (const { text, at } of page.markup.runs) searchCodedText(text, at, page);
}

/** A sentence that the page's model has as often is the author's own, or a fact that the kit tells in both places. */
function judgeSentence(secret: Secret, places: readonly number[], model: readonly string[], page: SearchedPage): void {
  const own = places.filter((at) => at < page.ownWords);
  const [first = 0] = own.length > 0 ? own : places;
  const at = page.runOf(first).at;
  if (Math.max(own.length, 1) > countPhrase(model, secret.words)) {
    page.add({ severity: 'error', at, message: sayLeak(secret, 'in the text', page.setting.origin) });
    return;
  }
  reportAuthors(secret, at, 'in the text', page);
}

/** Words that are readable only when a coding is undone. */
function searchCodedText(text: string, at: number, page: SearchedPage): void {
  if (!mayBeCoded(text)) return;
  for (const { secret, coding } of page.setting.search.findUnseen(text)) {
    if (coding !== undefined) reportUnseen({ secret, coding }, at, 'in the text', page);
  }
}

/** Text in elements that are not shown: the player's own words are, and nothing else. */
function searchHidden(page: SearchedPage): void {
  const { elements, runs, parted } = page.markup;
  for (const { text, at, element } of runs) {
    if (elements[element]?.hidden !== true) continue;
    const words = parted.find((run) => run.at === at)?.text ?? text;
    if (page.model?.kind === 'handout' && isPlayerText(words, page.setting.labels)) continue;
    page.add({
      severity: 'error',
      at,
      message: sayFault(text.trim(), 'no text that is not shown', page.setting.origin),
    });
  }
}
