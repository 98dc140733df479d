import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { stringifyHast } from '../../src/lesson/stringify-hast.ts';
import { createFontCutter } from '../../src/node/cut-fonts.ts';
import { planFonts } from '../../src/pack/fonts/plan-fonts.ts';
import { computePackPaths } from '../../src/pack/pack-paths.ts';
import { renderKeyPage } from '../../src/pack/pages/key-page.ts';
import { createPageContext, listPlacedLessons } from '../../src/pack/pages/page-context.ts';
import type { QuizSheet } from '../../src/quiz/model.ts';
import { buildFakeWeek } from '../pack/fake-week.ts';
import { sha256 } from '../pack/render-pages.ts';
import { findBarriers, findFaintText } from './find-barriers.ts';
import { launchBrowser } from './launch-browser.ts';
import { lookAt } from './look-at.ts';
import { makeMarkingQuiz, TOTAL } from './marking-quiz.ts';
import { A4_PORTRAIT, readSheetSizes } from './pdf-sheets.ts';
import { visit } from './visit.ts';

// A busy machine may need long for what takes a second here; a test that hangs still ends.
const PATIENCE = { timeout: 60_000 };

const folder = mkdtempSync(join(tmpdir(), 'lessontide-marking-'));
const file = join(folder, 'key.html');
const KEY = pathToFileURL(file).href;

let browser: Browser;
let page: Page;

beforeAll(async () => {
  const empty: QuizSheet = {
    title: 'Quiz 3',
    number: 3,
    papers: [],
    key: [{ group: 'Heron', answers: [], totalMarks: 0 }],
  };
  const quizzes = [makeMarkingQuiz(1), makeMarkingQuiz(2), empty];
  const week = buildFakeWeek({ lessons: [{ quizzes }] });
  const context = createPageContext(week, computePackPaths(week), sha256);
  const pages = listPlacedLessons(context).map((placed) => stringifyHast(renderKeyPage(context, placed)));
  const content = pages.join('');
  writeFileSync(file, content);
  mkdirSync(join(folder, 'fonts'));
  for (const font of await planFonts([{ path: 'key.html', content }], createFontCutter())) {
    writeFileSync(join(folder, font.path), font.content);
  }
  browser = await launchBrowser();
  page = await (await browser.newContext({ offline: true })).newPage();
}, PATIENCE.timeout);

afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
}, PATIENCE.timeout);

/** One quiz's part of the page. */
const quiz = (number = 1) => page.locator('.quiz-key').nth(number - 1);
const row = (group: string, question: number) =>
  quiz().locator(`.marking-row[aria-label^="${group}, question ${question}"]`);
const field = (group: string, question: number) => row(group, question).locator('.marking-entry input').first();
const own = (group: string, question: number) => row(group, question).locator('.marking-own');
const verdict = (group: string, question: number) => readSeen(row(group, question).locator('.marking-verdict'));
const says = () => quiz().locator('[aria-live]').textContent();
const focused = () => page.evaluate<string>("document.activeElement.closest('[aria-label]')?.ariaLabel ?? ''");

async function readSeen(place: Locator): Promise<string> {
  // biome-ignore lint/performance/useDomNodeTextContent: what is wanted is the text as it is seen.
  return (await place.innerText()).replace(/\s+/g, ' ').trim();
}

/** The cells of a line of the mark sheet. */
async function readLine(name: string, from = quiz()): Promise<string[]> {
  const line = from.locator('.mark-sheet tr', { has: page.locator('th', { hasText: name }) });
  const cells = await line.locator('td').allInnerTexts();
  return cells.map((cell) => cell.replace(/\s+/g, ' ').trim());
}

/** Types entries, Enter after each; gives the number of keys. */
async function enter(...entries: readonly string[]): Promise<number> {
  for (const entry of entries) {
    await page.keyboard.type(entry);
    await page.keyboard.press('Enter');
  }
  return entries.join('').length + entries.length;
}

