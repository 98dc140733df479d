/**
 * Prints what papers and keys for 30 groups cost against those for 4, in cold processes taken in turn: of a quiz with
 * every kind of question, and of a whole build of the demonstration week. Then what 10,000 papers leave in memory.
 * Usage: npm run bench:papers [-- PAIRS]
 */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, '../..');
const kit = join(root, 'src/launcher/lessontide.cjs');
const pairs = Number(process.argv[2] ?? 7);
const work = mkdtempSync(join(tmpdir(), 'lessontide-bench-'));
const FEW = 4;
const MANY = 30;
const PAPERS = 10_000;

/** Bundled in the same way as the kit. */
async function buildProgram(name) {
  await build({
    root,
    configFile: join(root, 'vite.config.ts'),
    logLevel: 'error',
    build: {
      ssr: join(here, `${name}.ts`),
      outDir: work,
      emptyOutDir: false,
      rolldownOptions: { output: { entryFileNames: `${name}.cjs` } },
    },
  });
  return join(work, `${name}.cjs`);
}

/** Runs a program cold; what it prints, and on the fourth pipe what it used. */
function run(args) {
  const { status, output, stderr } = spawnSync(process.execPath, args, {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe', 'pipe'],
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`${args.join(' ')} ended with ${status}: ${stderr}`);
  return { printed: output[1], used: output[3] };
}

const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
const fixed = (value, decimals = 2) => value.toFixed(decimals);

/** Processor milliseconds for both numbers of groups in turn; the first pair only fills the caches of the disk. */
function compare(title, aim, measure) {
  const rows = Array.from({ length: pairs + 1 }, () => ({ few: measure(FEW), many: measure(MANY) })).slice(1);
  const [few, many] = ['few', 'many'].map((key) => fixed(median(rows.map((row) => row[key])), 0));
  const ratio = fixed(median(rows.map((row) => row.many / row.few)));
  console.log(`${title}: ${MANY} groups cost ${ratio} times what ${FEW} do (aim ${aim}); ${many} ms to ${few} ms`);
}

/** The demonstration week with as many groups in each quiz. */
function copyWeek(groups) {
  const folder = join(work, `groups-${groups}`);
  cpSync(join(root, 'lessons/round-moon'), folder, { recursive: true });
  for (const name of readdirSync(folder).filter((each) => each.endsWith('.md'))) {
    const path = join(folder, name);
    writeFileSync(path, readFileSync(path, 'utf8').replace(/\bgroups=\d+/g, `groups=${groups}`));
  }
  return folder;
}

try {
  const program = await buildProgram('papers-entry');
  // As the kit's launcher starts its bundle; see there.
  const quiz = ['--interrupt-budget=400000', program, join(root, 'content'), 'saltgrass-point', '2026-07-29'];
  console.log(`Node ${process.version}; ${pairs} pairs, cold processes taken in turn, processor time, medians`);
  compare('papers and keys of a quiz with every kind of question', 2, (groups) =>
    Number(run([...quiz, 'deal', String(groups)]).printed),
  );
  const weeks = new Map([FEW, MANY].map((groups) => [groups, copyWeek(groups)]));
  const buildKit = ['--require', join(here, 'report-usage.cjs'), kit, 'build', '--quiet', '--out', join(work, 'packs')];
  compare('the demonstration week built', 2, (groups) => {
    const { userCPUTime, systemCPUTime } = JSON.parse(run([...buildKit, weeks.get(groups)]).used);
    return (userCPUTime + systemCPUTime) / 1000;
  });
  const [tenth, all] = JSON.parse(run(['--expose-gc', ...quiz.slice(1), 'many', String(PAPERS)]).printed);
  const [tenthMib, allMib] = [tenth, all].map((bytes) => fixed(bytes / 2 ** 20, 1));
  console.log(
    `memory in use after ${PAPERS} papers: ${fixed(all / tenth)} times that after ${PAPERS / 10} (aim 1.2); ${allMib} MiB to ${tenthMib} MiB`,
  );
} finally {
  rmSync(work, { recursive: true, force: true });
}
