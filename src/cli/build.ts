import { join } from 'node:path';
import { readBytes } from '../node/read-source.ts';
import { sha256 } from '../node/sha256.ts';
import { showPath } from '../node/show-path.ts';
import { clearUnfinished, ForeignFilesError, writePack } from '../node/write-pack.ts';
import type { PackPlan } from '../pack/pack-plan.ts';
import { planPack } from '../pack/plan-pack.ts';
import type { Arguments } from './arguments.ts';
import { CONTENT_FOLDER, findWeekFolders, listWeekFolders, openSetting, refuseSameNames } from './open-weeks.ts';
import { type CheckedWeek, resolveWeeks } from './resolve-weeks.ts';
import { tellDiagnostics } from './tell-diagnostics.ts';
import type { Terminal } from './terminal.ts';
import { UsageError } from './usage-error.ts';

const OUTPUT_FOLDER = 'output';

/** What one week came to; the row that `--json` prints. */
interface BuildResult {
  readonly week: string;
  readonly status: 'built' | 'failed';
  /** The page to open first. */
  readonly open?: string;
  readonly files?: number;
  readonly diagnostics: CheckedWeek['diagnostics'];
}

/** Builds packs. A week with a mistake is passed over and keeps its last good pack. @returns The exit status. */
export function build(given: Arguments, terminal: Terminal): number {
  const { names, options } = given;
  if (names.length === 0) {
    const weeks = listWeekFolders().map(showPath).join(', ') || 'none in lessons/';
    throw new UsageError(`\`build\` needs the name of a week; the weeks are: ${weeks}`);
  }
  const folders = findWeekFolders(names);
  refuseSameNames(folders);
  const setting = openSetting(given);
  clearUnfinished(options.out ?? OUTPUT_FOLDER, Date.now());
  const results: BuildResult[] = [];
  let done = 0;
  for (const checked of resolveWeeks(folders, setting)) {
    const result = buildOne(checked, given);
    done += 1;
    tellDiagnostics(result.diagnostics, terminal);
    if (options.json !== true && options.quiet !== true) {
      tellResult(result, folders.length > 1 ? `[${done} of ${folders.length}] ` : '', terminal);
    }
    // Findings of a thousand weeks need not stay in memory where nobody asks for them again.
    results.push(options.json === true ? result : { ...result, diagnostics: [] });
  }
  if (options.json === true) terminal.print(JSON.stringify(results, null, 2));
  return results.every(({ status }) => status === 'built') ? 0 : 1;
}

function buildOne({ read, week, diagnostics }: CheckedWeek, { options }: Arguments): BuildResult {
  if (week === undefined) return { week: showPath(read.folder), status: 'failed', diagnostics };
  const plan = planPack(week, readPictures(read.folder, week.lessons), sha256);
  try {
    const folder = writePack(plan, options.out ?? OUTPUT_FOLDER, {
      replace: options.replace === true,
      sources: [read.folder, options.content ?? CONTENT_FOLDER],
    });
    return describeBuilt(read.folder, folder, plan, diagnostics);
  } catch (error) {
    if (!(error instanceof ForeignFilesError)) throw error;
    const refused = {
      rule: 'output-changed',
      severity: 'error',
      place: { file: read.week.path, line: 1, column: 1 },
      message: error.message,
    } as const;
    return { week: showPath(read.folder), status: 'failed', diagnostics: [...diagnostics, refused] };
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

function readPictures(
  folder: string,
  lessons: readonly { readonly pictures: readonly { readonly path: string }[] }[],
): Map<string, Uint8Array> {
  const paths = new Set(lessons.flatMap(({ pictures }) => pictures.map(({ path }) => path)));
  const pictures = new Map<string, Uint8Array>();
  for (const path of paths) pictures.set(path, readBytes(join(folder, path)));
  return pictures;
}

function tellResult({ week, open, files, diagnostics }: BuildResult, progress: string, terminal: Terminal): void {
  if (open === undefined) {
    const errors = diagnostics.filter(({ severity }) => severity === 'error').length;
    terminal.tell(
      `${progress}${week}: not built, ${errors} ${errors === 1 ? 'mistake' : 'mistakes'} above; the last good pack, if any, is as it was`,
    );
    return;
  }
  terminal.print(`${progress}${week}: ${files} files. Open ${terminal.emphasise(open, 'bold', 'print')}`);
}
