import type { Page } from 'playwright-core';

/** The window of a computer on a desk, in CSS pixels. */
export const DESK = { width: 1280, height: 800 } as const;

/** What a page did while it opened. */
export interface Visit {
  /** Addresses it asked for, its own among them. */
  readonly requests: readonly string[];
  /** All that came on the console, errors of scripts, and requests that failed. */
  readonly complaints: readonly string[];
}

/** Opens a page in a tab that may have shown another one, in the usual look, and waits until all of it is there. */
export async function visit(page: Page, url: string): Promise<Visit> {
  const requests: string[] = [];
  const complaints: string[] = [];
  page.removeAllListeners();
  await page.emulateMedia({ media: 'screen', colorScheme: 'light' });
  await page.setViewportSize(DESK);
  page.on('request', (request) => requests.push(request.url()));
  page.on('requestfailed', (request) => complaints.push(`failed: ${request.url()}`));
  page.on('console', (message) => complaints.push(`${message.type()}: ${message.text()}`));
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(url, { waitUntil: 'load' });
  return { requests, complaints };
}
