import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { findTestBrowser } from './launch-browser.ts';

/**
 * Writes a program that starts the browser of the tests, as somebody may who names one in `CHROMIUM_PATH`.
 * @param path Where; with folders that need not be there yet.
 * @param more Further arguments for the browser.
 */
export async function writeBrowserProgram(path: string, more: readonly string[] = []): Promise<void> {
  const { executablePath = '', args = [], env = {} } = await findTestBrowser();
  const settings = Object.entries(env).filter(([name, value]) => process.env[name] !== value);
  const lines = settings.map(([name, value]) => `export ${name}=${quote(String(value))}`);
  writeProgram(path, [...lines, `exec ${[executablePath, ...args, ...more].map(quote).join(' ')} "$@"`].join('\n'));
}

/** Writes a program for the shell. */
export function writeProgram(path: string, script: string): void {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, `#!/bin/sh\n${script}\n`, { mode: 0o755 });
}

function quote(text: string): string {
  return `'${text.replaceAll("'", "'\\''")}'`;
}
