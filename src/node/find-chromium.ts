import { accessSync, constants, statSync } from 'node:fs';
import { delimiter, posix, win32 } from 'node:path';
import { PrintError } from './print-error.ts';

/** What is asked about a computer to find a browser on it. */
export interface Computer {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly platform: NodeJS.Platform;
  /** Whether a path is a file that may be run. */
  isProgram(path: string): boolean;
}

/** The computer that this process runs on. */
export const thisComputer: Computer = {
  env: process.env,
  platform: process.platform,
  isProgram(path) {
    try {
      accessSync(path, constants.X_OK);
      return statSync(path).isFile();
    } catch {
      return false;
    }
  },
};

/** Names under which Linux has Chromium and the browsers made from it; common practice, no source. */
const LINUX_NAMES = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'microsoft-edge-stable',
];

const MAC_NAMES = ['Chromium', 'Google Chrome', 'Microsoft Edge'];

const WINDOWS_PATHS = [
  ['Chromium', 'Application', 'chrome.exe'],
  ['Google', 'Chrome', 'Application', 'chrome.exe'],
  ['Microsoft', 'Edge', 'Application', 'msedge.exe'],
];

/**
 * Finds a Chromium, or a browser made from it: the one that the environment variable CHROMIUM_PATH names, else the first
 * in the usual places.
 * @returns Path of its program file.
 * @throws PrintError when there is none; a named one that is not there is a mistake, and no other is taken for it.
 */
export function findChromium(computer: Computer = thisComputer): string {
  const named = computer.env['CHROMIUM_PATH'] ?? '';
  if (named !== '') {
    if (computer.isProgram(named)) return named;
    throw new PrintError(
      `\`CHROMIUM_PATH\` is \`${named}\`; expected the program file of Chromium, or of a browser made from it, there; correct it, or take the variable away so that the usual places are searched`,
    );
  }
  const found = listUsualPlaces(computer).find(computer.isProgram);
  if (found !== undefined) return found;
  throw new PrintError(
    'no Chromium was found, and PDFs are made by one; install Chromium, or a browser made from it, or name the program file of one in the environment variable `CHROMIUM_PATH`',
  );
}

function listUsualPlaces({ env, platform }: Computer): string[] {
  if (platform === 'win32') {
    return ['ProgramFiles', 'ProgramFiles(x86)', 'LocalAppData'].flatMap((name) => {
      const folder = env[name] ?? '';
      return folder === '' ? [] : WINDOWS_PATHS.map((parts) => win32.join(folder, ...parts));
    });
  }
  if (platform === 'darwin') {
    const folders = ['/Applications', ...(env['HOME'] === undefined ? [] : [posix.join(env['HOME'], 'Applications')])];
    return folders.flatMap((folder) => MAC_NAMES.map((name) => `${folder}/${name}.app/Contents/MacOS/${name}`));
  }
  // Snaps and the browsers' own packages are not always on the path of a desktop program.
  const folders = [...(env['PATH'] ?? '').split(delimiter).filter((folder) => folder !== ''), '/snap/bin'];
  return [
    ...folders.flatMap((folder) => LINUX_NAMES.map((name) => posix.join(folder, name))),
    '/opt/google/chrome/chrome',
    '/opt/microsoft/msedge/msedge',
  ];
}
