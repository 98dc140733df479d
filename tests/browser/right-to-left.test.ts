import { rmSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readWords } from '../pack/english-words.ts';
import { type BuiltPage, buildNonsensePack } from './built-packs.ts';
import { findBarriers } from './find-barriers.ts';
import { launchBrowser } from './launch-browser.ts';
import { lookAt } from './look-at.ts';
import { NONSENSE_LANGUAGE } from './nonsense-content.ts';
import { DESK, visit } from './visit.ts';

/*
 * The demonstration week in words that run from right to left. They are nonsense, made for this test: what is looked at
 * is the direction alone.
 */
const PATIENCE = { timeout: 120_000 };

/** What is no word of a language: the scale of time by which the world's clocks go. */
const KNOWN: ReadonlySet<string> = new Set(['UTC']);

const { folder, pack } = await buildNonsensePack();

let browser: Browser;
let page: Page;

beforeAll(async () => {
  browser = await launchBrowser();
  const context = await browser.newContext({ offline: true });
  await context.clock.setFixedTime('2026-07-29T01:00:00Z');
  page = await context.newPage();
}, PATIENCE.timeout);

afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
}, PATIENCE.timeout);

describe.each(pack.pages)('$path', PATIENCE, (built) => {
  beforeAll(async () => void (await visit(page, built.url)), PATIENCE.timeout);

  it('says its language and direction', async () => {
    expect(await page.evaluate('document.documentElement.lang')).toBe(NONSENSE_LANGUAGE);
    expect(await page.evaluate('document.documentElement.dir')).toBe('rtl');
  });

  it('has no word that comes neither from the labels nor from the school', () => {
    const words = readWords(built.html).match(/\p{Script=Latin}{2,}/gu) ?? [];
    expect(words.filter((word) => !KNOWN.has(word))).toEqual([]);
  });

  it.each([{ width: 320, height: 256 }, { width: 640, height: 400 }, DESK])('fits $width px', async (size) => {
    await page.setViewportSize(size);
    expect(await lookAt(page, 'misfits')).toEqual([]);
    await lookAt(page, 'spaceText');
    expect(await lookAt(page, 'misfits'), 'in wide spacing').toEqual([]);
    await lookAt(page, 'keepOnly', 'main');
  });

  it('fits its paper', async () => {
    const isScore = built.path === 'score.html';
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize(isScore ? { width: 1587, height: 1122 } : { width: 680, height: 1009 });
    expect(await lookAt(page, 'misfits')).toEqual([]);
    await page.emulateMedia({ media: 'screen' });
    await page.setViewportSize(DESK);
  });

  it('begins its lines, lists and rows on the right', async () => {
    expect(await lookAt(page, 'unmirrored')).toEqual([]);
  });

  it('is gone through with the Tab key from right to left, and has no barrier', async () => {
    await lookAt(page, 'watchFocus');
    const places = await lookAt(page, 'countPlaces');
    for (let count = 0; count < places; count += 1) await page.keyboard.press('Tab');
    expect((await lookAt(page, 'tabbing')).backwards).toEqual([]);
    expect(await findBarriers(page)).toEqual([]);
  });
});

describe('what does not turn round', PATIENCE, () => {
  it('is the score of the month: its nights follow each other from left to right', async () => {
    await visit(page, requirePage('score.html').url);
    // The first is that of the legend; then those of the first line.
    const nights = (await listLefts('.score-frame:first-of-type .score-beat')).slice(1, 9);
    expect(nights).toHaveLength(8);
    expect(nights).toEqual(nights.toSorted((a, b) => a - b));
  });

  it('is the score within a lesson', async () => {
    await visit(page, requirePage('4-thursday.html').url);
    const nights = await listLefts('.strip-group:first-of-type .strip-night');
    expect(nights).toHaveLength(4);
    expect(nights).toEqual(nights.toSorted((a, b) => a - b));
  });

  it('is a drawing', async () => {
    const directions = await lookAt(page, 'directions', 'svg');
    expect(directions.length).toBeGreaterThan(20);
    expect(new Set(directions)).toEqual(new Set(['ltr']));
  });

  it('is a clock time, nor the name of a file in print', async () => {
    await visit(page, requirePage('index.html').url);
    expect(await lookAt(page, 'shownOrder', '.step-times .at')).toMatch(/^\d{1,2}:\d\d/);
    await page.emulateMedia({ media: 'print' });
    expect(await lookAt(page, 'shownOrder', '.page-name bdi')).toMatch(/^1-monday\.html$/);
  });

  it('is which of the lettered boxes comes first: the row of the key runs as the boxes do', async () => {
    const { path = '' } = pack.pages.find(({ html }) => html.includes('class="key-row-letters"')) ?? {};
    await visit(page, requirePage(path).url);
    const [letters = ''] = await page.locator('.key-row-letters').allTextContents();
    expect(await lookAt(page, 'shownOrder', '.key-row-letters')).toBe(
      [...letters.replaceAll(' ', '')].reverse().join(''),
    );
  });
});

function requirePage(path: string): BuiltPage {
  const found = pack.pages.find((each) => each.path === path);
  if (found === undefined) throw new Error(`There is no page ${path}.`);
  return found;
}

/** Left edges of elements, in the order of the page. */
function listLefts(selector: string): Promise<number[]> {
  return page.locator(selector).evaluateAll((all) => all.map((each) => each.getBoundingClientRect().left));
}
