import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BAD_PAGE } from './bad-page.ts';
import { type BuiltPack, type BuiltPage, buildPacks } from './built-packs.ts';
import { findFaintText } from './find-barriers.ts';
import { findHtmlFaults } from './html-rules.ts';
import { launchBrowser } from './launch-browser.ts';
import { lookAt, type PageFacts } from './look-at.ts';
import { findDeadLinks, findOutsideAddresses, findRepeated, findSkippedLevels } from './page-faults.ts';
import { A3_LANDSCAPE, A4_LANDSCAPE, A4_PORTRAIT, readSheetSizes } from './pdf-sheets.ts';
import { type Visit, visit } from './visit.ts';

// A busy machine may need long for what takes a second here; a test that hangs still ends.
const PATIENCE = { timeout: 60_000 };

const { folder, packs } = await buildPacks();

let browser: Browser;
/** A tab with scripts, without network, on a day outside of all weeks: none of their days is marked. */
let page: Page;
/** A tab without scripts and without network. */
let plainPage: Page;

beforeAll(async () => {
  browser = await launchBrowser();
  const context = await browser.newContext({ offline: true });
  await context.clock.setFixedTime('2026-01-01T12:00:00Z');
  page = await context.newPage();
  plainPage = await browser.newPage({ offline: true, javaScriptEnabled: false });
}, PATIENCE.timeout);

afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
}, PATIENCE.timeout);

for (const pack of packs) {
  for (const page of pack.pages) {
    describe(`${pack.id}/${page.path}`, PATIENCE, () => judgePage(pack, page));
  }
}

