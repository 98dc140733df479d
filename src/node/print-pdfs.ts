import { mkdtempSync, rmSync } from 'node:fs';
import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { PackFile } from '../pack/pack-plan.ts';
import { mergePdfs } from '../pack/pdf/merge-pdfs.ts';
import type { PdfPart, ReadAddress } from '../pack/pdf/open-part.ts';
import { PdfFormatError } from '../pack/pdf/pdf-format-error.ts';
import type { PlannedPdf } from '../pack/pdf/plan-pdfs.ts';
import { findFileError } from './file-error.ts';
import { openPrinter, type Printer } from './open-printer.ts';
import { PrintError } from './print-error.ts';
import { findRealPath } from './real-path.ts';
import { WORK_PREFIX, writeFiles } from './write-pack.ts';

declare const KIT_VERSION: string;

/** What PDFs of a pack are made from. */
export interface PrintOrder {
  readonly planned: readonly PlannedPdf[];
  /** Files of the pack: the pages to print, and what they show. */
  readonly files: readonly PackFile[];
  /** BCP 47 tag of the pages. */
  readonly language: string;
  /** Program file of a Chromium. */
  readonly program: string;
  /** Folder for packs: what is in work lies there for the time, where a browser may read it that may not read all. */
  readonly outFolder: string;
  /** How long one step of the browser may take. */
  readonly patienceMs?: number;
}

/** An old computer that is busy may need a minute to start a browser. */
const PATIENCE_MS = 120_000;

const PAGES_FOLDER = 'pages';

/**
 * Prints pages of a pack and makes PDF files of them. The same pages give the same bytes by the same Chromium with the
 * same fonts.
 * @throws PrintError when the browser fails. @throws FileError when the system refuses.
 */
export async function printPdfs(order: PrintOrder): Promise<PackFile[]> {
  const { planned, files, language, program, outFolder, patienceMs = PATIENCE_MS } = order;
  const work = makeWorkFolder(outFolder);
  let printer: Printer | undefined;
  try {
    writeFiles({ files }, join(work, PAGES_FOLDER));
    printer = await openPrinter({ program, profileFolder: join(work, 'profile'), patienceMs });
    const pdfs: PackFile[] = [];
    for (const { path, title, pages, isOneSided } of planned) {
      const parts: PdfPart[] = [];
      for (const page of pages) {
        parts.push({ path: page, ...(await printer.print(pathToFileURL(join(work, PAGES_FOLDER, page)).href)) });
      }
      const head = { title, language, maker: `lessontide ${KIT_VERSION}`, isOneSided };
      pdfs.push({ path, content: mergePdfs(parts, head, readAddressIn(work)) });
    }
    return pdfs;
  } catch (error) {
    throw explain(error, order);
  } finally {
    await printer?.close();
    clear(work);
  }
}

function makeWorkFolder(outFolder: string): string {
  try {
    // The browser tells addresses with links followed.
    return mkdtempSync(join(findRealPath(outFolder), WORK_PREFIX));
  } catch (error) {
    throw findFileError(error, outFolder) ?? error;
  }
}

/** Where links on the pages lead: a PDF must not name folders of this computer. */
function readAddressIn(work: string): ReadAddress {
  const before = `/${basename(work)}/${PAGES_FOLDER}/`;
  return (address) => {
    if (/^(?:https?|mailto|tel):/i.test(address)) return 'outside';
    const at = address.indexOf(before);
    if (at === -1) return undefined;
    const [path = '', anchor = ''] = address.slice(at + before.length).split('#');
    try {
      return { path: decodeURIComponent(path), anchor: decodeURIComponent(anchor) };
    } catch {
      return undefined;
    }
  };
}

function explain(error: unknown, { program, outFolder }: PrintOrder): unknown {
  if (error instanceof PdfFormatError) {
    return new PrintError(
      `\`${program}\` wrote ${error.message}; expected a PDF as Chromium 120 and later write it; bring it up to date, or name the program file of another browser in the environment variable \`CHROMIUM_PATH\``,
      { cause: error },
    );
  }
  return findFileError(error, outFolder) ?? error;
}

/** Parts of the browser may still be at their last files; what stays is cleared by a later build. */
function clear(work: string): void {
  try {
    rmSync(work, { recursive: true, force: true, maxRetries: 10, retryDelay: 50 });
  } catch (error) {
    if (findFileError(error) === undefined) throw error;
  }
}
