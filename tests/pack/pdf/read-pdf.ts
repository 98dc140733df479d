import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A sheet as an independent reader sees it. */
export interface ReadSheet {
  /** In whole millimetres, as it lies. */
  readonly size: string;
  readonly text: string;
  /** Kinds of tags in its part of the tree, each once; PDF 2.0's own kinds by what they stand for. */
  readonly tags: ReadonlySet<string>;
  /** What is said for drawings. */
  readonly alternatives: readonly string[];
  readonly languages: readonly string[];
  /** Addresses of its links; a link within the document as the index of the sheet, from 0. */
  readonly links: readonly (string | number)[];
}

export interface ReadEntry {
  readonly title: string;
  readonly sheet: number;
  readonly isOpen: boolean;
  readonly below: readonly ReadEntry[];
}

/** A PDF file as an independent reader sees it: pdfjs, which browsers show PDFs with. */
export interface ReadPdf {
  readonly info: Readonly<Record<string, unknown>>;
  readonly language: string | undefined;
  readonly isMarked: boolean;
  readonly pageMode: string;
  readonly outline: readonly ReadEntry[];
  readonly sheets: readonly ReadSheet[];
}

export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  // The reader takes the bytes for itself.
  const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0, isEvalSupported: false });
  const document = await task.promise;
  type Document = typeof document;
  type Outline = Awaited<ReturnType<Document['getOutline']>>;

  const findSheet = async (place: unknown): Promise<number> => {
    const target = typeof place === 'string' ? await document.getDestination(place) : place;
    if (!Array.isArray(target)) throw new Error('A link within the document leads nowhere.');
    return document.getPageIndex(target[0]);
  };
  const readEntries = async (entries: Outline): Promise<ReadEntry[]> => {
    const read: ReadEntry[] = [];
    for (const { title, dest, count, items } of entries ?? []) {
      const isOpen = (count ?? 0) > 0;
      read.push({ title, sheet: await findSheet(dest), isOpen, below: await readEntries(items) });
    }
    return read;
  };
  const readSheet = async (number: number): Promise<ReadSheet> => {
    const page = await document.getPage(number);
    const links: (string | number)[] = [];
    for (const { url, unsafeUrl, dest } of await page.getAnnotations()) {
      links.push(url ?? unsafeUrl ?? (await findSheet(dest)));
    }
    const found = { tags: new Set<string>(), alternatives: [] as string[], languages: [] as string[] };
    collectTags(await page.getStructTree(), found);
    const { items } = await page.getTextContent();
    const [left = 0, bottom = 0, right = 0, top = 0] = page.view;
    return {
      size: `${toMillimetres(right - left)} x ${toMillimetres(top - bottom)}`,
      text: items.map((item) => ('str' in item ? item.str + (item.hasEOL ? '\n' : '') : '')).join(''),
      ...found,
      links,
    };
  };

  const { info } = await document.getMetadata();
  const facts = { ...info };
  const sheets: ReadSheet[] = [];
  for (let number = 1; number <= document.numPages; number += 1) sheets.push(await readSheet(number));
  const read: ReadPdf = {
    info: facts,
    language: 'Language' in facts && typeof facts.Language === 'string' ? facts.Language : undefined,
    isMarked: (await document.getMarkInfo())?.Marked === true,
    pageMode: await document.getPageMode(),
    outline: await readEntries(await document.getOutline()),
    sheets,
  };
  await task.destroy();
  return read;
}

interface Tag {
  readonly role?: string;
  readonly alt?: string;
  readonly lang?: string;
  readonly children?: readonly unknown[];
}

interface FoundTags {
  readonly tags: Set<string>;
  readonly alternatives: string[];
  readonly languages: string[];
}

function collectTags(tag: Tag | null | undefined, found: FoundTags): void {
  if (tag?.role !== undefined) found.tags.add(tag.role);
  if (tag?.alt !== undefined) found.alternatives.push(tag.alt);
  if (tag?.lang !== undefined) found.languages.push(tag.lang);
  for (const child of tag?.children ?? []) if (isTag(child)) collectTags(child, found);
}

function isTag(value: unknown): value is Tag {
  return typeof value === 'object' && value !== null && 'role' in value;
}

function toMillimetres(points: number): number {
  return Math.round((points * 25.4) / 72);
}

/** All entries of an outline, those below others after them. */
export function listTitles(entries: readonly ReadEntry[]): string[] {
  return entries.flatMap(({ title, below }) => [title, ...listTitles(below)]);
}
