import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { listEnglishWords, listWords } from '../pack/english-words.ts';
import { BAD_PAGE } from './bad-page.ts';
import { type BuiltPack, type BuiltPage, buildPacks } from './built-packs.ts';
import { findBarriers, findSmallTargets } from './find-barriers.ts';
import { findLostStates, findUnseenFocus } from './find-unseen.ts';
import { launchBrowser } from './launch-browser.ts';
import { lookAt, type ShownName } from './look-at.ts';
import { findUntaggedNames } from './page-faults.ts';
import { DESK, visit } from './visit.ts';

/*
 * Every page against WCAG 2.2 AA: axe-core 4.14.1 as a judge from outside, and rules of our own for what no judge sees.
 * The numbers in brackets are those of the success criteria at https://www.w3.org/TR/WCAG22/.
 */
const PATIENCE = { timeout: 120_000 };

const { folder, packs, mixed } = await buildPacks();

let browser: Browser;
/** On a day outside of all weeks: none of their days is marked. */
let page: Page;

beforeAll(async () => {
  browser = await launchBrowser();
  page = await openTab('2026-01-01T12:00:00Z');
}, PATIENCE.timeout);

afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
}, PATIENCE.timeout);

async function openTab(time: string): Promise<Page> {
  const context = await browser.newContext({ offline: true });
  await context.clock.setFixedTime(time);
  return context.newPage();
}

for (const pack of packs) {
  /** What was looked at on an earlier page of this pack is not looked at again. */
  const seen = new Set<string>();
  for (const built of pack.pages) {
    describe(`${pack.id}/${built.path}`, PATIENCE, () => judgePage(pack, built, seen));
  }
}

