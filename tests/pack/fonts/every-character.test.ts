import { create, type Font } from 'fontkit';
import { describe, expect, it } from 'vitest';
import { createFontCutter } from '../../../src/node/cut-fonts.ts';
import { planFonts } from '../../../src/pack/fonts/plan-fonts.ts';
import type { PackFile } from '../../../src/pack/pack-plan.ts';
import {
  buildWeek,
  DEMO_CONTENT,
  FIXED_CONTENT,
  makeWeek,
  openContent,
  readWeekFolder,
  writeLesson,
} from '../../directives/build-week.ts';
import { readPageText } from '../../directives/find-answers.ts';

const LESSONS = new URL('../../../lessons/', import.meta.url);
const demo = (name: string) => readWeekFolder(new URL(`${name}/`, LESSONS), name);

/** Letters of several languages with Latin letters: macrons, the ʻokina, a dot below, a cedilla, a ring. */
const LETTERS = 'āēīōūĀĒĪŌŪ ʻokina ʼ ạ ẹ ọ ş ț å ø ß œ æ ŋ ɓ ñ ç “…” – − × ½ °';
const LETTERED = makeWeek({ 'a.md': writeLesson(`${LETTERS}\n\n*${LETTERS}*\n\n**${LETTERS}**`) });

const CASES = [
  ['round-moon', DEMO_CONTENT, demo('round-moon')],
  ['vers-la-nuit-noire', DEMO_CONTENT, demo('vers-la-nuit-noire')],
  ['a lesson in many letters', FIXED_CONTENT, LETTERED],
] as const;

/** White space, joiners and marks of direction: nothing is drawn for them. */
const UNDRAWN = /[\s\u200b-\u200f\u2028-\u202e\u2060-\u2064\ufeff\u00ad]/u;

/** The characters that a page shows: its words, and texts that its styles put there. */
function listShown(html: string): string[] {
  const put = [...html.matchAll(/content: ?"([^"]*)"/g)].map(([, text = '']) =>
    text.replace(/\\([0-9a-f]{1,6}) ?/gi, (_, hex: string) => String.fromCodePoint(Number.parseInt(hex, 16))),
  );
  return [...new Set(readPageText(html) + put.join(''))].filter((character) => !UNDRAWN.test(character));
}

/** The fonts that a page's own styles name, opened. */
function openFonts(page: PackFile, html: string, files: ReadonlyMap<string, PackFile['content']>): Map<string, Font[]> {
  const folder = page.path.slice(0, page.path.lastIndexOf('/') + 1);
  const faces = new Map<string, Font[]>();
  for (const [, style = '', weight = '', url = ''] of html.matchAll(
    /@font-face\{[^}]*font-style:(\w+);font-weight:(\d+);[^}]*src:url\("([^"]+)"\)/g,
  )) {
    const content = files.get(folder + url);
    if (content === undefined || typeof content === 'string') throw new Error(`${page.path} asks for ${url}.`);
    const face = `${weight} ${style}`;
    // A single face, and no collection of them.
    faces.set(face, [...(faces.get(face) ?? []), create(Buffer.from(content)) as Font]);
  }
  return faces;
}

describe.each(CASES)('the pages of %s', (_name, content, week) => {
  const { plan, diagnostics } = buildWeek(week, openContent(content));
  const pages = (plan?.files ?? []).filter(({ path }) => path.endsWith('.html'));

  it('show no character that their typeface lacks, and every font they name is there', async () => {
    expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
    const files = new Map(
      (await planFonts(pages, createFontCutter())).map(({ path, content: bytes }) => [path, bytes]),
    );
    expect(pages.length).toBeGreaterThan(3);
    for (const page of pages) {
      if (typeof page.content !== 'string') throw new Error(`${page.path} is no text.`);
      const faces = openFonts(page, page.content, files);
      for (const face of ['400 normal', '700 normal']) {
        const fonts = faces.get(face) ?? [];
        const missing = listShown(page.content).filter(
          (character) => !fonts.some((font) => font.hasGlyphForCodePoint(character.codePointAt(0) ?? 0)),
        );
        expect(missing, `${page.path}, ${face}`).toEqual([]);
      }
    }
  });
});
