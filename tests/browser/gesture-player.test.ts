import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createFontCutter } from '../../src/node/cut-fonts.ts';
import { planFonts } from '../../src/pack/fonts/plan-fonts.ts';
import { renderWav } from '../../src/rhythm/render-wav.ts';
import type { Track } from '../../src/rhythm/timeline-types.ts';
import { makeAssets, makeSvg } from '../content/media/sample-files.ts';
import {
  buildWeek,
  type ContentChanges,
  FIXED_CONTENT,
  makeWeek,
  openContent,
  writeLesson,
} from '../directives/build-week.ts';
import { findBarriers, findFaintText } from './find-barriers.ts';
import { launchBrowser } from './launch-browser.ts';
import { lookAt } from './look-at.ts';
import { visit } from './visit.ts';
import watchPlayer from './watch-player.js?raw';

// A busy machine may need long for what takes a second here; a test that hangs still ends.
const PATIENCE = { timeout: 60_000 };

/** How far the highlight may be from the sound. */
const NEAR_SECONDS = 0.05;

const RUNS = [
  // 120 beats a minute: half a second a beat. Counts 2, two nights, counts 5, one night.
  '::gesture-sequence{nights="Hidden Moon..Silver Thread" tempo=120}',
  // The same beats stand in the first run: it is cut from that track, which goes on after it.
  '::gesture-sequence{nights="Dark Water" tempo=120}',
  // 160 beats a minute, two to a night: slowly first, a rest of a beat in between.
  '::gesture-sequence{nights="Dark Water" tempo=160 beats=2 count-in=1 rest=1 slow-first=yes}',
  '::gesture-sequence{nights=up-to-tonight tempo=160 count-in=none}',
  '::gesture-sequence{nights="Dark Water" tempo=150 view=own}',
];

const HANDOUT = ':::handout[To lead]\n::gesture-sequence{nights="Hidden Moon..Silver Thread" tempo=120}\n:::';

const folder = mkdtempSync(join(tmpdir(), 'lessontide-player-'));

const FONTS = createFontCutter();

/** A drum of some beats at 120 a minute, as a sound file that somebody might have recorded. */
function record(strokes: Track['strokes']): Uint8Array {
  const tempi = [{ atBeat: 0, beatsPerMinute: 120 }];
  return renderWav({ name: 'recorded', strokes, tempi, markers: [], totalSeconds: strokes.length / 2 });
}

/** The content of the fixtures with a name somebody says, a run somebody drums, and a picture somebody drew. */
const RICH: ContentChanges = {
  assets: makeAssets({
    sounds: {
      // Long enough to be heard still when it is looked at.
      'hidden.wav': record(Array(20).fill('drum')),
      // Five beats of rest come before the run: it begins after two and a half seconds.
      'drummed.wav': record([
        'rest',
        'rest',
        'rest',
        'rest',
        'rest',
        'count',
        'count',
        'rim',
        'drum',
        'rest',
        'rest',
        'rest',
      ]),
    },
    images: { 'peep.svg': makeSvg('<circle cx="20" cy="15" r="9"/>') },
  }),
  changeCalendars: (text) =>
    text.replace(
      '{ name: Hidden Moon,',
      '{ name: Hidden Moon, recording: { file: hidden.wav, credit: A neighbour, permission: for tests },',
    ),
  changeGestures: (text) =>
    text.includes('recordings:')
      ? `${text.replace('peep: {', 'peep: { picture: peep.svg,')}  drummed: { file: drummed.wav, credit: A drummer, permission: for tests, tempo: 120, first-beat: 2.5 }\n`
      : text,
};

async function writePack(name: string, lesson: string, changes: ContentChanges = {}): Promise<void> {
  const setting = openContent(FIXED_CONTENT, undefined, changes);
  const { plan, diagnostics } = buildWeek(makeWeek({ 'a.md': writeLesson(lesson) }), setting);
  if (plan === undefined) throw new Error(diagnostics.map(({ message }) => message).join('\n'));
  for (const { path, content } of [...plan.files, ...(await planFonts(plan.files, FONTS))]) {
    const file = join(folder, name, path);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, content);
  }
}

