import type { Labels } from '../../content/labels.ts';
import type { SourceFile } from '../../content/types.ts';
import type { TagFault } from './check-tag.ts';
import type { Leak } from './leak.ts';
import type { PageModel } from './page-model.ts';
import type { MarkupAttribute, MarkupTag } from './parse-tag.ts';
import type { KnownTags } from './read-markup.ts';
import type { PageReading } from './read-page.ts';
import { type Origin, sayLeak } from './say-leak.ts';
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

/** What an author has written both in the key and on a page; a note for the teacher may well say the same. */
export function reportAuthors(secret: Secret, at: number, where: string, page: SearchedPage): void {
  if (secret.kind === 'note' || secret.telling !== 'anywhere' || !isOwnSentence(secret.words)) return;
  const kind = page.model?.kind === 'papers' ? 'group-quiz' : 'handout';
  const related = traceSentence(page.setting.sources.get(page.model?.lesson.file ?? ''), secret.words, kind);
  if (related === undefined) return;
  // On a paper one question gives another away; a handout gives the key away.
  const severity = kind === 'handout' ? 'error' : 'warning';
  page.add({ severity, at, message: sayLeak(secret, where, 'author'), related });
}

/** Something of the key that stands where nobody reads. @param where Such as `in a comment`. */
export function reportUnseen(unseen: UnseenSecret, at: number, where: string, page: SearchedPage): void {
  const coded = unseen.coding === undefined ? where : `${where}, coded (${unseen.coding})`;
  page.add({ severity: 'error', at, message: sayLeak(unseen.secret, coded, page.setting.origin) });
}
