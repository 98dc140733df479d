import { createRequire } from 'node:module';
import { FONT_FACES } from '../pack/fonts/font-faces.ts';
import type { FontCutter } from '../pack/fonts/plan-fonts.ts';
import { readBytes } from './read-source.ts';

/** `subset-font` 2.9.0: HarfBuzz, as WebAssembly. */
type SubsetFont = (font: Buffer, text: string, options: { readonly targetFormat: 'woff' }) => Promise<Buffer>;

/** Read when the first font is cut: nothing else of the command needs the library. */
const require = createRequire(import.meta.url);

/** Cuts Andika down to the characters of a pack. The same characters give the same bytes. */
export function createFontCutter(): FontCutter {
  const cuts = new Map<string, Promise<Uint8Array>>();
  return {
    get licence() {
      return readBytes(require.resolve('@fontsource/andika/LICENSE')).toString('utf8');
    },
    cut({ face, range, characters }) {
      const key = `${face} ${range} ${characters}`;
      const cut = cuts.get(key) ?? cutFile(face, range, characters);
      cuts.set(key, cut);
      return cut;
    },
  };
}

async function cutFile(face: keyof typeof FONT_FACES, range: string, characters: string): Promise<Uint8Array> {
  const { weight, style } = FONT_FACES[face];
  const subsetFont: SubsetFont = require('subset-font');
  const whole = readBytes(require.resolve(`@fontsource/andika/files/andika-${range}-${weight}-${style}.woff`));
  return new Uint8Array(await subsetFont(whole, characters, { targetFormat: 'woff' }));
}
