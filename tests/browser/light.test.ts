import { rmSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { generate, parse } from 'css-tree';
import { describe, expect, it } from 'vitest';
import { pageStyles, styleHandout, styleLesson } from '../../src/pack/pages/page-styles.ts';
import { lightenStyles } from '../../vite.config.ts';
import { type BuiltPage, buildPacks } from './built-packs.ts';

/**
 * What a page may weigh, its drawings and scripts left out, and what a week's pack with its sound and fonts, in bytes.
 * The limits are those of the project's plan.
 */
const MOST = { page: 80_000, pack: 3_000_000 } as const;

const { folder, packs } = await buildPacks();
const weights = new Map(
  packs.map(({ id, url, files }) => {
    const sizes = Array.from(files, (file) => statSync(fileURLToPath(new URL(file, url))).size);
    return [id, sizes.reduce((sum, size) => sum + size, 0)];
  }),
);
rmSync(folder, { recursive: true, force: true });

/** A page's text without its elements of some kinds. */
const leaveOut = (html: string, ...tags: readonly string[]) =>
  tags.reduce((rest, tag) => rest.replace(new RegExp(`<${tag}\\b.*?</${tag}>`, 'gs'), ''), html);

/** A style sheet as a reader of CSS writes what it has understood. */
const understand = (css: string) => generate(parse(css, { parseCustomProperty: true }));

/** All style sheets of the sources, in each make-up in which pages may have them. */
const SOURCES: ReadonlySet<string> = new Set(
  [
    ...Object.values(pageStyles),
    ...[true, false].flatMap((runs) =>
      [true, false].flatMap((scores) => [styleLesson({ runs, scores }), styleHandout({ runs, scores })]),
    ),
  ].map(understand),
);

/** The style sheet of a page without what it has of its own: its fonts before, its running line after. */
const readKitStyles = ({ html }: BuiltPage) =>
  (/<style>(.*?)<\/style>/s.exec(html)?.[1] ?? '')
    .replace(/^(?:@font-face\{.*?\}\n)+/, '')
    .replace(/@page \{ @bottom-left \{.*$/s, '');

for (const pack of packs) {
  describe(pack.id, () => {
    it('weighs less than 3 MB, with sound and fonts', () => {
      expect(weights.get(pack.id)).toBeGreaterThan(1_000_000);
      expect(weights.get(pack.id)).toBeLessThan(MOST.pack);
    });

    describe.each(pack.pages)('$path', (page) => {
      it('is 80 kB or less of HTML and CSS, drawings left out', () => {
        expect(Buffer.byteLength(leaveOut(page.html, 'svg', 'script'))).toBeLessThanOrEqual(MOST.page);
      });

      it('is shown before any script runs: one style sheet in its head, a script only after all there is to show', () => {
        expect(page.html.match(/<style|<link\b[^>]*stylesheet|@import/g)?.join()).toBe('<style');
        expect(page.html.indexOf('</style>')).toBeLessThan(page.html.indexOf('</head>'));
        const scripts = [...page.html.matchAll(/<script\b([^>]*)>/g)].filter(([, words = '']) => !/json/.test(words));
        for (const { 1: words, index } of scripts) {
          expect(words).toBe('');
          expect(leaveOut(page.html.slice(index), 'script')).toBe('</body></html>\n');
        }
        for (const rule of page.html.match(/@font-face\{[^}]*\}/g) ?? []) expect(rule).toContain('font-display:swap');
      });

      it('has the styles of the sources, without their comments and spaces', () => {
        const styles = readKitStyles(page);
        expect(SOURCES.has(understand(styles))).toBe(true);
        expect(styles).not.toMatch(/\/\*|\n {2}|: {2}/);
      });

      it('writes each part of its figures once', () => {
        const parts = (page.html.match(/<g(?: id="[^"]*")? class="figure-.*?<\/g>/g) ?? []).map((part) =>
          part.replace(/ id="[^"]*"/, ''),
        );
        expect(new Set(parts).size).toBe(parts.length);
      });
    });
  });
}

describe('lightenStyles', () => {
  it('leaves out comments and spaces, and nothing in strings', () => {
    const css = `/* One. */
q:lang(fr) > b,
a::after {
  quotes: "«\\202f" "; }  /* x */ \\" :  ";
  width: calc(100% - 2 * var(--gutter));
}

@media screen and (max-width: 46rem) {
  .a :is(.b, .c):hover { margin: 0 -1px; }
}
`;
    expect(lightenStyles(css)).toBe(
      'q:lang(fr)>b,a::after{quotes:"«\\202f" "; }  /* x */ \\" :  ";width:calc(100% - 2 * var(--gutter))}' +
        '@media screen and (max-width: 46rem){.a :is(.b,.c):hover{margin:0 -1px}}',
    );
  });

  it.each(Object.entries(pageStyles))('says the same as the source: %s', (_kind, css) => {
    expect(understand(lightenStyles(css)) === understand(css)).toBe(true);
  });
});