async function openHelp(): Promise<void> {
  await quiz().locator('.marking-toggle').click();
}

/** What every answer of Heron's paper ought to be. */
const ALL_RIGHT = ['b', 'ac', '3', '=', 'cab', 'bdac', '3', '2'];

describe('the key before it is marked', PATIENCE, () => {
  it('reads as it does without scripts, but for one button a quiz that has questions', async () => {
    const plainPage = await browser.newPage({ offline: true, javaScriptEnabled: false });
    expect((await visit(plainPage, KEY)).complaints).toEqual([]);
    const plain = (await lookAt(plainPage, 'facts', [])).text;
    await plainPage.close();
    expect(plain).toContain('Mark sheet');
    await visit(page, KEY);
    expect((await lookAt(page, 'facts', [])).text).toBe(plain);
    expect(await page.locator('.marking-toggle').allInnerTexts()).toEqual(Array(2).fill('Mark papers on this page'));
    expect(await page.locator('input').count()).toBe(0);
  });

  it('prints as it does without scripts, even when the fields are open', async () => {
    const read = async (tab: Page) => {
      await tab.emulateMedia({ media: 'print' });
      const text = (await lookAt(tab, 'facts', [])).text;
      return { text, sheets: readSheetSizes(await tab.pdf({ preferCSSPageSize: true })) };
    };
    const plainPage = await browser.newPage({ offline: true, javaScriptEnabled: false });
    await visit(plainPage, KEY);
    const plain = await read(plainPage);
    await plainPage.close();
    await visit(page, KEY);
    await openHelp();
    expect(await read(page)).toEqual(plain);
  });
});

