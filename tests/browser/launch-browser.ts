import { access, mkdir, mkdtemp, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type Browser, chromium, type LaunchOptions } from 'playwright-core';

const CACHE = join(import.meta.dirname, '../../node_modules/.cache');

/** Where Linux, macOS and Windows usually have the browser. */
const INSTALLED = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
] as const;

/** Settings of fontconfig. Those of the package name folders outside of it, and a page without fonts crashes in print. */
const FONT_SETTINGS = `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig><dir prefix="relative">.</dir></fontconfig>
`;

/** Starts the browser of the tests. */
export async function launchBrowser(): Promise<Browser> {
  return chromium.launch(await findTestBrowser());
}

/** The browser that `CHROMIUM_PATH` names, else an installed one, else the one that comes as a package. */
export async function findTestBrowser(): Promise<LaunchOptions> {
  return findBrowser(process.env['CHROMIUM_PATH'], INSTALLED);
}

/** How to start the first browser that is there. A named one that is missing is an error, not a reason to go on. */
export async function findBrowser(named: string | undefined, installed: readonly string[]): Promise<LaunchOptions> {
  if (named !== undefined && named !== '') {
    if (await isThere(named)) return { executablePath: named };
    throw new Error(`CHROMIUM_PATH is \`${named}\`; expected a browser's program file there`);
  }
  for (const path of installed) if (await isThere(path)) return { executablePath: path };
  const folder = await unpackBrowser();
  return {
    executablePath: join(folder, 'chromium'),
    // Not the package's own arguments: those switch web security off, and with it what the tests look for.
    args: ['--no-sandbox', '--no-zygote', '--disable-gpu'],
    env: {
      ...process.env,
      LD_LIBRARY_PATH: join(folder, 'al2023', 'lib'),
      FONTCONFIG_PATH: join(folder, 'fonts'),
    },
  };
}

/**
 * The packaged browser (x64 Linux) with its fonts and libraries, unpacked once. It goes whole to a folder of its own
 * and is then renamed, so that a run which is broken off, or a second run at the same time, leaves no half of it.
 */
async function unpackBrowser(): Promise<string> {
  const folder = join(CACHE, 'chromium');
  if (await isThere(folder)) return folder;
  await mkdir(CACHE, { recursive: true });
  const work = await mkdtemp(join(CACHE, 'unpacking-'));
  try {
    const { default: packaged } = await import('@sparticuz/chromium');
    // The package reads both when called: where to unpack, and that its libraries are wanted too.
    await withEnvironment({ TMPDIR: work, AWS_LAMBDA_JS_RUNTIME: 'nodejs20.x' }, () => packaged.executablePath());
    await writeFile(join(work, 'fonts', 'fonts.conf'), FONT_SETTINGS);
    await rename(work, folder);
  } catch (cause) {
    if (await isThere(folder)) return folder;
    const advice = 'install Chromium, or name one in CHROMIUM_PATH';
    throw new Error(`No browser is installed, and the packaged one could not be unpacked; ${advice}`, { cause });
  } finally {
    await rm(work, { recursive: true, force: true });
  }
  return folder;
}

async function withEnvironment(change: Readonly<Record<string, string>>, run: () => Promise<unknown>): Promise<void> {
  const before = Object.keys(change).map((name) => [name, process.env[name]] as const);
  Object.assign(process.env, change);
  try {
    await run();
  } finally {
    for (const [name, value] of before) {
      if (value === undefined) delete process.env[name];
      else process.env[name] = value;
    }
  }
}

async function isThere(path: string): Promise<boolean> {
  return access(path).then(
    () => true,
    () => false,
  );
}
