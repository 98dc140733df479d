import type { ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { Readable, Writable } from 'node:stream';
import { setTimeout as wait } from 'node:timers/promises';
import { listChromiumArguments } from './chromium-arguments.ts';
import { type Content, type DevtoolsPipe, openDevtoolsPipe } from './devtools-pipe.ts';
import { PrintError } from './print-error.ts';

/** A browser that prints. */
export interface Printer {
  /**
   * Prints a page to PDF, on the paper that its own styles ask for, with tags and an outline. Its scripts do not run, so
   * that the day on which it is printed does not show.
   * @throws PrintError when the page cannot be opened, or the browser fails.
   */
  print(url: string): Promise<PrintedPage>;
  /** Ends the browser. */
  close(): Promise<void>;
}

export interface PrintedPage {
  readonly title: string;
  /** Its headings in order, each as the texts in it, shown on paper or not. */
  readonly headings: readonly (readonly string[])[];
  readonly bytes: Uint8Array;
}

export interface PrinterSetting {
  /** Program file of a Chromium. */
  readonly program: string;
  /** A folder of its own for whatever the browser keeps; it need not be there yet. */
  readonly profileFolder: string;
  /** How long one order may take; the first includes the start. */
  readonly patienceMs: number;
}

/** An order to a browser, or to a tab of it; every failure is a PrintError. */
type Send = (method: string, content?: Content, tab?: string) => Promise<Content>;

/** How long a browser may take to end by itself. */
const CLOSING_MS = 5000;

/**
 * Starts a browser without a window and without network.
 * @throws PrintError when it does not start.
 */
export async function openPrinter({ program, profileFolder, patienceMs }: PrinterSetting): Promise<Printer> {
  const { browser, orders, messages } = startBrowser(program, profileFolder);
  const pipe = openDevtoolsPipe(orders, messages);
  breakAtEnd(pipe, browser, program);
  const send = limitPatience(pipe, browser, program, patienceMs);
  const close = () => endBrowser(browser, pipe);
  try {
    const tab = await openTab(send);
    const sendToTab: Send = (method, content) => send(method, content, tab);
    return { print: (url) => printPage(sendToTab, url, { program, patienceMs }), close };
  } catch (error) {
    await close();
    throw error;
  }
}

function startBrowser(program: string, profileFolder: string) {
  // Loaded here: an import would be read at the start of every command.
  const { spawn } = process.getBuiltinModule('node:child_process');
  const browser = spawn(program, listChromiumArguments(profileFolder), {
    stdio: ['ignore', 'ignore', 'pipe', 'pipe', 'pipe'],
    windowsHide: true,
  });
  const [, , , orders, messages] = browser.stdio;
  if (!(orders instanceof Writable) || !(messages instanceof Readable)) throw new Error('The browser has no pipes.');
  return { browser, orders, messages };
}

/** Nobody waits for an answer of a browser that did not start or is no more. */
function breakAtEnd(pipe: DevtoolsPipe, browser: ChildProcess, program: string): void {
  let words = '';
  browser.stderr?.setEncoding('utf8').on('data', (text: string) => {
    words = (words + text).slice(-4000);
  });
  browser.on('error', (cause: NodeJS.ErrnoException) => {
    pipe.break(describeFailure(program, `could not be started (${cause.code ?? cause.message})`, cause));
  });
  browser.on('exit', (status, signal) => {
    // What it said last may come after it has ended.
    setTimeout(() => {
      const how = status === null ? `was stopped (${signal})` : `ended by itself with status ${status}`;
      pipe.break(describeFailure(program, `${how}${quoteLastWords(words)}`));
    }, 100).unref();
  });
}

/** The last line that a browser has written; what a computer without a desktop makes it complain of is passed over. */
function quoteLastWords(words: string): string {
  const last = words
    .split(/\r?\n/)
    .filter((line) => line.trim() !== '' && !/dbus/i.test(line))
    .at(-1);
  return last === undefined ? '' : `, and its last words were \`${last.trim().replaceAll('`', '’').slice(-300)}\``;
}

function describeFailure(program: string, what: string, cause?: unknown): PrintError {
  return new PrintError(
    `\`${program}\` ${what}; expected a Chromium that prints; see whether it starts by itself, or name the program file of another in the environment variable \`CHROMIUM_PATH\``,
    { cause },
  );
}

function limitPatience(pipe: DevtoolsPipe, browser: ChildProcess, program: string, patienceMs: number): Send {
  return async (method, content, tab) => {
    const timer = setTimeout(() => {
      pipe.break(describeFailure(program, `has not answered for ${Math.ceil(patienceMs / 1000)} seconds`));
      browser.kill('SIGKILL');
    }, patienceMs);
    try {
      return await pipe.send(method, content, tab);
    } catch (error) {
      if (error instanceof PrintError) throw error;
      const reason = error instanceof Error ? error.message : String(error);
      throw describeFailure(program, `could not do its part (${method}: ${reason})`, error);
    } finally {
      clearTimeout(timer);
    }
  };
}

/** @returns The session of a new tab. */
async function openTab(send: Send): Promise<string> {
  const { targetId } = await send('Target.createTarget', { url: 'about:blank' });
  const { sessionId } = await send('Target.attachToTarget', { targetId, flatten: true });
  const tab = String(sessionId);
  await send('Emulation.setScriptExecutionDisabled', { value: true }, tab);
  await send('Network.enable', {}, tab);
  const offline = { offline: true, latency: 0, downloadThroughput: -1, uploadThroughput: -1 };
  await send('Network.emulateNetworkConditions', offline, tab);
  return tab;
}

/** Letters that are only shown on paper want their fonts too, and printing does not wait for them. */
const LOAD_FONTS = 'Promise.allSettled([...document.fonts].map((font) => font.load())).then(() => document.title)';

const READ_HEADINGS = `[...document.querySelectorAll('h1, h2, h3, h4, h5, h6')].map((heading) => {
  const texts = [];
  const walker = document.createTreeWalker(heading, NodeFilter.SHOW_TEXT);
  while (walker.nextNode() !== null) texts.push(walker.currentNode.data);
  return texts;
})`;

async function printPage(
  send: Send,
  url: string,
  { program, patienceMs }: Pick<PrinterSetting, 'program' | 'patienceMs'>,
): Promise<PrintedPage> {
  const { errorText = '' } = await send('Page.navigate', { url });
  if (errorText !== '') {
    throw new PrintError(
      `\`${program}\` cannot open \`${decodeURI(url)}\` (${errorText}); a browser that came as a snap or a flatpak may read below your home folder only: choose a folder there with \`--out\`, or name the program file of another browser in the environment variable \`CHROMIUM_PATH\``,
    );
  }
  const lastMs = Date.now() + patienceMs;
  while ((await evaluate(send, 'document.readyState')) !== 'complete' && Date.now() < lastMs) await wait(20);
  const title = await evaluate(send, LOAD_FONTS);
  const headings = await evaluate(send, READ_HEADINGS);
  const { data } = await send('Page.printToPDF', {
    preferCSSPageSize: true,
    printBackground: true,
    generateTaggedPDF: true,
    generateDocumentOutline: true,
  });
  return {
    title: String(title),
    headings: Array.isArray(headings) ? headings.map((texts) => (Array.isArray(texts) ? texts.map(String) : [])) : [],
    bytes: Buffer.from(String(data), 'base64'),
  };
}

async function evaluate(send: Send, expression: string): Promise<unknown> {
  const { result } = await send('Runtime.evaluate', { expression, awaitPromise: true, returnByValue: true });
  return typeof result === 'object' && result !== null && 'value' in result ? result.value : undefined;
}

async function endBrowser(browser: ChildProcess, pipe: DevtoolsPipe): Promise<void> {
  if (hasEnded(browser)) return;
  const ended = once(browser, 'exit');
  const asked = pipe.send('Browser.close').then(
    () => ended,
    () => undefined,
  );
  await Promise.race([asked, wait(CLOSING_MS, undefined, { ref: false })]);
  if (hasEnded(browser)) return;
  browser.kill('SIGKILL');
  await ended;
}

function hasEnded({ pid, exitCode, signalCode }: ChildProcess): boolean {
  return pid === undefined || exitCode !== null || signalCode !== null;
}