/** The tests share one visit; each sets the look that it needs. */
function judgePage(pack: BuiltPack, built: BuiltPage, seen: Set<string>): void {
  beforeAll(async () => void (await visit(page, built.url)), PATIENCE.timeout);

  it('puts no barrier up, on light and on dark ground', async () => {
    expect(await findBarriers(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await findBarriers(page), 'dark').toEqual([]);
    await page.emulateMedia({ colorScheme: 'light' });
  });

  it('tags the names of the calendar with their language, those that are only read out too (3.1.2)', async () => {
    expect(findUntaggedNames(pack, await listNames(pack))).toEqual([]);
  });

  it('says in words what its drawings show, and what the cells of its tables are (1.1.1, 1.3.1)', async () => {
    expect(await lookAt(page, 'drawings')).toEqual([]);
    expect(await lookAt(page, 'tables')).toEqual([]);
  });

  it('is gone through with the Tab key in reading order, and shows where one is (2.1.1, 2.4.3, 2.4.7, 2.4.11)', async () => {
    await lookAt(page, 'watchFocus');
    const places = await lookAt(page, 'countPlaces');
    for (let count = 0; count < places; count += 1) await page.keyboard.press('Tab');
    const good = { first: 'skip-link', missed: [], outOfOrder: [], unseen: [], backwards: [] };
    expect(await lookAt(page, 'tabbing')).toEqual(good);
    await page.locator('.skip-link').focus();
    await page.keyboard.press('Enter');
    expect(await page.evaluate('document.activeElement.id')).toBe('main');
  });

  it('shows the focus in each kind of place, on either ground (1.4.11, 2.4.7)', async () => {
    expect(await findUnseenFocus(page, seen)).toEqual([]);
  });

  it('says nothing by colour alone (1.4.1)', async () => {
    expect(await findLostStates(page, seen)).toEqual([]);
  });

  it.each([
    { look: 'at 400 %, 320 px wide', width: 320, height: 256 },
    { look: 'at 200 %', width: 640, height: 400 },
    { look: 'on a desk', ...DESK },
  ])('fits $look, in usual and in wide spacing (1.4.4, 1.4.10, 1.4.12)', async ({ width, height }) => {
    await page.setViewportSize({ width, height });
    expect(await lookAt(page, 'misfits')).toEqual([]);
    expect(await findSmallTargets(page), 'targets').toEqual([]);
    await lookAt(page, 'spaceText');
    expect(await lookAt(page, 'misfits'), 'in wide spacing').toEqual([]);
    await lookAt(page, 'keepOnly', 'main');
  });
}

async function listNames(pack: BuiltPack): Promise<readonly ShownName[]> {
  return (await lookAt(page, 'facts', pack.names)).names;
}

/** A page of the first demonstration pack. */
function requirePage(path: string): BuiltPage {
  const found = packs[0]?.pages.find((each) => each.path === path);
  if (found === undefined) throw new Error(`There is no page ${path}.`);
  return found;
}

describe('the start page on a day of its week', PATIENCE, () => {
  it('says which day is today by more than colour, and to the keyboard too', async () => {
    const tab = await openTab('2026-07-29T01:00:00Z');
    await visit(tab, requirePage('index.html').url);
    expect(await lookAt(tab, 'listStates')).toContain('.is-today');
    expect(await findLostStates(tab, new Set())).toEqual([]);
    expect(await findUnseenFocus(tab, new Set())).toEqual([]);
    expect(await findBarriers(tab)).toEqual([]);
    await tab.context().close();
  });
});

describe('a run of gestures', PATIENCE, () => {
  it('shows which of its buttons are pressed by more than colour', async () => {
    await visit(page, requirePage('1-monday.html').url);
    for (const name of ['.player-mirror', '.player-seated']) await page.locator(name).first().click();
    expect(await lookAt(page, 'listStates')).toEqual(
      expect.arrayContaining(['.is-flipped', '.is-seated', '[aria-pressed="true"]']),
    );
    expect(await findLostStates(page, new Set())).toEqual([]);
  });
});

describe('names in another language than the page', PATIENCE, () => {
  const english = listEnglishWords(JSON.stringify(mixed.calendar).replace(/[{}]/g, ' '));
  /** Pages that list others and tell of no night. */
  const lists = new Set(['key.html', 'learners/index.html']);

  it.each(mixed.pages)('are tagged in $path, and no fixed words with them', async ({ path, url }) => {
    await visit(page, url);
    const { language, names } = await lookAt(page, 'facts', mixed.names);
    expect(language).toBe('en');
    if (!lists.has(path)) expect(names).not.toEqual([]);
    expect(findUntaggedNames(mixed, names)).toEqual([]);
    const tagged = await lookAt(page, 'textsIn', mixed.calendar.language);
    expect(tagged.filter((text) => listWords(text).some((word) => english.has(word)))).toEqual([]);
    expect(await findBarriers(page)).toEqual([]);
  });
});

describe('the judges see the faults of a bad page', PATIENCE, () => {
  const file = join(folder, 'learners/bad.html');
  const badPack: BuiltPack = { ...mixed, pages: [] };

  beforeAll(async () => {
    mkdirSync(join(folder, 'learners'));
    writeFileSync(file, BAD_PAGE);
    await visit(page, pathToFileURL(file).href);
  }, PATIENCE.timeout);

  it('in names without a language', async () => {
    const { names } = await lookAt(page, 'facts', ['Miche ronde', 'Nuit noire']);
    expect(findUntaggedNames(badPack, names)).toEqual([
      'Nuit noire, in: Nuit noire',
      'Miche ronde, in: Picture of Nuit noire and Miche ronde',
      'Nuit noire, in: Picture of Nuit noire and Miche ronde',
    ]);
    expect(await lookAt(page, 'textsIn', 'fr')).toEqual(['Nuit noire', 'The night of']);
  });

  it('in drawings and tables', async () => {
    const drawings = await lookAt(page, 'drawings');
    expect(drawings.map((fault) => fault.replace(/: .*/s, ''))).toEqual([
      'hidden, without words beside it',
      'without a name',
      'drawings of one name to choose from',
    ]);
    const tables = await lookAt(page, 'tables');
    const faults = ['no header', 'an empty header', 'a header that says not what for'];
    expect(tables.map((fault) => fault.replace(/: .*/s, ''))).toEqual(faults);
  });

  it('in how it looks', async () => {
    const barriers = (await findBarriers(page)).join();
    for (const rule of ['color-contrast', 'image-alt', 'target-size']) expect(barriers).toContain(rule);
    expect(await findSmallTargets(page)).not.toEqual([]);
    expect(await findLostStates(page, new Set())).toEqual(['.is-chosen']);
    await page.setViewportSize({ width: 320, height: 256 });
    const misfits = (await lookAt(page, 'misfits')).join('\n');
    for (const fault of ['px wide in a window of 320', 'is cut off', 'scrolls sideways', 'runs out of', 'lies over']) {
      expect(misfits).toContain(fault);
    }
    await page.setViewportSize(DESK);
  });

  it('under the Tab key', async () => {
    await lookAt(page, 'watchFocus');
    const places = await lookAt(page, 'countPlaces');
    for (let count = 0; count < places; count += 1) await page.keyboard.press('Tab');
    const { first, missed, outOfOrder, unseen, backwards } = await lookAt(page, 'tabbing');
    expect(first).toBe('late');
    expect(missed).toHaveLength(1);
    expect(outOfOrder).not.toEqual([]);
    // One without an outline, one with a faint one, and one that lies under something else.
    expect(unseen).toHaveLength(3);
    expect(backwards).not.toEqual([]);
    expect(await findUnseenFocus(page, new Set())).toContain('nav > a.dark (light)');
  });
});
