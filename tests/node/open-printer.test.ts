import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { listChromiumArguments } from '../../src/node/chromium-arguments.ts';
import { openPrinter, type Printer } from '../../src/node/open-printer.ts';
import { PrintError } from '../../src/node/print-error.ts';
import { writeBrowserProgram, writeProgram } from '../browser/write-program.ts';
import { readPdf } from '../pack/pdf/read-pdf.ts';

const folder = mkdtempSync(join(tmpdir(), 'lessontide-printer-'));
afterAll(() => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }));

function open(program: string, patienceMs = 60_000): Promise<Printer> {
  return openPrinter({ program, profileFolder: join(folder, 'profile'), patienceMs });
}

describe('a program that does not print', () => {
  it.each([
    [
      'ends at once',
      'echo "[12:34] no screen here" >&2; exit 7',
      'status 7, and its last words were `[12:34] no screen here`',
    ],
    ['ends without a word', 'exit 0', 'ended by itself with status 0; expected'],
    ['is stopped', 'kill -9 $$', 'was stopped (SIGKILL)'],
    ['answers something else', "printf 'hello\\000' >&4; exec sleep 9", 'could not do its part'],
    ['refuses', `printf '{"id":1,"error":{"message":"not today"}}\\000' >&4; exec sleep 9`, 'not today'],
  ])('%s: the message says so, and what to do', async (name, script, message) => {
    const program = join(folder, 'programs', name);
    writeProgram(program, script);
    const failed = open(program);
    await expect(failed).rejects.toThrow(PrintError);
    await expect(failed).rejects.toThrow(message);
    await expect(failed).rejects.toThrow(/^`.*programs.*name the program file of another .* `CHROMIUM_PATH`$/);
  });

  it('never answers: it is ended', async () => {
    const program = join(folder, 'programs/sleeper');
    writeProgram(program, 'exec sleep 60');
    await expect(open(program, 300)).rejects.toThrow('has not answered for 1 seconds');
  });

  it('is not there any more', async () => {
    await expect(open(join(folder, 'gone'))).rejects.toThrow('could not be started (ENOENT)');
  });
});

describe('listChromiumArguments', () => {
  it('goes without the sandbox only where it cannot be had', () => {
    expect(listChromiumArguments('x', true)).toContain('--no-sandbox');
    expect(listChromiumArguments('x', false)).not.toContain('--no-sandbox');
  });
});

describe('the browser of the tests', () => {
  let printer: Printer;

  beforeAll(async () => {
    const program = join(folder, 'a browser/program');
    await writeBrowserProgram(program);
    printer = await open(program, 120_000);
  }, 300_000);

  afterAll(() => printer?.close(), 60_000);

  /** @returns The page as printed, read again. */
  async function print(name: string, html: string) {
    mkdirSync(join(folder, 'pages'), { recursive: true });
    const file = join(folder, 'pages', name);
    writeFileSync(file, html);
    const { title, headings, bytes } = await printer.print(pathToFileURL(file).href);
    return { title, headings, pdf: await readPdf(bytes) };
  }

  it('prints on the paper that the styles ask for, with tags, headings, language and title', async () => {
    const { title, headings, pdf } = await print(
      'a page, 100% é #1.html',
      '<!doctype html><html lang="fr"><title>Ma page ō</title><style>@page { size: A5 landscape }</style><h1>Tête</h1><p>Corps</p><h2>Fin</h2>',
    );
    expect(title).toBe('Ma page ō');
    expect(headings).toEqual([['Tête'], ['Fin']]);
    expect(pdf).toMatchObject({ language: 'fr', isMarked: true, info: { Title: 'Ma page ō' } });
    expect(pdf.sheets.map(({ size }) => size)).toEqual(['210 x 148']);
    expect(pdf.outline).toMatchObject([{ title: 'Tête', below: [{ title: 'Fin' }] }]);
    expect(pdf.sheets[0]?.tags).toContain('H1');
  });

  it('lets no script run, and asks for nothing from outside', async () => {
    const { title, pdf } = await print(
      'script.html',
      '<!doctype html><html lang="en"><title>Still</title><p>Words</p><script>document.title = "Moved"; document.body.textContent = new Date()</script><img src="http://pack.invalid/x.png" alt="Not there">',
    );
    expect(title).toBe('Still');
    expect(pdf.sheets[0]?.text).toContain('Words');
  });

  it('says which page it cannot open', async () => {
    await expect(printer.print(pathToFileURL(join(folder, 'no such page.html')).href)).rejects.toThrow(
      /cannot open `.*no such page\.html` \(net::ERR_FILE_NOT_FOUND\)/,
    );
  });

  it('ends when it is told to', async () => {
    await printer.close();
    await expect(printer.print('about:blank')).rejects.toThrow(PrintError);
  });
});
