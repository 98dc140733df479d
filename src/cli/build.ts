import { join } from 'node:path';
import { createFontCutter } from '../node/cut-fonts.ts';
import { sha256 } from '../node/sha256.ts';
import { showPath } from '../node/show-path.ts';
import { clearUnfinished, ForeignFilesError, writePack } from '../node/write-pack.ts';
import { type FontCutter, planFonts } from '../pack/fonts/plan-fonts.ts';
import type { PackPlan, Zip } from '../pack/pack-plan.ts';
import { planFiles, planPack } from '../pack/plan-pack.ts';
import { QTI_FOLDER } from '../pack/qti/plan-qti.ts';
import type { Arguments } from './arguments.ts';
import { findPlannedLeaks } from './find-week-leaks.ts';
import {
  CONTENT_FOLDER,
  findWeekFolders,
  listWeekFolders,
  OUTPUT_FOLDER,
  openSetting,
  refuseSameNames,
} from './open-weeks.ts';
import type { PlacedPack, PrintResult } from './print-week.ts';
import { readPictures } from './read-pictures.ts';
import { type CheckedWeek, resolveWeeks } from './resolve-weeks.ts';
import { tellDiagnostics } from './tell-diagnostics.ts';
import type { Terminal } from './terminal.ts';
import { UsageError } from './usage-error.ts';

/** What one week came to; the row that `--json` prints. */
interface BuildResult extends Partial<PrintResult> {
  readonly week: string;
  readonly status: 'built' | 'failed';
  /** The page to open first. */
  readonly open?: string;
  readonly files?: number;
  /** Where `--qti` was given: the archives for an assessment tool, one a quiz. */
  readonly qti?: readonly string[];
  readonly diagnostics: CheckedWeek['diagnostics'];
}

/** Builds packs. A week with a mistake is passed over and keeps its last good pack. @returns The exit status. */
export async function build(given: Arguments, terminal: Terminal): Promise<number> {
  const { names, options } = given;
  if (names.length === 0) {
    const weeks = listWeekFolders().map(showPath).join(', ') || 'none in lessons/';
    throw new UsageError(`\`build\` needs the name of a week; the weeks are: ${weeks}`);
  }
  const folders = findWeekFolders(names);
  refuseSameNames(folders);
  const setting = openSetting(given);
  // Its tables take longer to set up than a page to write, so only those wait for them who want archives.
  const zip = options.qti === true ? (await import('../node/zip.ts')).zip : undefined;
  const outFolder = options.out ?? OUTPUT_FOLDER;
  // Read only by those who want PDFs, as the above.
  const print = options.pdf === true ? (await import('./print-week.ts')).createWeekPrinter(outFolder) : undefined;
  const fonts = createFontCutter();
  clearUnfinished(outFolder, Date.now());
  const results: BuildResult[] = [];
  let done = 0;
  for (const checked of resolveWeeks(folders, setting)) {
    const { pack, result: built } = await buildOne(checked, given, { fonts, zip });
    done += 1;
    tellDiagnostics(built.diagnostics, terminal);
    const isTold = options.json !== true && options.quiet !== true;
    if (isTold) tellResult(built, folders.length > 1 ? `[${done} of ${folders.length}] ` : '', terminal);
    const printed = pack === undefined ? undefined : await print?.(pack);
    if (printed !== undefined) tellPrinted(built.week, printed, isTold, terminal);
    const result = { ...built, ...printed };
    // Findings of a thousand weeks need not stay in memory where nobody asks for them again.
    results.push(options.json === true ? result : { ...result, diagnostics: [] });
  }
  if (options.json === true) terminal.print(JSON.stringify(results, null, 2));
  return results.every(({ status, pdfFault }) => status === 'built' && pdfFault === undefined) ? 0 : 1;
}

/** What packs are made with, beside what the core has. */
interface Tools {
  readonly fonts: FontCutter;
  readonly zip: Zip | undefined;
}

interface BuiltWeek {
  readonly result: BuildResult;
  /** Absent where none was made. */
  readonly pack?: PlacedPack;
}

async function buildOne(
  { read, week, diagnostics }: CheckedWeek,
  { options }: Arguments,
  { fonts, zip }: Tools,
): Promise<BuiltWeek> {
  const name = showPath(read.folder);
  if (week === undefined) return { result: { week: name, status: 'failed', diagnostics } };
  const files = planFiles(week, readPictures(read.folder, week.lessons), sha256, zip);
  const found = [...diagnostics, ...findPlannedLeaks(week, read, files)];
  if (found.some(({ severity }) => severity === 'error')) {
    return { result: { week: name, status: 'failed', diagnostics: found } };
  }
  const all = [...files, ...(await planFonts(files, fonts))];
  const plan = planPack(week, all, sha256);
  const put = (whole: PackPlan) =>
    writePack(whole, options.out ?? OUTPUT_FOLDER, {
      replace: options.replace === true,
      sources: [read.folder, options.content ?? CONTENT_FOLDER],
    });
  try {
    const folder = put(plan);
    const archives = zip === undefined ? {} : { qti: listQtiArchives(plan, folder) };
    return {
      result: { ...describeBuilt(read.folder, folder, plan, found), ...archives },
      pack: { week, files: all, put },
    };
  } catch (error) {
    if (!(error instanceof ForeignFilesError)) throw error;
    const refused = {
      rule: 'output-changed',
      severity: 'error',
      place: { file: read.week.path, line: 1, column: 1 },
      message: error.message,
    } as const;
    return { result: { week: name, status: 'failed', diagnostics: [...found, refused] } };
  }
}

function describeBuilt(
  weekFolder: string,
  packFolder: string,
  { files }: PackPlan,
  diagnostics: CheckedWeek['diagnostics'],
): BuildResult {
  return {
    week: showPath(weekFolder),
    status: 'built',
    open: showPath(join(packFolder, 'index.html')),
    files: files.length,
    diagnostics,
  };
}

function listQtiArchives({ files }: PackPlan, packFolder: string): string[] {
  return files.flatMap(({ path }) => (path.startsWith(`${QTI_FOLDER}/`) ? [showPath(join(packFolder, path))] : []));
}

function tellResult({ week, open, files, qti, diagnostics }: BuildResult, progress: string, terminal: Terminal): void {
  if (open === undefined) {
    const errors = diagnostics.filter(({ severity }) => severity === 'error').length;
    terminal.tell(
      `${progress}${week}: not built, ${errors} ${errors === 1 ? 'mistake' : 'mistakes'} above; the last good pack, if any, is as it was`,
    );
    return;
  }
  terminal.print(`${progress}${week}: ${files} files. Open ${terminal.emphasise(open, 'bold', 'print')}`);
  if (qti === undefined) return;
  const archives = qti.length === 0 ? 'none, for this week has no quiz' : qti.join(', ');
  terminal.print(`For an assessment tool, with the answers: ${archives}`);
}

/** @param isWanted Whether what went well is told too. */
function tellPrinted(week: string, { pdf, pdfFault }: PrintResult, isWanted: boolean, terminal: Terminal): void {
  if (pdfFault !== undefined) terminal.tell(`${week}: built without PDFs: ${pdfFault}`);
  else if (isWanted) terminal.print(`To print: ${pdf.join(', ')}`);
}
