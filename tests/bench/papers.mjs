/**
 * Prints what papers and keys for 30 groups cost against those for 4: as part of the week's build, cold processes in
 * turn, and alone, each with its week worked out anew, in turn in this one process. Then the memory after 10,000 papers
 * against that after 1,000, each in a process of its own.
 * Usage: npm run bench:papers [-- SCHOOL]
 */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, '../..');
const school = process.argv[2] ?? 'saltgrass-point';
const work = mkdtempSync(join(tmpdir(), 'lessontide-bench-'));

const fixed = (value, decimals = 2) => value.toFixed(decimals);

/** Milliseconds of the processor: what else runs on the machine does not count. */
function time(run) {
  const began = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(began);
  return (user + system) / 1000;
}

/** A Wednesday of every tenth week from 1990 on. */
function nameWeek(number) {
  return new Date(Date.UTC(1990, 0, 3 + 70 * number)).toISOString().slice(0, 10);
}

/** Loaded before the kit: tells the milliseconds of the processor that the whole run took, on the fourth pipe. */
const TELL_TIME =
  'data:text/javascript,import{writeSync}from"node:fs";process.on("exit",()=>{const u=process.cpuUsage();writeSync(3,String((u.user+u.system)/1000))})';

/** A copy of the demonstration week whose quizzes are for so many groups. */
function copyWeek(groups) {
  const week = join(work, `groups-${groups}`);
  cpSync(join(root, 'lessons/round-moon'), week, { recursive: true });
  for (const name of readdirSync(week)) {
    const file = join(week, name);
    writeFileSync(file, readFileSync(file, 'utf8').replace(/groups=\d+/, `groups=${groups}`));
  }
  return week;
}

/** Milliseconds of the processor for one cold build. */
function timeBuild(week) {
  const command = [join(root, 'dist/lessontide.cjs'), 'build', week, '--out', join(work, 'out'), '--quiet'];
  const { status, output, stderr } = spawnSync(process.execPath, ['--import', TELL_TIME, ...command], {
    cwd: root,
    stdio: ['ignore', 'ignore', 'pipe', 'pipe'],
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`The kit ended with ${status}: ${stderr}`);
  return Number(output[3]);
}

function compareBuilds() {
  const weeks = { 4: copyWeek(4), 30: copyWeek(30) };
  const ratios = [];
  for (let pair = 0; pair < 8; pair += 1) {
    const row = {};
    for (const groups of pair % 2 === 0 ? [4, 30] : [30, 4]) row[groups] = timeBuild(weeks[groups]);
    // The first pair warms the disk.
    if (pair > 0) ratios.push(row[30] / row[4]);
  }
  return ratios.sort((a, b) => a - b);
}

/** Greatest resident memory, in MiB, of a process that deals so many papers, 20 at a time. */
function memoryOf(entry, papers) {
  const program = `
    import { openPapers } from ${JSON.stringify(pathToFileURL(entry).href)};
    const deal = openPapers(${JSON.stringify(join(root, 'content'))}, ${JSON.stringify(school)});
    for (let number = 0; number < ${papers / 20}; number++) {
      deal(new Date(Date.UTC(1950, 0, 4 + 70 * number)).toISOString().slice(0, 10), 20);
    }
    console.log(process.resourceUsage().maxRSS / 1024);`;
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '-e', program], {
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`Dealing ended with ${status}: ${stderr}`);
  return Number(stdout);
}

try {
  await build({
    root,
    configFile: false,
    logLevel: 'error',
    ssr: { noExternal: true },
    build: {
      ssr: join(here, 'papers-entry.ts'),
      outDir: work,
      target: 'node20',
      rolldownOptions: { output: { format: 'es', entryFileNames: 'papers.mjs', codeSplitting: false } },
    },
  });
  const entry = join(work, 'papers.mjs');
  const deal = (await import(pathToFileURL(entry).href)).openPapers(join(root, 'content'), school);
  // Both are warm before they are timed.
  for (let number = 0; number < 6; number += 1) deal(nameWeek(number), number % 2 === 0 ? 4 : 30);
  const sums = { 4: 0, 30: 0 };
  const ratios = [];
  for (let number = 6; number < 66; number += 1) {
    const date = nameWeek(number);
    const row = {};
    for (const groups of number % 2 === 0 ? [4, 30] : [30, 4]) row[groups] = time(() => deal(date, groups));
    sums[4] += row[4];
    sums[30] += row[30];
    ratios.push(row[30] / row[4]);
  }
  ratios.sort((a, b) => a - b);
  console.log(`Node ${process.version}; ${school}, in turn`);
  const builds = compareBuilds();
  console.log(
    `the week's build with quizzes for 30 groups: ${fixed(builds[3])} times that for 4 (aim 2); pairs from ${fixed(builds[0])} to ${fixed(builds[6])}`,
  );
  console.log(
    `papers and key alone, of 30 groups: ${fixed(sums[30] / sums[4])} times those of 4; ${fixed(sums[30] / 60, 1)} ms to ${fixed(sums[4] / 60, 1)} ms, middle of the ratios ${fixed(ratios[30])}`,
  );
  const few = memoryOf(entry, 1000);
  const many = memoryOf(entry, 10_000);
  console.log(
    `memory after 10,000 papers: ${fixed(many / few)} times that after 1,000; ${fixed(many, 0)} MiB to ${fixed(few, 0)} MiB`,
  );
} finally {
  rmSync(work, { recursive: true, force: true });
}
