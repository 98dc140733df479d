import type { Labels } from '../../content/labels.ts';
import type { SourceFile } from '../../content/types.ts';
import { checkPapers } from './check-papers.ts';
import { leadsToPage, listTagFaults, type TagFault } from './check-tag.ts';
import { mayBeCoded } from './decode-text.ts';
import { isChance, isInStyles, isKitScript, isKitStyle, isLabelText, isPlayerText, isRunData } from './explain.ts';
import { countPhrase } from './find-phrase.ts';
import type { Leak } from './leak.ts';
import { type PageModel, readModelValues, readModelWords } from './page-model.ts';
import type { KnownTags, MarkupAside, MarkupAttribute, MarkupTag } from './read-markup.ts';
import { type PageReading, readPage } from './read-page.ts';
import { type LeakMaker, type Origin, sayFault, sayLeak } from './say-leak.ts';
import { isOwnSentence, type Secret } from './secret.ts';
import type { SecretSearch, UnseenSecret } from './secret-search.ts';
import { traceSentence } from './trace-sentence.ts';

/** What is known of all files of one search. */
export interface PageSearch {
  readonly origin: Origin;
  /** Whether only sentences are looked for, since the file is as the kit wrote it when it searched for all. */
  readonly isKept: boolean;
  readonly labels: Labels;
  /** Folded names of the calendar, words joined by spaces. */
  readonly names: ReadonlySet<string>;
  /** The week's folder, as messages show it. */
  readonly weekFolder: string;
  readonly search: SecretSearch;
  readonly secrets: readonly Secret[];
  /** Paths of the pages for learners. */
  readonly pages: ReadonlySet<string>;
  /** The author's lesson files, by their paths. */
  readonly sources: ReadonlyMap<string, SourceFile>;
  /** Tags that were met, and what is to be said of each. */
  readonly tags: KnownTags;
  readonly findings: Map<MarkupTag, TagFindings>;
  /** The same of style sheets, by their text. */
  readonly styles: Map<string, readonly UnseenSecret[]>;
}

/** What is wrong with a tag wherever it stands. */
export interface TagFindings {
  readonly faults: readonly TagFault[];
  readonly secrets: readonly { readonly attribute: MarkupAttribute; readonly unseen: UnseenSecret }[];
}

/** A page with all that is needed to judge what is found on it. */
export interface SearchedPage extends PageReading {
  readonly path: string;
  readonly source: string;
  /** What the page is made from; absent for the list of pages, and for a page that the week does not have. */
  readonly model: PageModel | undefined;
  readonly setting: PageSearch;
  add(leak: Leak): void;
}

