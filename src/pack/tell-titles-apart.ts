import type { PackFile } from './pack-plan.ts';

const TITLE = /<title>([^<]*)<\/title>/;

/** The title of a page, as it is written in HTML; nothing where there is none. */
export function findTitle({ content }: PackFile): string | undefined {
  return typeof content === 'string' ? TITLE.exec(content)?.[1] : undefined;
}

/**
 * Pages with a title of their own each: two lessons of a day, or two handouts, may have been given the same one. The
 * second then has a number after it.
 * @param taken Titles, as written in HTML, of pages that keep theirs.
 */
export function tellTitlesApart(pages: readonly PackFile[], taken: readonly string[] = []): PackFile[] {
  const titles = new Set(taken);
  return pages.map((page) => {
    const title = findTitle(page);
    if (title === undefined) return page;
    let own = title;
    for (let number = 2; titles.has(own); number += 1) own = `${title} (${number})`;
    titles.add(own);
    return own === title
      ? page
      : { ...page, content: String(page.content).replace(TITLE, () => `<title>${own}</title>`) };
  });
}
