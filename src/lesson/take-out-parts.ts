/** The written text of a part that is drawn, where it stands in a page's tree. */
export interface PartText {
  readonly type: 'raw';
  value: string;
}

/** Ids of the parts in a page's store. */
export const PART_ID = /^drawn-\d+$/;

/**
 * Takes the parts that stand more than once on a page out of it, and puts uses of them there instead. Which parts these
 * are, and their names, go by their texts and their order on the page alone. Changes the values of what is given.
 * @param parts all drawn parts of the page, in their order
 * @returns the text of the parts that are used, each once, for the page's store; empty when no part is worth it
 */
export function takeOutParts(parts: readonly PartText[]): string {
  let stored = '';
  let number = 1;
  for (const [text, places] of groupByText(parts)) {
    const id = `drawn-${number}`;
    const use = `<use href="#${id}"/>`;
    if ((places.length - 1) * text.length <= places.length * use.length + ` id="${id}"`.length) continue;
    number += 1;
    stored += text.replace(/^<\w+/, (tag) => `${tag} id="${id}"`);
    for (const place of places) place.value = use;
  }
  return stored;
}

function groupByText(parts: readonly PartText[]): Map<string, PartText[]> {
  const groups = new Map<string, PartText[]>();
  for (const part of parts) {
    const alike = groups.get(part.value);
    if (alike === undefined) groups.set(part.value, [part]);
    else alike.push(part);
  }
  return groups;
}
