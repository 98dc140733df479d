/*
 * The Nu Html Checker as a second judge of HTML, beside html-validate in the tests: every page of the packs in the given
 * folders, `output` when none is given. It is a Java program of 31 MB, so it is no package of the project: where there is
 * Java it is fetched once from the package registry, or VNU_JAR names the file. Where there is no Java, or no network to
 * fetch it by, this says so and is content.
 *
 * Only errors count. Among its warnings are some against content policies that it cannot judge in files: it knows
 * neither their digests nor what `self` is there. The browser of the tests does.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const VERSION = '26.9.27';
const JAR_SHA256 = '22f15dd39a33bed929d2a5c0cddf5946849a647eca9272bf4d5d00bc7e7a4d47';
const CACHE = join(import.meta.dirname, '../../node_modules/.cache', `vnu-jar-${VERSION}`);

/** A command line may have 32 767 characters on Windows: pages are judged in lots. */
const LOT = 100;

const BAD_PAGE = '<!DOCTYPE html><html lang="en"><head><title>Bad</title></head><body><p><div></p></body></html>';

process.exitCode = judge(process.argv.slice(2));

function judge(given) {
  const folders = given.length === 0 ? ['output'] : given;
  const pages = folders.flatMap(listPages);
  if (pages.length === 0) return tell(`no page in ${folders.join(', ')}; build a pack first`, 1);
  if (spawnSync('java', ['-version']).status !== 0) return tell('there is no Java here, so it did not run', 0);
  const jar = findJar();
  if (jar === undefined) return tell(`vnu-jar ${VERSION} could not be fetched, so it did not run`, 0);
  const onBadPage = judgeBadPage(jar);
  if (onBadPage === undefined) return tell('the Java here is too old for it, so it did not run', 0);
  if (onBadPage.length === 0) return tell('it finds no fault in a bad page, so its word counts for nothing', 1);
  const errors = findErrors(jar, pages) ?? [];
  for (const { url, lastLine, message } of errors) console.error(`${url}:${lastLine} ${message}`);
  return tell(`${pages.length} pages, ${errors.length} errors`, errors.length === 0 ? 0 : 1);
}

function tell(words, status) {
  console.log(`Second judge of HTML: ${words}.`);
  return status;
}

function listPages(folder) {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true })
    .filter((path) => path.endsWith('.html'))
    .map((path) => join(folder, path))
    .sort();
}

/** The program: as named, else fetched, and then the very one that was tried. Undefined where it cannot be had. */
function findJar() {
  if (process.env.VNU_JAR !== undefined) return process.env.VNU_JAR;
  const jar = join(CACHE, 'node_modules/vnu-jar/build/dist/vnu.jar');
  if (!existsSync(jar)) fetchJar();
  if (!existsSync(jar)) return undefined;
  const found = createHash('sha256').update(readFileSync(jar)).digest('hex');
  if (found !== JAR_SHA256) throw new Error(`${jar} is not the program that was tried: its SHA-256 is ${found}`);
  return jar;
}

/** Without the package's script, which would fetch a Java of its own. */
function fetchJar() {
  mkdirSync(CACHE, { recursive: true });
  const options = ['--no-save', '--no-package-lock', '--ignore-scripts', '--no-audit', '--no-fund', '--prefer-offline'];
  const command = ['install', '--prefix', CACHE, ...options, `vnu-jar@${VERSION}`];
  const npm = process.env.npm_execpath;
  if (npm === undefined) spawnSync('npm', command, { stdio: 'ignore' });
  else spawnSync(process.execPath, [npm, ...command], { stdio: 'ignore' });
}

function judgeBadPage(jar) {
  const folder = mkdtempSync(join(tmpdir(), 'lessontide-judge-'));
  const page = join(folder, 'bad.html');
  writeFileSync(page, BAD_PAGE);
  try {
    return findErrors(jar, [page]);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Undefined where the Java is older than the program. */
function findErrors(jar, pages) {
  const errors = [];
  const options = ['-jar', jar, '--errors-only', '--format', 'json', '--exit-zero-always'];
  for (let at = 0; at < pages.length; at += LOT) {
    const given = [...options, ...pages.slice(at, at + LOT)];
    const { stderr } = spawnSync('java', given, { encoding: 'utf8', maxBuffer: 2 ** 28 });
    if (stderr.includes('UnsupportedClassVersionError')) return undefined;
    errors.push(...JSON.parse(stderr).messages);
  }
  return errors;
}