/** All that is asked of each page. The tests share one visit; each sets the look that it needs. */
function judgePage(pack: BuiltPack, built: BuiltPage): void {
  let opened: Visit;
  let facts: PageFacts;
  const own = (url: string) => url === built.url || (url.startsWith(`${pack.url}`) && /\/(images|fonts)\//.test(url));

  beforeAll(async () => {
    opened = await visit(page, built.url);
    facts = await lookAt(page, 'facts', []);
  }, PATIENCE.timeout);

  it('opens from a folder, asks for nothing else and complains of nothing', () => {
    expect(opened.complaints).toEqual([]);
    expect(opened.requests.filter((url) => !own(url))).toEqual([]);
    expect(opened.requests).toContain(built.url);
  });

  it('is the same without scripts', async () => {
    const plain = await visit(plainPage, built.url);
    expect(plain.complaints).toEqual([]);
    expect(plain.requests.filter((url) => !own(url))).toEqual([]);
    expect((await lookAt(plainPage, 'facts', [])).text).toBe(facts.text);
  });

  it('is HTML as the standard has it', async () => {
    expect(await findHtmlFaults(built.html, built.path)).toEqual([]);
  });

  it('has one main heading, and no heading skips a level', () => {
    expect(facts.headings.filter(({ level }) => level === 1)).toHaveLength(1);
    expect(facts.headings[0]?.level).toBe(1);
    expect(findSkippedLevels(facts)).toEqual([]);
  });

  it('has its landmarks, a language and a title', () => {
    expect(facts.landmarks).toMatchObject({ main: 1, banner: 1, footer: 1 });
    expect(facts.landmarks.navigation).not.toContain('');
    expect(findRepeated(facts.landmarks.navigation)).toEqual([]);
    expect(facts.strayContent).toEqual([]);
    expect(facts.language).toMatch(/^[a-z]{2}/);
    expect(facts.title).not.toBe('');
  });

  it('leads only to what is there, and from a page for learners only to others for learners', () => {
    expect(findDeadLinks(pack, built, [...facts.links, ...facts.sources])).toEqual([]);
    expect(findRepeated(facts.ids)).toEqual([]);
    expect(facts.pointers.filter((id) => !facts.ids.includes(id))).toEqual([]);
    expect(findOutsideAddresses(built.html)).toEqual([]);
  });

  it('holds no style and no script in attributes', () => {
    expect(facts.inlineStyles).toEqual([]);
    expect(facts.handlers).toEqual([]);
  });

  it('prints in black on white on its size of paper, and nothing is lost', async () => {
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    const isScore = built.path === 'score.html';
    // What an A4 sheet has between its margins, in CSS pixels; the score has a whole A3 sheet.
    await page.setViewportSize(isScore ? { width: 1587, height: 1122 } : { width: 680, height: 1009 });
    expect(await lookAt(page, 'misfits')).toEqual([]);
    expect(await findFaintText(page)).toEqual([]);
    const sizes = readSheetSizes(await page.pdf({ preferCSSPageSize: true }));
    expect([...new Set(sizes)]).toEqual([isScore ? A3_LANDSCAPE : A4_PORTRAIT]);
  });

  it('cannot phone home', async () => {
    const ways = ['connect-src', 'frame-src', 'img-src', 'script-src-elem', 'style-src-elem'];
    const { stopped, title } = await lookAt(page, 'phoneHome', ways, 5000);
    expect(stopped).toEqual(ways);
    expect(title).toBe(facts.title);
  });
}

describe.each(packs)('the pack $id', PATIENCE, (pack) => {
  it('has a title of its own for each page', () => {
    const titles = pack.pages.map(({ html }) => /<title>([^<]*)<\/title>/.exec(html)?.[1] ?? '');
    expect(findRepeated(titles)).toEqual([]);
  });

  it('prints each day of the start page on one sheet, the week at a glance on one, and the notes on one', async () => {
    const { parts, sheets, eachAlone } = await printParts(pack, 'index.html', '.day-sheet');
    expect(parts).toBeGreaterThan(0);
    expect(eachAlone).toEqual(Array(parts).fill(1));
    expect(sheets - parts).toBe(2);
  });

  it('prints each handout on one sheet, nothing of it but what stands beside a drawing below 13 pt', async () => {
    const handouts = pack.pages.filter(({ html }) => html.includes('class="handout-page"'));
    expect(handouts).not.toEqual([]);
    for (const { path, url } of handouts) {
      await visit(page, url);
      await page.emulateMedia({ media: 'print' });
      expect(readSheetSizes(await page.pdf({ preferCSSPageSize: true })), path).toEqual([A4_PORTRAIT]);
      const sizesPx: number[] = await page.evaluate(
        "[...document.querySelectorAll('.handout-body :is(p, li, th, td):not(.gesture-run *)')].filter((one) => one.checkVisibility()).map((one) => Number.parseFloat(getComputedStyle(one).fontSize))",
      );
      expect(Math.min(...sizesPx), path).toBeGreaterThanOrEqual((13 / 72) * 96 - 0.01);
    }
  });

  it('breaks no step without a run over a printed page', async () => {
    const lessons = pack.pages.filter(({ html }) => html.includes('class="day-page"'));
    for (const { path, url } of lessons) {
      await visit(page, url);
      await page.emulateMedia({ media: 'print' });
      const breakable = await page.evaluate(
        "[...document.querySelectorAll('.step:not(:has(.gesture-run))')].filter((step) => getComputedStyle(step).breakInside !== 'avoid').length",
      );
      expect(breakable, path).toBe(0);
    }
  });

  it('prints each group’s paper on one sheet of its own, or on two where it has pictures or a Moon to draw', async () => {
    const quizzes = pack.pages.filter(({ path }) => path.includes('-quiz-'));
    expect(quizzes).not.toEqual([]);
    for (const { path, html } of quizzes) {
      const { parts, sheets, eachAlone } = await printParts(pack, path, '.paper');
      const most = html.includes('role="img"') ? 2 : 1;
      expect(parts, path).toBe(4);
      expect(eachAlone[0], path).toBeLessThanOrEqual(most);
      expect(eachAlone, path).toEqual(Array(4).fill(eachAlone[0]));
      expect(sheets, path).toBe(4 * (eachAlone[0] ?? 0));
      const brokenOver =
        "[...document.querySelectorAll('.questions > li')].filter((item) => getComputedStyle(item).breakInside !== 'avoid').length";
      expect(await page.evaluate(brokenOver), path).toBe(0);
    }
  });

  it('prints the marks of each quiz on one sheet of their own', async () => {
    const keys = pack.pages.filter(({ path }) => path.startsWith('key-'));
    expect(keys).not.toEqual([]);
    for (const { url } of keys) {
      await visit(page, url);
      await page.emulateMedia({ media: 'print' });
      const countSheets = async () => readSheetSizes(await page.pdf({ preferCSSPageSize: true })).length;
      const sheets = await countSheets();
      const quizzes = await page.locator('.mark-sheet').count();
      expect(quizzes).toBeGreaterThan(0);
      await page.evaluate("for (const sheet of document.querySelectorAll('.mark-sheet')) sheet.remove()");
      expect(await countSheets()).toBe(sheets - quizzes);
    }
  });

  it('prints the gestures on few sheets, each drawing 3 cm high or more, no night on two sheets', async () => {
    await visit(page, `${pack.url}gestures.html`);
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width: 688, height: 1035 });
    const heights = await page.locator('.how-views svg').evaluateAll((all) => all.map((svg) => svg.clientHeight));
    expect(heights).toHaveLength(4 * 30);
    expect(Math.min(...heights) / 96).toBeGreaterThanOrEqual(3 / 2.54 - 0.01);
    const breakable =
      "[...document.querySelectorAll('.how-card')].filter((card) => getComputedStyle(card).breakInside !== 'avoid').length";
    expect(await page.evaluate(breakable)).toBe(0);
    // Five with the font of the project, and a sheet to spare for another.
    expect(readSheetSizes(await page.pdf({ preferCSSPageSize: true })).length).toBeLessThanOrEqual(6);
  });

  it('prints each month of the score on two sheets of A3, and of A4 when the box is ticked', async () => {
    await visit(page, `${pack.url}score.html`);
    const months = await page.locator('.score-month').count();
    expect(months).toBeGreaterThan(0);
    await page.getByRole('checkbox').check();
    await page.emulateMedia({ media: 'print' });
    const countSizes = async () => readSheetSizes(await page.pdf({ preferCSSPageSize: true }));
    expect(await countSizes()).toEqual(Array(2 * months).fill(A4_LANDSCAPE));
    await page.emulateMedia({ media: 'screen' });
    await page.getByRole('checkbox').uncheck();
    await page.emulateMedia({ media: 'print' });
    expect(await countSizes()).toEqual(Array(2 * months).fill(A3_LANDSCAPE));
  });
});

