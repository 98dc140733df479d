import { findPersonalTraces } from './find-personal.ts';
import type { Leak } from './leak.ts';
import { readPage } from './read-page.ts';
import { describeFound, listPersonal, type MediaSetting } from './search-bytes.ts';

/** Elements of SVG whose text is said of the drawing and not written in it. */
const SAID: ReadonlySet<string> = new Set(['title', 'desc', 'metadata']);

/** Searches an SVG file: what is written in it, and what is said of it in attributes, titles, comments and metadata. */
export function searchDrawing(source: string, setting: MediaSetting): Leak[] {
  const { markup, words, runOf } = readPage(source, new Map());
  const leaks: Leak[] = [];
  setting.search.find(words, (secret, at) => {
    if (secret.telling === 'anywhere') leaks.push(describeFound({ secret }, runOf(at).at, 'in the text', setting));
  });
  const look = (text: string, at: number, where: string) => {
    for (const unseen of setting.search.findUnseen(text)) {
      // What is said of a drawing was found above where it is a sentence.
      if (where.startsWith('in an element') && unseen.secret.telling === 'anywhere' && unseen.coding === undefined)
        continue;
      leaks.push(describeFound(unseen, at, where, setting));
    }
  };
  for (const { text, at, element } of markup.runs) {
    const saying = findSaying(markup.elements, element);
    if (saying !== undefined) look(text, at, `in an element \`<${saying}>\``);
  }
  for (const { tag, at } of markup.elements) {
    for (const { name, value, offset } of tag.attributes) {
      if (!/^xmlns|^(?:lang|version|type)$/.test(name)) look(value, at + offset, `in the attribute \`${name}\``);
    }
  }
  for (const { kind, text, at } of markup.asides) look(text, at, kind === 'comment' ? 'in a comment' : `in a ${kind}`);
  return [...leaks, ...listPersonal(findPersonalTraces(source, []), setting)];
}

function findSaying(elements: ReturnType<typeof readPage>['markup']['elements'], element: number): string | undefined {
  for (let index = element; index >= 0; index = elements[index]?.parent ?? -1) {
    const name = elements[index]?.tag.name ?? '';
    if (SAID.has(name)) return name;
  }
  return undefined;
}
