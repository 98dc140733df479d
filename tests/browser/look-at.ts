import type { Page } from 'playwright-core';
import inPage from './in-page.js?raw';
import inPageAccess from './in-page-access.js?raw';

/** A name of the calendar as a page shows it. */
export interface ShownName {
  readonly name: string;
  /** The whole text that it stands in. */
  readonly text: string;
  /** Language that it is tagged with inside the page's body; empty for none. */
  readonly tag: string;
  /** True when the text stands directly in the cell of a table. */
  readonly inCell: boolean;
}

/** What a page is made of. */
export interface PageFacts {
  readonly title: string;
  readonly language: string;
  readonly headings: readonly { readonly level: number; readonly text: string }[];
  readonly landmarks: {
    readonly main: number;
    readonly banner: number;
    readonly footer: number;
    /** Labels of the `nav` elements; empty for one without. */
    readonly navigation: readonly string[];
  };
  /** What stands in the body outside of all landmarks. */
  readonly strayContent: readonly string[];
  readonly ids: readonly string[];
  /** Ids by which one element names another. */
  readonly pointers: readonly string[];
  readonly links: readonly string[];
  readonly sources: readonly string[];
  readonly inlineStyles: readonly string[];
  readonly handlers: readonly string[];
  readonly names: readonly ShownName[];
  /** As it is seen. */
  readonly text: string;
}

/** How the Tab key went round a page. */
export interface Tabbing {
  /** Class of the first place reached. */
  readonly first: string;
  readonly missed: readonly string[];
  readonly outOfOrder: readonly string[];
  /** Places without a clear outline, under something else, or outside of the window, while they had the focus. */
  readonly unseen: readonly string[];
  /** Places that stand above the one before them, and not beside it: readers would not look for them there. */
  readonly backwards: readonly string[];
}

/** A part of the window, in CSS pixels. */
export interface Clip {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

interface Answers {
  readonly facts: PageFacts;
  readonly misfits: readonly string[];
  readonly spaceText: undefined;
  readonly keepOnly: undefined;
  readonly watchFocus: undefined;
  readonly countPlaces: number;
  readonly tabbing: Tabbing;
  readonly listKinds: readonly string[];
  readonly focusKind: { readonly isSeen: boolean; readonly clip: Clip };
  readonly blur: undefined;
  readonly listStates: readonly string[];
  readonly showState: { readonly hasWords: boolean; readonly clip: Clip };
  readonly setState: undefined;
  readonly unmirrored: readonly string[];
  readonly directions: readonly string[];
  readonly shownOrder: string;
  readonly drawings: readonly string[];
  readonly tables: readonly string[];
  readonly textsIn: readonly string[];
  /** Directives of the content policy that stopped something, and the title afterwards. */
  readonly phoneHome: { readonly stopped: readonly string[]; readonly title: string };
}

/** Puts a question of `in-page.js` or `in-page-access.js` to a page. */
export async function lookAt<Question extends keyof Answers>(
  page: Page,
  question: Question,
  ...given: readonly unknown[]
): Promise<Answers[Question]> {
  const call = `lookAt.${question}(${given.map((value) => JSON.stringify(value)).join(', ')})`;
  return page.evaluate<Answers[Question]>(`globalThis.lookAt ?? (() => { ${inPage}\n${inPageAccess} })(); ${call}`);
}