/** Writes the pack of a week, one like it whose sounds are missing, and one with recordings. */
async function writePacks(): Promise<void> {
  await writePack('pack', [...RUNS, HANDOUT].join('\n\n'));
  cpSync(join(folder, 'pack'), join(folder, 'mute'), { recursive: true });
  rmSync(join(folder, 'mute/sound'), { recursive: true });
  cpSync(join(folder, 'pack'), join(folder, 'short'), { recursive: true });
  for (const name of readdirSync(join(folder, 'short/sound')).filter((file) => file.endsWith('.wav'))) {
    cutSound(join(folder, 'short/sound', name));
  }
  const run = '::gesture-sequence{nights="Dark Water" recording=drummed}';
  await writePack('rich', `${run}\n\n:::handout[To lead]\n${run}\n:::`, RICH);
}

/** Cuts a sound to its first second, its two sizes with it. */
function cutSound(path: string): void {
  const bytes = readFileSync(path).subarray(0, 44 + 16_000);
  bytes.writeUInt32LE(bytes.length - 8, 4);
  bytes.writeUInt32LE(bytes.length - 44, 40);
  writeFileSync(path, bytes);
}

const addressOf = (path: string) => pathToFileURL(join(folder, path)).href;
const TEACHER = addressOf('pack/3-wednesday.html');
const LEARNER = addressOf('pack/learners/3-wednesday-1-to-lead.html');
const SHORT = addressOf('short/3-wednesday.html');
const MUTE = addressOf('mute/3-wednesday.html');
const RICH_TEACHER = addressOf('rich/3-wednesday.html');
const RICH_LEARNER = addressOf('rich/learners/3-wednesday-1-to-lead.html');

let browser: Browser;
let page: Page;

beforeAll(async () => {
  await writePacks();
  browser = await launchBrowser();
  page = await (await browser.newContext({ offline: true })).newPage();
}, PATIENCE.timeout);

afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
}, PATIENCE.timeout);

interface Note {
  readonly seconds: number;
  readonly clock: number;
  readonly shown: string;
  readonly disc: string;
  readonly moving: boolean;
  readonly paused: boolean;
}

interface Sound {
  readonly paused: boolean;
  readonly seconds: number;
  readonly rate: number;
  readonly keepsPitch: boolean;
  readonly source: string;
  readonly shown: boolean;
}

interface Focus {
  readonly name: string;
  readonly words: string;
  readonly outlined: boolean;
}

async function ask<Answer>(tab: Page, call: string): Promise<Answer> {
  return tab.evaluate<Answer>(`globalThis.watchPlayer ?? (() => { ${watchPlayer} })(); watchPlayer.${call}`);
}

const run = (number: number) => page.locator('.gesture-run').nth(number);
const see = (number: number, selector: string) => ask<string>(page, `see(${number}, '${selector}')`);
const styleOf = (selector: string, property: string) => ask<string>(page, `style(0, '${selector}', '${property}')`);
const sounds = () => ask<Sound[]>(page, 'sounds()');

/** Plays a run to its end, or until a beat is shown, and gives what was seen and heard on the way. */
async function play(number: number, until = ''): Promise<Note[]> {
  await run(number).locator('.player-play').click();
  await ask(page, `start(${number})`);
  return ask(page, `until(${number}, ${JSON.stringify(until)})`);
}

/** Beats as the page ought to show them: when each begins, in seconds, and what is marked. */
type Beats = readonly (readonly [seconds: number, shown: string])[];