/** Searches an HTML page: its text, tags, comments, scripts and styles, and on papers the order of things. */
export function searchPage(path: string, source: string, model: PageModel | undefined, setting: PageSearch): Leak[] {
  const leaks: Leak[] = [];
  const reading = readPage(source, setting.tags);
  const page: SearchedPage = { ...reading, path, source, model, setting, add: (leak) => void leaks.push(leak) };
  searchText(page);
  searchTags(page);
  for (const aside of page.markup.asides) searchAside(aside, page);
  if (setting.isKept) return leaks;
  searchHidden(page);
  if (model?.kind === 'papers') checkPapers(page, model);
  return leaks;
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

/** What an author has written both in the key and on a page; a note for the teacher may well say the same. */
function reportAuthors(secret: Secret, at: number, where: string, page: SearchedPage): void {
  if (secret.kind === 'note' || secret.telling !== 'anywhere' || !isOwnSentence(secret.words)) return;
  const kind = page.model?.kind === 'papers' ? 'group-quiz' : 'handout';
  const related = traceSentence(page.setting.sources.get(page.model?.lesson.file ?? ''), secret.words, kind);
  if (related === undefined) return;
  // On a paper one question gives another away; a handout gives the key away.
  const severity = kind === 'handout' ? 'error' : 'warning';
  page.add({ severity, at, message: sayLeak(secret, where, 'author'), related });
}

/** Words that are readable only when a coding is undone. */
function searchCodedText(text: string, at: number, page: SearchedPage): void {
  if (!mayBeCoded(text)) return;
  for (const { secret, coding } of page.setting.search.findUnseen(text)) {
    if (coding !== undefined) reportUnseen({ secret, coding }, at, 'in the text', page.setting.origin, page);
  }
}

function reportUnseen(unseen: UnseenSecret, at: number, where: string, maker: LeakMaker, page: SearchedPage): void {
  const coded = unseen.coding === undefined ? where : `${where}, coded (${unseen.coding})`;
  page.add({ severity: 'error', at, message: sayLeak(unseen.secret, coded, maker) });
}

const NOTHING: TagFindings = { faults: [], secrets: [] };

function searchTags(page: SearchedPage): void {
  let values: ReadonlySet<string> | undefined;
  judgeTags(page);
  for (const { tag, at } of page.markup.elements) {
    const { faults, secrets } = page.setting.findings.get(tag) ?? NOTHING;
    for (const { offset, found, expected } of faults) {
      page.add({ severity: 'error', at: at + offset, message: sayFault(found, expected, page.setting.origin) });
    }
    for (const { attribute, unseen } of secrets) {
      const where = `in the attribute \`${attribute.name}\` of \`<${tag.name}>\``;
      if (page.model !== undefined) values ??= readModelValues(page.model);
      if (values?.has(attribute.value) === true) reportAuthors(unseen.secret, at + attribute.offset, where, page);
      else if (!isLabelText(attribute.value, page.setting.labels)) {
        reportUnseen(unseen, at + attribute.offset, where, page.setting.origin, page);
      }
    }
  }
}

/** Judges the tags that were not met before: once for all elements that are written the same. */
function judgeTags({ path, markup, setting }: SearchedPage): void {
  const { findings, search, pages, isKept } = setting;
  const tags = [...new Set(markup.elements.map(({ tag }) => tag))].filter((tag) => !findings.has(tag));
  const values = tags.flatMap(({ attributes }) => attributes.map(({ value }) => value));
  // One look at all of them is enough where nothing is found, as on most pages.
  const mayHold = search.findUnseen(values.join('\n')).length > 0;
  for (const tag of tags) {
    const suspects = mayHold ? tag.attributes : tag.attributes.filter((attribute) => isWhole(attribute, search));
    const secrets = suspects.flatMap((attribute) =>
      listTexts(attribute)
        .flatMap((text) => search.findUnseen(text))
        .filter(({ secret }, index, all) => all.findIndex((other) => other.secret === secret) === index)
        .filter(({ secret }) => !isChance(tag, attribute, secret, search))
        // A page is called by its title, which stands in the link to it.
        .filter(({ secret }) => secret.telling === 'anywhere' || !leadsToPage(attribute, path, pages))
        .map((unseen) => ({ attribute, unseen })),
    );
    findings.set(tag, { faults: isKept ? [] : listTagFaults(tag, path, pages), secrets });
  }
}

/** The value of an attribute; of several classes each one as well. */
function listTexts({ name, value }: MarkupAttribute): string[] {
  return name === 'class' && value.includes(' ') ? [value, ...value.split(' ')] : [value];
}

/** Whether an attribute holds a short secret and nothing else. */
function isWhole(attribute: MarkupAttribute, search: SecretSearch): boolean {
  return listTexts(attribute).some((text) => search.isWhole(text.toLowerCase().trim()));
}

function searchAside({ kind, text, at, element }: MarkupAside, page: SearchedPage): void {
  const { origin } = page.setting;
  if (kind === 'instruction' && /^doctype\s/i.test(text)) return;
  if (kind === 'style') {
    if (isKitStyle(text)) return;
    for (const unseen of findInStyle(text, page)) reportUnseen(unseen, at, 'in a style sheet', origin, page);
    return;
  }
  if (kind === 'script' && (isKitScript(text) || isRunData(page.markup.elements[element]?.tag, text))) return;
  const [unseen] = page.setting.search.findUnseen(text);
  const where = kind === 'script' ? 'in a script' : 'in a comment';
  if (unseen !== undefined) reportUnseen(unseen, at, where, origin, page);
  else if (!page.setting.isKept) {
    const found = kind === 'script' ? '<script>' : `<!--${text}-->`;
    page.add({ severity: 'error', at, message: sayFault(found, 'no script but the player’s, and no comment', origin) });
  }
}

function findInStyle(text: string, { setting }: SearchedPage): readonly UnseenSecret[] {
  const known = setting.styles.get(text);
  if (known !== undefined) return known;
  const found = setting.search
    .findUnseen(text)
    .filter(({ secret, coding }) => coding !== undefined || !isInStyles(secret.words));
  setting.styles.set(text, found);
  return found;
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
