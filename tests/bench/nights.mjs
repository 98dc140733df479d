/**
 * Prints what a century of nights costs beyond the sky: the kit against the bare calls of astronomy-engine that those
 * nights need. The calls are written down in a run of their own, counted, and made again without the kit; the two are
 * timed in turn, decade by decade, in this one process. Then the memory of a century against that of a year.
 * Usage: npm run bench:nights [-- SCHOOL]
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, '../..');
const school = process.argv[2] ?? 'saltgrass-point';
const work = mkdtempSync(join(tmpdir(), 'lessontide-bench-'));

/** Calls that are no part of the least a night needs: made all the same, they are the kit's own cost. */
const NOT_NEEDED = new Set(['MoonPhase']);

/** Puts the counting functions in the place of the engine, but for themselves. */
const countCalls = {
  name: 'count-calls',
  enforce: 'pre',
  resolveId(source, importer = '') {
    const engine = join(here, 'counted-engine.ts');
    return source === 'astronomy-engine' && !importer.endsWith('counted-engine.ts') ? engine : undefined;
  },
};

async function bundle(entry, plugins) {
  const name = entry.replace('.ts', '.mjs');
  await build({
    root,
    configFile: false,
    logLevel: 'error',
    plugins,
    ssr: { noExternal: true },
    build: {
      ssr: join(here, entry),
      outDir: work,
      emptyOutDir: false,
      target: 'node20',
      rolldownOptions: { output: { format: 'es', entryFileNames: name, codeSplitting: false } },
    },
  });
  return import(pathToFileURL(join(work, name)).href);
}

const fixed = (value, decimals = 2) => value.toFixed(decimals);
const sum = (values) => values.reduce((total, value) => total + value, 0);

/** Milliseconds of the processor: what else runs on the machine does not count. */
function time(run) {
  const began = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(began);
  return (user + system) / 1000;
}

/** Loaded before the kit: tells its greatest resident memory, in KiB, on the fourth pipe. */
const TELL_MEMORY =
  'data:text/javascript,import{writeSync}from"node:fs";process.on("exit",()=>writeSync(3,String(process.resourceUsage().maxRSS)))';

/** Greatest resident memory, in MiB, of the command that prints the nights from a date to the end of 2025. */
function memoryOf(from) {
  const nights = ['nights', '--school', school, '--json', '--from', from, '--to', '2025-12-31'];
  const { status, output, stderr } = spawnSync(
    process.execPath,
    ['--import', TELL_MEMORY, join(root, 'dist/lessontide.cjs'), ...nights],
    { cwd: root, stdio: ['ignore', 'ignore', 'pipe', 'pipe'], encoding: 'utf8' },
  );
  if (status !== 0) throw new Error(`The kit ended with ${status}: ${stderr}`);
  return Number(output[3]) / 1024;
}

/** Each different call once: a fact asked for twice is needed once. */
function listNeeded(calls) {
  const needed = new Map();
  for (const call of calls) if (!NOT_NEEDED.has(call.name)) needed.set(JSON.stringify(call), call);
  return [...needed.values()];
}

function countByName(calls, counts) {
  for (const { name } of calls) counts.set(name, (counts.get(name) ?? 0) + 1);
}

function describeCounts(counts, nights) {
  return [...counts].map(([name, count]) => `${name} ${fixed(count / nights, 3)}`).join(', ');
}

try {
  const kit = await bundle('nights-entry.ts', []);
  const counted = await bundle('counted-entry.ts', [countCalls]);
  const content = join(root, 'content');
  const runKit = kit.openNights(content, school);
  const runCounted = counted.openNights(content, school);
  const made = new Map();
  const needed = new Map();
  const rows = [];
  let nights = 0;
  // The decade before warms both up.
  for (let year = 1916; year < 2026; year += 10) {
    const range = [`${year}-01-01`, `${year + 9}-12-31`];
    counted.recording.calls = [];
    const count = runCounted(...range);
    const calls = counted.recording.calls;
    counted.recording.calls = null;
    const least = listNeeded(calls);
    const runs = { kit: () => runKit(...range), bare: () => counted.replay(least) };
    const order = (year / 10) % 2 < 1 ? ['kit', 'bare'] : ['bare', 'kit'];
    const row = Object.fromEntries(order.map((name) => [name, time(runs[name])]));
    if (year === 1916) continue;
    nights += count;
    countByName(calls, made);
    countByName(least, needed);
    rows.push(row);
  }
  const kitMs = sum(rows.map((row) => row.kit));
  const bareMs = sum(rows.map((row) => row.bare));
  console.log(`Node ${process.version}; ${school}, 100 years, ${nights} nights, decades in turn`);
  console.log(`calls a night, made:   ${describeCounts(made, nights)}`);
  console.log(`calls a night, needed: ${describeCounts(needed, nights)}`);
  console.log(
    `100 years of nights: ${fixed(kitMs / bareMs)} times the bare calls they need (aim 1.3); ${fixed(kitMs, 0)} ms to ${fixed(bareMs, 0)} ms, decades from ${fixed(Math.min(...rows.map((row) => row.kit / row.bare)))} to ${fixed(Math.max(...rows.map((row) => row.kit / row.bare)))}`,
  );
  const year = memoryOf('2025-01-01');
  const century = memoryOf('1926-01-01');
  console.log(
    `memory for 100 years: ${fixed(century / year)} times that for one (aim 1.2); ${fixed(century, 0)} MiB to ${fixed(year, 0)} MiB`,
  );
} finally {
  rmSync(work, { recursive: true, force: true });
}