describe('a paper that is marked with the keyboard', PATIENCE, () => {
  beforeEach(async () => {
    await visit(page, KEY);
    await openHelp();
  });

  it('takes 22 keys for eight answers and leads to the next paper', async () => {
    expect(await page.evaluate('document.activeElement.textContent')).toBe('Heron –');
    await page.keyboard.press('Enter');
    expect(await focused()).toBe('Heron, question 1: Ticked');
    expect(await enter(...ALL_RIGHT)).toBe(22);
    expect(await readLine('Heron')).toEqual(['1', '2', '1', '1', '3', '4', '3', '2', `${TOTAL}`]);
    expect(await says()).toBe(`Right. 2 of 2. Heron: ${TOTAL} of ${TOTAL}`);
    expect(await page.evaluate('document.activeElement.textContent')).toBe('Kelp –');
    await page.keyboard.press('o');
    expect(await page.evaluate('document.activeElement.textContent')).toBe('Oyster –');
    await page.keyboard.press('Enter');
    expect(await focused()).toBe('Oyster, question 1: Ticked');
  });

  it('says right, partly right and wrong in words with a sign, and what a wrong answer means', async () => {
    await page.keyboard.press('Enter');
    await enter('a', 'ab', '4', 'Round Moon', 'cba', 'b-ac', '1', '-');
    const verdicts = [];
    for (let question = 1; question <= 8; question += 1) verdicts.push(await verdict('Heron', question));
    expect(verdicts).toEqual([
      'Wrong A Counted one night too many.',
      'Wrong B Took the dark half.',
      'Wrong Counted cette nuit as well.',
      'Wrong Not in the key: yours to judge.',
      'Partly right 1 of 3 in the right place',
      'Partly right 3 of 4 in the right place',
      'Partly right',
      'Nothing written',
    ]);
    expect(await quiz().locator('.marking-verdict svg').count()).toBe(8);
    expect(await row('Heron', 3).locator('.marking-note [lang="fr"]').textContent()).toBe('cette nuit');
    expect(await readLine('Heron')).toEqual(['0', '0', '0', '0', '1', '3', '1', '0', '5']);
    expect(await readSeen(quiz().locator('.group-key').first().locator('.marking-total'))).toBe(`5 of ${TOTAL}`);
  });

  it('goes back with Shift and Enter, and stays where there is nothing before', async () => {
    await page.keyboard.press('Enter');
    await enter('b', 'ac');
    expect(await focused()).toBe('Heron, question 3');
    for (const place of ['Heron, question 2: Ticked', 'Heron, question 1: Ticked', 'Heron, question 1: Ticked']) {
      await page.keyboard.press('Shift+Enter');
      expect(await focused()).toBe(place);
    }
    await page.keyboard.press('d');
    expect(await verdict('Heron', 1)).toBe('Wrong D Counted one night too many.');
    await page.keyboard.press('Backspace');
    expect(await verdict('Heron', 1)).toBe('');
    expect((await readLine('Heron'))[0]).toBe('');
  });

  it('goes through one question of all papers where that is asked for', async () => {
    await quiz().getByLabel('question by question').check();
    await field('Heron', 1).focus();
    await enter('b', 'c', 'd');
    expect(await focused()).toBe('Heron, question 2: Ticked');
    expect(await readLine('Whole room')).toEqual(['3 of 3', '', '', '', '', '', '', '', '3 of 3']);
  });

  it('ends at the mark sheet when all are done', async () => {
    await page.keyboard.press('Enter');
    for (const right of ['b', 'c', 'd']) {
      await enter(right, ...ALL_RIGHT.slice(1));
      if (right !== 'd') await page.keyboard.press('Enter');
    }
    expect(await page.evaluate<boolean>("document.activeElement.querySelector('table') !== null")).toBe(true);
    expect(await readLine('Whole room')).toEqual([
      '3 of 3',
      '6 of 6',
      '3 of 3',
      '3 of 3',
      '9 of 9',
      '12 of 12',
      '9 of 9',
      '6 of 6',
      `${3 * TOTAL} of ${3 * TOTAL}`,
    ]);
    expect(await quiz().locator('.marking-reasons').count()).toBe(0);
  });

  it('adds halves to marks that are typed, and takes two digits only where there are so many marks', async () => {
    await field('Heron', 7).focus();
    await page.keyboard.type('1');
    expect(await own('Heron', 7).inputValue()).toBe('1');
    await page.keyboard.type('.');
    expect(await own('Heron', 7).inputValue()).toBe('1½');
    await page.keyboard.type('2');
    expect(await own('Heron', 7).inputValue()).toBe('2');
    await field('Heron', 8).focus();
    await page.keyboard.type(',');
    expect(await own('Heron', 8).inputValue()).toBe('½');
    expect(await row('Heron', 8).locator('input:checked').getAttribute('value')).toBe('½');
  });

  it('leaves the keys of the browser alone', async () => {
    await field('Heron', 1).focus();
    await page.keyboard.press('Control+b');
    await page.keyboard.press('Alt+b');
    await page.keyboard.press('z');
    expect(await verdict('Heron', 1)).toBe('');
    await page.keyboard.press('ArrowRight');
    expect(await verdict('Heron', 1)).not.toBe('');
  });
});

