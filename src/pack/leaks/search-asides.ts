import { isKitScript, isRunData, listOwnStyleLines } from './explain.ts';
import { countPhrase } from './find-phrase.ts';
import { readTitle } from './page-model.ts';
import type { MarkupAside } from './read-markup.ts';
import { sayFault } from './say-leak.ts';
import { reportUnseen, type SearchedPage } from './searched-page.ts';
import { splitWords } from './split-words.ts';

/** Searches what is in a page's file and not on the page: comments, scripts and style sheets. */
export function searchAsides(page: SearchedPage): void {
  for (const aside of page.markup.asides) {
    if (aside.kind === 'style') searchStyle(aside.text, aside.at, page);
    else if (!isOfTheKit(aside, page)) searchAside(aside, page);
  }
}

function isOfTheKit({ kind, text, element }: MarkupAside, { markup }: SearchedPage): boolean {
  if (kind === 'instruction') return /^doctype\s/i.test(text);
  return kind === 'script' && (isKitScript(text) || isRunData(markup.elements[element]?.tag, text));
}

function searchAside({ kind, text, at }: MarkupAside, page: SearchedPage): void {
  const [unseen] = page.setting.search.findUnseen(text);
  if (unseen !== undefined) reportUnseen(unseen, at, kind === 'script' ? 'in a script' : 'in a comment', page);
  else if (!page.setting.isKept) {
    const found = kind === 'script' ? '<script>' : `<!--${text}-->`;
    const message = sayFault(found, 'no script but the player’s, and no comment', page.setting.origin);
    page.add({ severity: 'error', at, message });
  }
}

/** A page's title, which all can read, stands at the foot of its sheets as well. */
function searchStyle(text: string, at: number, page: SearchedPage): void {
  const lines = listOwnStyleLines(text);
  if (lines.length === 0) return;
  const title = page.model === undefined ? [] : splitWords(readTitle(page.model));
  const telling = page.setting.search.findUnseen(lines.join('\n')).filter(({ secret, coding }) => {
    return coding !== undefined || countPhrase(title, secret.words) === 0;
  });
  for (const unseen of telling) reportUnseen(unseen, at, 'in a style sheet', page);
  const foreign = lines.find((line) => !isFontOrFoot(line));
  if (foreign === undefined || telling.length > 0 || page.setting.isKept) return;
  const message = sayFault(foreign, 'no style but those of every page', page.setting.origin);
  page.add({ severity: 'error', at, message });
}

/** Whether a line brings a typeface, or what stands at the foot of sheets: a rule for things could mark one of them. */
function isFontOrFoot(line: string): boolean {
  const rule = line.replace(/"(?:[^"\\]|\\.)*"/g, '""');
  return rule.trim() === '' || (/^@(?:font-face|page)\b/.test(rule) && !/\}\s*(?!@bottom-|\}|$)\S/.test(rule));
}
