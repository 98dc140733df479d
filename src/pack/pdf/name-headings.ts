/** An entry of a browser's outline. */
export interface OutlineEntry {
  readonly number: number;
  readonly title: string;
}

/**
 * Titles for entries of an outline, from the page's own headings. Chromium puts a heading's texts together without spaces,
 * and says each once for every sheet that repeats it: `GroupGroupHeronHeron` for "Group Heron".
 * @param entries In the order of the page.
 * @param headings In the order of the page, each as the texts in it; more than there are entries, since some are not
 * shown on paper.
 * @returns By number of the entry; those that fit no heading are left out.
 */
export function nameHeadings(
  entries: readonly OutlineEntry[],
  headings: readonly (readonly string[])[],
): Map<number, string> {
  const titles = new Map<number, string>();
  let from = 0;
  for (const { number, title } of entries) {
    for (let at = from; at < headings.length; at += 1) {
      const shown = findShown(squash(title), headings[at] ?? []);
      if (shown === undefined) continue;
      titles.set(number, shown.join('').replace(/\s+/g, ' ').trim());
      from = at + 1;
      break;
    }
  }
  return titles;
}

/** Those of a heading's texts that a title consists of, each once or more often, in order; undefined where it does not. */
function findShown(title: string, texts: readonly string[]): string[] | undefined {
  let at = 0;
  const shown = texts.filter((text) => {
    const squashed = squash(text);
    if (squashed === '') return true;
    const before = at;
    while (title.startsWith(squashed, at)) at += squashed.length;
    return at > before;
  });
  return title !== '' && at === title.length ? shown : undefined;
}

/** What is the same on paper and on the page: without spaces, marks for breaks within words and joined letters. */
function squash(text: string): string {
  return text.normalize('NFKC').replace(/[\s\u00ad]+/g, '');
}