describe('a paper that is marked by tapping', PATIENCE, () => {
  beforeEach(async () => {
    await visit(page, KEY);
    await openHelp();
  });

  const tile = (question: number, name: string) =>
    row('Heron', question).locator('.marking-tile', { has: page.locator(`input[value="${name}"]`) });

  it('takes one tile, or several, or none', async () => {
    await tile(1, 'A').click();
    await tile(1, 'B').click();
    expect(await verdict('Heron', 1)).toBe('Right');
    for (const letter of ['C', 'D', 'A']) await tile(2, letter).click();
    expect(await verdict('Heron', 2)).toBe('Partly right');
    expect(await own('Heron', 2).inputValue()).toBe('1');
    await tile(2, 'D').click();
    expect(await verdict('Heron', 2)).toBe('Right');
    await tile(2, '-').click();
    expect(await verdict('Heron', 2)).toBe('Nothing written');
    expect(await row('Heron', 2).locator('input:checked').count()).toBe(1);
    await tile(2, 'A').click();
    expect(await row('Heron', 2).locator('input:checked').count()).toBe(1);
    await tile(8, '1½').click();
    expect((await readLine('Heron')).at(-1)).toBe('3½ so far');
    expect(await says()).toBe('Partly right. 1½ of 2. Heron: 3½ of 5. still to mark: 5');
  });

  it('takes the answer of the key, or nothing, with one button', async () => {
    await row('Heron', 4).getByRole('button', { name: 'as in the key' }).click();
    expect(await field('Heron', 4).inputValue()).toBe('Hidden Moon');
    expect(await verdict('Heron', 4)).toBe('Right');
    await row('Heron', 6).getByRole('button', { name: 'as in the key' }).click();
    expect(await field('Heron', 6).inputValue()).toBe('BDAC');
    await row('Heron', 5).getByRole('button', { name: 'nothing' }).click();
    expect(await verdict('Heron', 5)).toBe('Nothing written');
    expect((await readLine('Heron')).at(-1)).toBe('5 so far');
  });
});

describe('what the teacher changes', PATIENCE, () => {
  beforeEach(async () => {
    await visit(page, KEY);
    await openHelp();
  });

  it('counts before what was computed, until it is emptied', async () => {
    await field('Heron', 4).fill('Moon, hidden');
    await own('Heron', 4).fill('0.5');
    expect(await verdict('Heron', 4)).toBe('Partly right your own marks · computed: 0 Not in the key: yours to judge.');
    expect((await readLine('Heron'))[3]).toBe('½');
    await own('Heron', 4).fill('');
    expect(await own('Heron', 4).inputValue()).toBe('');
    await own('Heron', 4).blur();
    expect(await own('Heron', 4).inputValue()).toBe('0');
    expect((await readLine('Heron'))[3]).toBe('0');
  });

  it('may be marks alone, from one answer to the next', async () => {
    await own('Heron', 1).focus();
    await enter('1', '1,5', '1');
    expect(await page.evaluate('document.activeElement.ariaLabel')).toBe('Marks, Heron, question 4');
    expect(await readLine('Heron')).toEqual(['1', '1½', '1', '', '', '', '', '', '3½ so far']);
    expect(await verdict('Heron', 2)).toBe('Partly right your own marks');
  });

  it('is not taken where it cannot be read, and the page says why', async () => {
    await own('Heron', 2).fill('7');
    expect(await verdict('Heron', 2)).toBe('These marks cannot be read: 0 to 2 are expected, half marks too.');
    expect(await own('Heron', 2).getAttribute('aria-invalid')).toBe('true');
    expect((await readLine('Heron'))[1]).toBe('');
    await field('Heron', 5).fill('cad');
    expect(await verdict('Heron', 5)).toBe('There is no D in this question.');
    await field('Heron', 5).fill('cabc');
    expect(await verdict('Heron', 5)).toBe('These are more letters than there are places.');
    expect(await field('Heron', 5).getAttribute('aria-invalid')).toBe('true');
    await field('Heron', 5).fill('cab');
    expect(await field('Heron', 5).getAttribute('aria-invalid')).toBe('false');
  });
});

