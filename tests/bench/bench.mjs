/**
 * Prints how much the kit costs beyond the floor (bare remark-parse, remark-rehype and rehype-stringify on the same
 * Markdown), as ratios of runs taken in turn: machines are noisy, ratios within one run are not. Processor time counts
 * all threads, so that the ratio hardly moves when others use the machine; the time on the clock is told beside it.
 * Usage: npm run bench [-- PAIRS]
 */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, '../..');
const kit = join(root, 'src/launcher/lessontide.cjs');
const pairs = Number(process.argv[2] ?? 7);
const work = mkdtempSync(join(tmpdir(), 'lessontide-bench-'));

/** A program of the benchmark, bundled in the same way as the kit. */
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

/** The demonstration week again and again, each copy on its own dates, five lessons a copy. */
function copyWeeks(count) {
  const weeks = [];
  for (let index = 0; index < count; index += 1) {
    const folder = join(work, 'lessons', `week-${String(index + 1).padStart(3, '0')}`);
    weeks.push(folder);
    cpSync(join(root, 'lessons/round-moon'), folder, { recursive: true });
    const monday = new Date(Date.UTC(2026, 6, 27 + 7 * index)).toISOString().slice(0, 10);
    const week = join(folder, 'week.yaml');
    writeFileSync(week, readFileSync(week, 'utf8').replace(/^begins:.*$/m, `begins: ${monday}`));
    for (const name of readdirSync(folder)) {
      const file = join(folder, name);
      // Answers that are tied to the calendar belong to the dates of the demonstration.
      writeFileSync(file, readFileSync(file, 'utf8').replace(/ check=(?:"[^"]*"|[\w-]+)/g, ''));
    }
  }
  return weeks;
}

/** Runs a program once, cold: milliseconds on the clock and of processor time, greatest resident memory in MiB. */
function measure(program, args, flags = []) {
  const began = process.hrtime.bigint();
  const { status, output, stderr } = spawnSync(
    process.execPath,
    [...flags, '--require', join(here, 'report-usage.cjs'), program, ...args],
    { cwd: root, stdio: ['ignore', 'ignore', 'pipe', 'pipe'], encoding: 'utf8' },
  );
  const ms = Number(process.hrtime.bigint() - began) / 1e6;
  if (status !== 0) throw new Error(`${program} ended with ${status}: ${stderr}`);
  const { maxRSS, userCPUTime, systemCPUTime } = JSON.parse(output[3]);
  return { ms, busyMs: (userCPUTime + systemCPUTime) / 1000, mib: maxRSS / 1024 };
}

const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
const fixed = (value, decimals = 2) => value.toFixed(decimals);

/** Two programs in turn; prints the medians and the median of the ratios pair by pair. */
function compare(title, aim, kitArgs, floor, floorArgs, times) {
  measure(kit, kitArgs);
  measure(floor, floorArgs);
  const rows = Array.from({ length: times }, () => ({ kit: measure(kit, kitArgs), floor: measure(floor, floorArgs) }));
  const tell = (key) => {
    const ratio = median(rows.map((row) => row.kit[key] / row.floor[key]));
    const [kitMs, floorMs] = ['kit', 'floor'].map((side) => fixed(median(rows.map((row) => row[side][key])), 0));
    return `${fixed(ratio)} times the floor (${kitMs} ms to ${floorMs} ms)`;
  };
  console.log(`${title}, aim ${aim}: processor ${tell('busyMs')}; clock ${tell('ms')}`);
  return median(rows.map((row) => row.kit.mib));
}

/** What a month's drawings, score and drum track cost: one program with and without them, and the floor, in turn. */
function compareMonth(month, floor, floorArgs, times) {
  const args = [join(root, 'content'), 'saltgrass-point', '2026-07-29'];
  // As the kit's launcher starts its bundle; see there.
  const flags = ['--interrupt-budget=400000'];
  const look = () => measure(month, [...args, 'look'], flags).busyMs;
  const make = () => measure(month, [...args, 'make'], flags).busyMs;
  const rows = Array.from({ length: times }, () => ({
    made: make() - look(),
    floor: measure(floor, floorArgs).busyMs,
  }));
  const ratio = median(rows.map(({ made, floor: least }) => made / least));
  const [made, least] = ['made', 'floor'].map((side) => fixed(median(rows.map((row) => row[side])), 0));
  console.log(
    `a month's drawings, score and track, aim 0.5: processor ${fixed(ratio)} times the floor (${made} ms to ${least} ms)`,
  );
}

try {
  const floor = await buildProgram('floor');
  const month = await buildProgram('month-entry');
  const html = join(work, 'html');
  mkdirSync(html);
  const out = join(work, 'packs');
  const buildArgs = (weeks) => ['build', '--quiet', '--out', out, ...weeks];
  const weeks = copyWeeks(200);
  const demo = [join(root, 'lessons/round-moon')];
  console.log(`Node ${process.version}; ${pairs} pairs, cold processes taken in turn, medians`);
  compare('the demonstration week', 1.6, buildArgs(demo), floor, [html, ...demo], pairs);
  compareMonth(month, floor, [html, ...demo], pairs);
  const few = weeks.slice(0, 40);
  const mib200 = compare('200 lessons', 1.7, buildArgs(few), floor, [html, ...few], Math.min(pairs, 3));
  const mib1000 = measure(kit, buildArgs(weeks)).mib;
  console.log(
    `memory for 1,000 lessons: ${fixed(mib1000 / mib200)} times that for 200 (aim 1.3); ${fixed(mib1000, 0)} MiB to ${fixed(mib200, 0)} MiB`,
  );
} finally {
  rmSync(work, { recursive: true, force: true });
}