/** Notes that do not fit: what is marked is not what ought to be at any moment near the sound's. */
function findLate(notes: readonly Note[], beats: Beats, zeroSeconds = 0): string[] {
  const at = (seconds: number) => beats.findLast(([begins]) => begins <= seconds + 1e-6)?.[1] ?? beats[0]?.[1];
  return notes
    .filter(({ paused }) => !paused)
    .map(({ seconds, shown }) => ({ seconds: seconds - zeroSeconds, shown }))
    .filter(({ seconds, shown }) => ![-NEAR_SECONDS, 0, NEAR_SECONDS].some((off) => at(seconds + off) === shown))
    .map(({ seconds, shown }) => `${shown} at ${seconds.toFixed(3)}, not ${at(seconds)}`);
}

const TO_SILVER_THREAD: Beats = [
  [0, 'count 1'],
  [0.5, 'count 2'],
  [1, 'Hidden Moon'],
  [1.5, 'Maybe Moon'],
  [2, 'count 1'],
  [2.5, 'count 2'],
  [3, 'count 3'],
  [3.5, 'count 4'],
  [4, 'count 5'],
  [4.5, 'Silver Thread'],
];

describe('a run that is played', PATIENCE, () => {
  beforeEach(() => visit(page, TEACHER));

  it('marks the card of each beat in step with the sound', async () => {
    const notes = await play(0);
    expect(findLate(notes, TO_SILVER_THREAD)).toEqual([]);
    const order = notes.map(({ shown }) => shown).filter((shown, index, all) => shown !== all[index - 1]);
    expect(order.filter((shown) => shown !== '')).toEqual(TO_SILVER_THREAD.map(([, shown]) => shown));
    // Frames came often enough for the sight to be near the sound, too.
    expect(notes.length).toBeGreaterThan(50);
    const judge = [{ seconds: 1.4, clock: 0, shown: 'Maybe Moon', disc: '', moving: false, paused: false }];
    expect(findLate(judge, TO_SILVER_THREAD)).toEqual(['Maybe Moon at 1.400, not Hidden Moon']);
  });

  it.each([
    { button: '.player-slower', rate: 0.75 },
    { button: '.player-faster', rate: 1.25 },
  ])('does so at $rate of its speed, in the same pitch', async ({ button, rate }) => {
    await run(0).locator(button).click();
    const notes = await play(0, 'Maybe Moon');
    expect(findLate(notes, TO_SILVER_THREAD)).toEqual([]);
    const [sound] = await sounds();
    expect(sound).toMatchObject({ rate, keepsPitch: true, paused: false });
    const [from, to] = [notes.find(({ seconds }) => seconds > 0.2), notes.at(-1)];
    const heard = (to?.seconds ?? 0) - (from?.seconds ?? 0);
    const passed = (to?.clock ?? 0) - (from?.clock ?? 0);
    expect(Math.abs(heard / passed - rate)).toBeLessThan(0.1);
    await expect(run(0).locator(button).getAttribute('aria-disabled')).resolves.toBe('true');
    expect(await see(0, 'output')).toBe(`× ${rate}`);
  });

  it('stops at the end of its own part of a longer track, and can be played again', async () => {
    const beats = TO_SILVER_THREAD.slice(0, 4);
    for (const _time of ['once', 'again']) {
      const notes = await play(1);
      expect(findLate(notes, beats)).toEqual([]);
      const last = notes.findLast(({ paused }) => !paused);
      expect(last?.seconds).toBeGreaterThan(1.8);
      expect(last?.seconds).toBeLessThan(2);
    }
    const [whole, part] = await sounds();
    expect(part?.source).toBe(whole?.source);
  });

  it('follows a slow first pass, a rest and nights of two beats', async () => {
    // 60 / 160 / 0.75 = 0.5 seconds a beat at first, then 0.375.
    const notes = await play(2);
    const beats: Beats = [
      [0, 'count 1'],
      [0.5, 'Hidden Moon'],
      [1.5, 'Maybe Moon'],
      [2.5, ''],
      [2.875, 'count 1'],
      [3.25, 'Hidden Moon'],
      [4, 'Maybe Moon'],
    ];
    expect(findLate(notes, beats)).toEqual([]);
    const discs = notes.map(({ disc }) => disc).filter((disc, index, all) => disc !== all[index - 1]);
    expect(discs).toEqual(['1', '2', '', '1', '2', '']);
  });

  it('ends in tonight’s sentence, shown and said', async () => {
    await ask(page, 'listen(3)');
    await play(3);
    const sentence = 'Tonight is Round Moon, in Frost Month.';
    expect(await see(3, '.player-name')).toBe(sentence);
    expect(await ask<string[]>(page, 'said')).toEqual([
      'Dark Water',
      'Reed Edge',
      'Open Channel',
      'Brimming Creek',
      'High Water',
      sentence,
    ]);
  });

  it('goes on from the beat on which it was paused', async () => {
    await play(0, 'Maybe Moon');
    await run(0).locator('.player-play').click();
    expect((await sounds())[0]?.paused).toBe(true);
    expect(await run(0).locator('.gesture-card.is-now').count()).toBe(1);
    const notes = await play(0, 'count 1');
    expect(notes[0]?.seconds).toBeGreaterThan(1.45);
    expect(findLate(notes, TO_SILVER_THREAD)).toEqual([]);
  });

  it('pauses the others', async () => {
    await play(0, 'count 2');
    await play(2, 'Hidden Moon');
    expect((await sounds()).map(({ paused }) => paused)).toEqual([true, true, false, true, true]);
    expect(await page.locator('.gesture-run.is-playing').count()).toBe(1);
    expect(await see(0, '.player-play')).toBe('Play');
    expect(await see(2, '.player-play')).toBe('Pause');
  });

  it('complains of nothing, and asks for its own sound alone', async () => {
    const { requests, complaints } = await visit(page, TEACHER);
    const fonts = ['regular', 'bold'].map((face) => addressOf(`pack/fonts/andika-latin-${face}.woff`));
    const listOthers = () => [...new Set(requests)].filter((address) => !fonts.includes(address));
    expect(listOthers()).toEqual([TEACHER]);
    await play(0, 'count 2');
    expect(complaints).toEqual([]);
    expect(listOthers()).toEqual([TEACHER, addressOf('pack/sound/beat-120-1.wav')]);
    expect((await lookAt(page, 'facts', [])).inlineStyles).toEqual([]);
  });

  it('puts no barrier up while it plays, on light and on dark ground', async () => {
    await play(0, 'Hidden Moon');
    await run(0).locator('.player-play').click();
    expect(await findBarriers(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await findFaintText(page)).toEqual([]);
    await page.setViewportSize({ width: 320, height: 640 });
    expect(await lookAt(page, 'misfits')).toEqual([]);
  });

  it('shows drawings as in a mirror, and seated ways first, where one asks for it', async () => {
    const flip = () => styleOf('.gesture-drawing svg', 'transform');
    expect(await flip()).toBe('none');
    await run(0).locator('.player-mirror').click();
    expect(await flip()).toBe('matrix(-1, 0, 0, 1, 0, 0)');
    expect(await run(0).locator('.player-mirror').getAttribute('aria-pressed')).toBe('true');
    const order = () =>
      run(0)
        .locator('.gesture-card')
        .first()
        .locator('.gesture-cue, .gesture-seated')
        .evaluateAll((parts) => parts.map(({ className }) => className));
    expect(await order()).toEqual(['gesture-cue', 'gesture-seated']);
    expect(await see(0, '.player-how')).toBe('Cover your face.');
    await run(0).locator('.player-seated').click();
    expect(await order()).toEqual(['gesture-seated', 'gesture-cue']);
    expect(await see(0, '.player-how')).toBe('Seated: Cover your eyes sitting.');
    await run(0).locator('.player-seated').click();
    expect(await order()).toEqual(['gesture-cue', 'gesture-seated']);
    expect(await run(4).locator('.player-mirror').count()).toBe(0);
  });
});

describe.each([
  ['the teacher', RICH_TEACHER],
  ['a learner', RICH_LEARNER],
])('recordings and pictures for %s', PATIENCE, (_reader, address) => {
  const heard = () => ask<readonly { readonly name: string; readonly paused: boolean }[]>(page, 'voices()');

  it('plays a recording from a little before its first beat, with its cards in step', async () => {
    const { complaints } = await visit(page, address);
    const notes = await play(0);
    expect(notes.find(({ paused }) => !paused)?.seconds).toBeGreaterThanOrEqual(0.5);
    const beats = TO_SILVER_THREAD.slice(0, 4);
    expect(
      findLate(
        notes.filter(({ seconds }) => seconds > 2.5 && seconds < 4.5),
        beats,
        2.5,
      ),
    ).toEqual([]);
    expect(notes.filter(({ seconds, shown }) => seconds < 2.45 && shown !== '')).toEqual([]);
    expect(complaints).toEqual([]);
    expect(await see(0, '.run-credit')).toBe('Recording: A drummer · for tests');
  });

  it('says a name, and lets it be said alone', async () => {
    const { complaints } = await visit(page, address);
    await ask(page, 'hearVoices()');
    await play(0, 'count 1');
    await page.locator('button.hear-name').click();
    expect((await sounds())[0]?.paused).toBe(true);
    expect((await heard()).map(({ paused }) => paused)).toEqual([false]);
    await run(0).locator('.player-play').click();
    expect((await heard()).map(({ paused }) => paused)).toEqual([true]);
    expect(complaints).toEqual([]);
  });

  it('shows the picture that stands for a drawing, as it is', async () => {
    const { requests, complaints } = await visit(page, address);
    expect(complaints).toEqual([]);
    expect(requests.some((url) => url.includes('/images/'))).toBe(true);
    await run(0).locator('.player-mirror').click();
    expect(await styleOf('.own-picture', 'transform')).toBe('none');
  });
});

describe('the keyboard alone', PATIENCE, () => {
  it('plays a run on a learner’s page, steps through it and leaves it', async () => {
    await visit(page, LEARNER);
    const focus = () => ask<Focus>(page, 'focus()');
    const tabTo = async (name: string) => {
      for (let count = 0; count < 20 && (await focus()).name !== name; count += 1) await page.keyboard.press('Tab');
      expect(await focus()).toMatchObject({ name, outlined: true });
    };
    await tabTo('player-play');
    expect((await focus()).words).toBe('Play');
    await page.keyboard.press('Enter');
    await page.locator('.gesture-card.is-now').waitFor();
    expect((await focus()).words).toBe('Pause');
    await page.keyboard.press('Space');
    expect((await sounds())[0]?.paused).toBe(true);

    await tabTo('player-start');
    await page.keyboard.press('Enter');
    expect(await see(0, '.player-name')).toBe('Count 1–2, then Dark Water');
    await ask(page, 'listen(0)');
    for (const expected of [
      'Hidden Moon',
      'Maybe Moon',
      'Count 1–5, then Reed Edge',
      'Silver Thread',
      'Silver Thread',
    ]) {
      await page.keyboard.press('ArrowRight');
      expect(await see(0, '.player-name')).toBe(expected);
    }
    await page.keyboard.press('ArrowLeft');
    expect(await see(0, '.player-name')).toBe('Count 1–5, then Reed Edge');
    expect(await ask<string[]>(page, 'said')).toHaveLength(5);

    await tabTo('player-slower');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Enter');
    expect(await see(0, 'output')).toBe('× 0.75');
    await tabTo('player-seated');
    await page.keyboard.press('Tab');
    expect((await focus()).name).not.toContain('player');
  });

  it('leaves the arrow keys to the browser when another key is held, and outside of a player', async () => {
    await visit(page, LEARNER);
    await page.locator('.player-on').focus();
    await page.keyboard.press('Shift+ArrowRight');
    expect(await page.locator('.gesture-card.is-now').count()).toBe(0);
    await page.locator('.skip-link').focus();
    await page.keyboard.press('ArrowRight');
    expect(await page.locator('.gesture-card.is-now').count()).toBe(0);
  });
});

describe('the visible beat', PATIENCE, () => {
  it('pulses, but not for those who want no movement; the number and the card change all the same', async () => {
    await visit(page, TEACHER);
    expect((await play(0, 'Maybe Moon')).some(({ moving }) => moving)).toBe(true);
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await page.reload();
    const notes = await play(0, 'Maybe Moon');
    await page.emulateMedia({ reducedMotion: null });
    expect(notes.filter(({ moving }) => moving)).toEqual([]);
    expect([...new Set(notes.map(({ disc }) => disc))]).toEqual(['1', '2']);
    expect(findLate(notes, TO_SILVER_THREAD)).toEqual([]);
  });
});

describe('without sound', PATIENCE, () => {
  it('says so, and goes on for the eyes by the clock', async () => {
    await visit(page, MUTE);
    const notes = await play(0);
    expect(await run(0).locator('.player-silent').isVisible()).toBe(true);
    const order = notes.map(({ shown }) => shown).filter((shown, index, all) => shown !== all[index - 1]);
    expect(order.filter((shown) => shown !== '')).toEqual(TO_SILVER_THREAD.map(([, shown]) => shown));
    const card = (name: string) => notes.find(({ shown }) => shown === name)?.clock ?? Number.NaN;
    // From the first night to the last are seven beats of half a second; a frame may come late.
    expect(Math.abs(card('Silver Thread') - card('Hidden Moon') - 3.5)).toBeLessThan(0.1);
  });
});

describe('with sound that is shorter than its run', PATIENCE, () => {
  it('goes on for the eyes, and sounds again from the beginning', async () => {
    await visit(page, SHORT);
    const notes = await play(0);
    const order = notes.map(({ shown }) => shown).filter((shown, index, all) => shown !== all[index - 1]);
    expect(order.filter((shown) => shown !== '')).toEqual(TO_SILVER_THREAD.map(([, shown]) => shown));
    expect(await run(0).locator('.player-silent').isVisible()).toBe(false);
    expect((await play(0, 'Hidden Moon')).some(({ paused }) => !paused)).toBe(true);
  });
});

describe('without scripts and on paper', PATIENCE, () => {
  it('has the browser’s own player for the part of the track that is the run', async () => {
    const plain = await browser.newPage({ offline: true, javaScriptEnabled: false });
    const { complaints } = await visit(plain, TEACHER);
    const shown = await ask<Sound[]>(plain, 'sounds()');
    expect(shown.map((sound) => sound.shown)).toEqual([true, true, true, true, true]);
    expect(shown[0]?.source).toBe('sound/beat-120-1.wav');
    // Two counts and two nights of half a second; it is to stop a little before the next stroke of the track.
    expect(shown[1]?.source).toBe('sound/beat-120-1.wav#t=0,1.8');
    expect(await plain.locator('.run-player').count()).toBe(0);
    expect(await plain.locator('.gesture-seated').first().isVisible()).toBe(true);
    expect(complaints).toEqual([]);
    await plain.close();
  });

  it('prints no control, and every card with its count', async () => {
    await visit(page, TEACHER);
    await play(0, 'Hidden Moon');
    await page.emulateMedia({ media: 'print' });
    for (const hidden of ['.run-player', 'audio', '.run-files']) {
      expect(await page.locator(hidden).first().isVisible(), hidden).toBe(false);
    }
    expect(await run(0).locator('.gesture-card').count()).toBe(3);
    expect(await run(0).locator('.gesture-count').first().isVisible()).toBe(true);
    const ground = await styleOf('.gesture-card', 'backgroundColor');
    expect(ground).toBe('rgba(0, 0, 0, 0)');
  });
});