describe('a quiz that is marked', PATIENCE, () => {
  beforeEach(async () => {
    await visit(page, KEY);
    await openHelp();
    await page.keyboard.press('Enter');
    await enter('a', 'ab', '4', '=', 'cab', 'bdac', '2', '1.');
    await page.keyboard.press('Enter');
    await enter('a', '-', '2', 'x', 'abc');
  });

  it('tells what the room got wrong, each reason once', async () => {
    expect((await quiz().locator('.marking-reasons li').allInnerTexts()).map((line) => line.trim())).toEqual([
      'Question 1 · Counted one night too many. (Heron, Kelp)',
      'Question 2 · Took the dark half. (Heron)',
      'Question 3 · Counted cette nuit as well. (Heron)',
      'Question 3 · Left the last one out. (Kelp)',
    ]);
  });

  it('says how far it is', async () => {
    expect(await readSeen(quiz().locator('.marking-bar p').first())).toBe(
      'Kelp 0 of 8 · still to mark: 3 Whole room: 11½ of 25 · papers done: 1 of 3',
    );
    expect(await quiz().locator('.marking-paper').allInnerTexts()).toEqual([
      'Heron 11½ of 17',
      'Kelp 0 of 8 · still to mark: 3',
      'Oyster –',
    ]);
  });

  it('keeps its marks when the fields are put away, and apart from those of another quiz', async () => {
    await openHelp();
    expect(await quiz().locator('input').first().isVisible()).toBe(false);
    expect(await verdict('Heron', 1)).toBe('Wrong A · 0 of 1 A Counted one night too many.');
    expect((await readLine('Heron')).at(-1)).toBe('11½');
    expect((await readLine('Heron', quiz(2))).join('')).toBe('');
  });

  it('prints its marks and its mark sheet, and no field', async () => {
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width: 680, height: 1009 });
    for (const kind of ['input', 'button', '.marking-bar', '.marking-panel']) {
      const shown = await page.locator(kind).evaluateAll((all) => all.filter((each) => each.checkVisibility()).length);
      expect(shown, kind).toBe(0);
    }
    expect(await verdict('Heron', 2)).toBe('Wrong AB · 0 of 2 B Took the dark half.');
    expect(await verdict('Heron', 6)).toBe('Right BDAC · 4 of 4');
    expect(await verdict('Kelp', 2)).toBe('Nothing written 0 of 2');
    expect(await row('Kelp', 7).isVisible()).toBe(false);
    expect((await readLine('Heron')).at(-1)).toBe('11½');
    expect(await lookAt(page, 'misfits')).toEqual([]);
    expect(await findFaintText(page)).toEqual([]);
  });

  it('prints the mark sheet alone, on one sheet, from its button', async () => {
    await page.evaluate('window.print = () => { window.wasAsked = true; }');
    await quiz().getByRole('button', { name: 'Print the mark sheet' }).click();
    expect(await page.evaluate('window.wasAsked')).toBe(true);
    await page.emulateMedia({ media: 'print' });
    const { text } = await lookAt(page, 'facts', []);
    for (const words of ['Quiz 1', 'Mark sheet', 'Teacher only', 'Whole room', 'What went wrong']) {
      expect(text).toContain(words);
    }
    for (const words of ['Ask 1?', 'Quiz 2']) expect(text).not.toContain(words);
    expect(readSheetSizes(await page.pdf({ preferCSSPageSize: true }))).toEqual([A4_PORTRAIT]);
    await page.evaluate("dispatchEvent(new Event('afterprint'))");
    expect((await lookAt(page, 'facts', [])).text).toContain('Quiz 2');
  });

  it('is cleared after it has asked once', async () => {
    const button = (name: string) => quiz().getByRole('button', { name });
    await button('Clear all marks of this quiz').click();
    expect(await page.evaluate('document.activeElement.textContent')).toBe('Keep them');
    await page.keyboard.press('Enter');
    expect((await readLine('Heron')).at(-1)).toBe('11½');
    await button('Clear all marks of this quiz').click();
    await button('Clear them').click();
    expect(await says()).toBe('All marks of this quiz are cleared.');
    expect((await readLine('Heron')).join('')).toBe('');
    expect(await quiz().locator('tfoot, .marking-reasons, .marking-row input:checked, .is-marked').count()).toBe(0);
    const left = await quiz()
      .locator('input[type="text"]')
      .evaluateAll((inputs) => inputs.filter((input) => 'value' in input && input.value !== '').length);
    expect(left).toBe(0);
  });

  it('asks before it is left with marks in it, and not after they are cleared', async () => {
    const isHeld = () => page.evaluate<boolean>("!dispatchEvent(new Event('beforeunload', { cancelable: true }))");
    expect(await isHeld()).toBe(true);
    await quiz().getByRole('button', { name: 'Clear all' }).click();
    await quiz().getByRole('button', { name: 'Clear them' }).click();
    expect(await isHeld()).toBe(false);
  });
});

