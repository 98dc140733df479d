import { LABELS } from '../../src/content/label-catalogue.ts';

/** Shorter words are too often words of other languages too. */
const FEWEST_LETTERS = 3;

/** The words of a text, in small letters, without placeholders. */
export function listWords(text: string): string[] {
  const words = text.replace(/\{[^{}]*\}/g, ' ').match(/\p{L}+/gu) ?? [];
  return words.map((word) => word.toLowerCase()).filter((word) => word.length >= FEWEST_LETTERS);
}

/** The words of the kit's English texts that are no words of another text. */
export function listEnglishWords(otherText: string): ReadonlySet<string> {
  const others = new Set(listWords(otherText));
  const texts = Object.values(LABELS).flatMap(({ english }): string[] =>
    typeof english === 'string' ? [english] : Object.values(english),
  );
  return new Set(texts.flatMap(listWords).filter((word) => !others.has(word)));
}

/** Attributes that are words. */
const SPOKEN = /\s(?:alt|aria-(?:label|description|roledescription|valuetext)|title|placeholder|label)="([^"]*)"/g;

/** What a page says, seen or read out: its title, its texts, and the attributes that are words. Names of files are none. */
export function readWords(html: string): string {
  const page = html.replace(/<(style|script)\b[\s\S]*?<\/\1>/g, ' ');
  const spoken = [...page.matchAll(SPOKEN)].map(([, words]) => words);
  const text = [page.replace(/<[^>]*>/g, ' '), ...spoken].join('\n');
  return text.replace(/&#x[0-9a-f]+;/gi, ' ').replace(/[\w./-]+\.(?:html|ics)\b/g, ' ');
}