describe('the start page', PATIENCE, () => {
  /** Opens the start page of a pack at a moment, on a device in a zone. */
  async function openAt(pack: BuiltPack | undefined, instant: string, zone: string, prepare = '') {
    const context = await browser.newContext({ offline: true, timezoneId: zone });
    await context.clock.setFixedTime(instant);
    const tab = await context.newPage();
    if (prepare !== '') await tab.addInitScript(prepare);
    const { complaints } = await visit(tab, `${pack?.url}index.html`);
    expect(complaints).toEqual([]);
    return tab;
  }

  const listMarked = (tab: Page) =>
    tab.locator('.day-sheet.is-today').evaluateAll((sheets) => sheets.map(({ id }) => id));

  it.each(['Pacific/Auckland', 'America/Los_Angeles'])(
    'marks the day that the school has, on a device in %s',
    async (zone) => {
      const tab = await openAt(packs[0], '2026-07-29T21:00:00Z', zone);
      expect(await listMarked(tab)).toEqual(['thursday']);
      expect(await tab.locator('.day-tab.is-today').count()).toBe(1);
      expect(await tab.locator('[aria-current=date]').textContent()).toContain('Today');
      expect(await tab.locator('.today-flag:visible').count()).toBe(2);
      expect(await tab.locator('.today-notice p:visible').allInnerTexts()).toEqual([
        expect.stringMatching(/^Today is Thursday 30 July\. Its night is Butter Moon\./),
      ]);
      await tab.getByRole('link', { name: 'Go to today' }).click();
      expect(new URL(tab.url()).hash).toBe('#thursday');
      expect(
        await tab.locator('#thursday').evaluate((sheet) => Math.round(sheet.getBoundingClientRect().top)),
      ).toBeLessThan(40);
      await tab.context().close();
    },
  );

  it('takes the day of the device where its browser does not know the school’s zone', async () => {
    const forget = `const Format = Intl.DateTimeFormat;
      Intl.DateTimeFormat = function (locale, form) {
        if (form?.timeZone !== undefined) throw new RangeError('unknown zone');
        return new Format(locale, form);
      };`;
    const tab = await openAt(packs[0], '2026-07-29T21:00:00Z', 'America/Los_Angeles', forget);
    expect(await listMarked(tab)).toEqual(['wednesday']);
    await tab.context().close();
  });

  it.each([
    { instant: '2026-07-20T00:00:00Z', says: 'You are early' },
    { instant: '2026-08-20T00:00:00Z', says: 'The week of this pack is over' },
  ])('says so kindly outside of its week, and for which dates it was made: $says', async ({ instant, says }) => {
    const tab = await openAt(packs[0], instant, 'Pacific/Auckland');
    expect(await listMarked(tab)).toEqual([]);
    expect(await tab.locator('.today-flag:visible').count()).toBe(0);
    expect(await tab.locator('.today-notice p:visible').allInnerTexts()).toEqual([expect.stringContaining(says)]);
    expect(await tab.locator('.week-facts').textContent()).toContain('Made for Monday 27 July to Friday 31 July 2026');
    await tab.context().close();
  });

  it('leads to the next lesson on a day without one', async () => {
    const tab = await openAt(packs[1], '2026-10-07T08:00:00Z', 'Europe/Paris');
    expect(await listMarked(tab)).toEqual([]);
    const link = tab.locator('.today-notice a:visible');
    expect(await link.getAttribute('href')).toBe('#thursday');
    await tab.context().close();
  });

  it('prints the same whatever day it is', async () => {
    const readPrint = async (instant: string) => {
      const tab = await openAt(packs[0], instant, 'Pacific/Auckland');
      await tab.emulateMedia({ media: 'print' });
      const text = await tab.evaluate('document.body.innerText');
      const picture = await tab.locator('#thursday').screenshot();
      await tab.context().close();
      return { text, picture: picture.toString('base64') };
    };
    expect(await readPrint('2026-07-30T00:00:00Z')).toEqual(await readPrint('2026-09-30T00:00:00Z'));
  });
});