describe('the marking help', PATIENCE, () => {
  it('keeps nothing outside of the page', async () => {
    const { requests, complaints } = await visit(page, KEY);
    const pagesBefore = await page.evaluate('history.length');
    await openHelp();
    await page.keyboard.press('Enter');
    await enter(...ALL_RIGHT);
    await quiz().getByRole('button', { name: 'Clear all' }).click();
    await quiz().getByRole('button', { name: 'Clear them' }).click();
    expect(complaints).toEqual([]);
    const typeface = new RegExp(`^${new URL('fonts/', KEY)}[\\w-]+\\.woff$`);
    expect(requests.filter((address) => !typeface.test(address))).toEqual([KEY]);
    expect(page.url()).toBe(KEY);
    expect(await page.evaluate('history.length')).toBe(pagesBefore);
    expect(await page.evaluate('localStorage.length + sessionStorage.length + document.cookie.length')).toBe(0);
    expect(await page.locator('form').count()).toBe(0);
    expect((await lookAt(page, 'facts', [])).inlineStyles).toEqual([]);
  });

  it('puts no barrier up, on light and on dark ground', async () => {
    await visit(page, KEY);
    await openHelp();
    await page.keyboard.press('Enter');
    await enter('a', 'ab', '4', 'x', 'cxb', 'b', '1', '.');
    await own('Heron', 1).fill('9');
    expect(await findBarriers(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await findFaintText(page)).toEqual([]);
    const facts = await lookAt(page, 'facts', []);
    expect(new Set(facts.ids).size).toBe(facts.ids.length);
    expect(facts.pointers.filter((id) => !facts.ids.includes(id))).toEqual([]);
  });

  it('fits into a narrow window, with targets of 24 px and more', async () => {
    await visit(page, KEY);
    await openHelp();
    await page.keyboard.press('Enter');
    await enter('a', 'ab', '4', 'x', 'cxb', 'b', '1', '.');
    await own('Heron', 1).fill('9');
    for (const width of [320, 768]) {
      await page.setViewportSize({ width, height: 700 });
      // The bar lies over what is under it for as long as that is not scrolled up.
      await quiz()
        .locator('.marking-bar')
        .evaluate((bar) => bar.classList.add('visually-hidden'));
      expect(await lookAt(page, 'misfits'), `${width} px`).toEqual([]);
      const small = await quiz()
        .locator('input, button')
        .evaluateAll(
          (all) =>
            all.filter((each) => {
              const { width: wide, height } = (each.closest('.marking-way') ?? each).getBoundingClientRect();
              return each.checkVisibility() && each.closest('.marking-bar') === null && (wide < 24 || height < 24);
            }).length,
        );
      expect(small).toBe(0);
    }
  });

  it('is gone through with the Tab key and shows where one is', async () => {
    await visit(page, KEY);
    await openHelp();
    await page.locator('.skip-link').focus();
    await lookAt(page, 'watchFocus');
    for (let count = 0; count < 60; count += 1) await page.keyboard.press('Tab');
    expect((await lookAt(page, 'tabbing')).unseen).toEqual([]);
    const hidden = await page.evaluate<number>(`
      (() => {
        const bar = document.querySelector('.marking-bar').getBoundingClientRect();
        const { bottom, top } = document.activeElement.getBoundingClientRect();
        return top > bar.top || bottom <= 0 ? 1 : 0;
      })()`);
    expect(hidden).toBe(0);
  });
});
