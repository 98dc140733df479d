import { join } from 'node:path';
import type { ResolvedWeek } from '../lesson/model.ts';
import { FileError } from '../node/file-error.ts';
import { findChromium } from '../node/find-chromium.ts';
import { PrintError } from '../node/print-error.ts';
import { printPdfs } from '../node/print-pdfs.ts';
import { sha256 } from '../node/sha256.ts';
import { showPath } from '../node/show-path.ts';
import { ForeignFilesError } from '../node/write-pack.ts';
import type { PackFile, PackPlan } from '../pack/pack-plan.ts';
import { planPdfs } from '../pack/pdf/plan-pdfs.ts';
import { planPack } from '../pack/plan-pack.ts';

/** What printing the pages of a pack came to. */
export interface PrintResult {
  /** Paths of the PDF files; none after a fault. */
  readonly pdf: readonly string[];
  /** How many files the pack has with them. */
  readonly files?: number;
  /** Why there are none, and what to do. */
  readonly pdfFault?: string;
}

/** A pack that is in its place. */
export interface PlacedPack {
  readonly week: ResolvedWeek;
  /** What it was planned from. */
  readonly files: readonly PackFile[];
  /** Puts another plan of the same pack in its place. @returns The pack's folder. */
  put(plan: PackPlan): string;
}

/** Adds PDF files to packs. */
export type PrintWeek = (pack: PlacedPack) => Promise<PrintResult>;

/**
 * Looks for a browser, once for all weeks. A pack is only touched again when all of its PDF files are there.
 * @param outFolder Folder for packs.
 */
export function createWeekPrinter(outFolder: string): PrintWeek {
  const program = recover(findChromium);
  return async ({ week, files, put }) => {
    if (typeof program !== 'string') return program;
    const order = { planned: planPdfs(week), files, language: week.labels.language, program, outFolder };
    try {
      const pdfs = await printPdfs(order);
      const whole = planPack(week, [...files, ...pdfs], sha256);
      const folder = put(whole);
      return { pdf: pdfs.map(({ path }) => showPath(join(folder, path))), files: whole.files.length };
    } catch (error) {
      return describeFault(error);
    }
  };
}

function recover(find: () => string): string | PrintResult {
  try {
    return find();
  } catch (error) {
    return describeFault(error);
  }
}

function describeFault(error: unknown): PrintResult {
  const isKnown = error instanceof PrintError || error instanceof FileError || error instanceof ForeignFilesError;
  if (!isKnown) throw error;
  return { pdf: [], pdfFault: error.message };
}