describe('the judges see the faults of a bad page', PATIENCE, () => {
  const file = join(folder, 'learners/bad.html');
  const bad: BuiltPage = { path: 'learners/bad.html', url: pathToFileURL(file).href, html: BAD_PAGE };
  const badPack: BuiltPack = {
    ...openDemo(),
    url: `${pathToFileURL(folder).href}/`,
    files: new Set([bad.path]),
    pages: [bad],
  };
  let opened: Visit;
  let facts: PageFacts;

  beforeAll(async () => {
    mkdirSync(join(folder, 'learners'));
    writeFileSync(file, BAD_PAGE);
    opened = await visit(page, bad.url);
    facts = await lookAt(page, 'facts', []);
  }, PATIENCE.timeout);

  it('in what it asks for and says', () => {
    expect(opened.requests.map((url) => url.split('/').at(-1))).toEqual(['bad.html', 'missing.png']);
    expect(opened.complaints).toContain('log: hello');
    expect(opened.complaints.some((line) => line.startsWith('failed: '))).toBe(true);
  });

  it('in how it is written', async () => {
    expect(findSkippedLevels(facts)).toEqual(['Too deep']);
    expect(facts.headings.filter(({ level }) => level === 1)).toHaveLength(2);
    expect(facts.landmarks).toEqual({ main: 0, banner: 0, footer: 0, navigation: [''] });
    expect(facts.strayContent).not.toEqual([]);
    expect(findRepeated(facts.ids)).toEqual(['twice']);
    expect(facts.pointers).toEqual(['nobody', 'no-paint']);
    expect(facts.inlineStyles).toHaveLength(1);
    expect(facts.handlers).toEqual(['onclick']);
    expect((await findHtmlFaults(BAD_PAGE, 'bad.html')).join()).toContain('no-dup-id');
  });

  it('in where it leads', () => {
    const links = ['../index.html', 'gone.html', '#gone', 'https://pack.invalid/'];
    expect(findDeadLinks(badPack, bad, ['bad.html#twice', ...links])).toEqual(links);
    expect(findOutsideAddresses(BAD_PAGE)).toEqual(['https://pack.invalid/']);
  });

  it('on paper', async () => {
    await page.emulateMedia({ media: 'print' });
    expect((await findFaintText(page)).join()).toContain('color-contrast');
    const sizes = readSheetSizes(await page.pdf({ preferCSSPageSize: true }));
    expect(sizes.length).toBeGreaterThan(1);
    expect(new Set(sizes)).toEqual(new Set(['148 x 210']));
    expect(() => readSheetSizes(Buffer.from('no document'))).toThrow('No page');
  });

  it('in what it lets in', async () => {
    expect(await lookAt(page, 'phoneHome', [], 0)).toEqual({ stopped: [], title: 'taken over' });
  });
});

function openDemo(): BuiltPack {
  const [demo] = packs;
  if (demo === undefined) throw new Error('No demonstration pack was built.');
  return demo;
}

/** How many sheets a page takes, and how many each of its parts takes when printed without the others. */
async function printParts(pack: BuiltPack, path: string, selector: string) {
  await visit(page, `${pack.url}${path}`);
  await page.emulateMedia({ media: 'print' });
  const countSheets = async () => readSheetSizes(await page.pdf({ preferCSSPageSize: true })).length;
  const parts = await page.locator(selector).count();
  const sheets = await countSheets();
  const eachAlone: number[] = [];
  for (let index = 0; index < parts; index += 1) {
    await lookAt(page, 'keepOnly', selector, index);
    eachAlone.push(await countSheets());
  }
  return { parts, sheets, eachAlone };
}
