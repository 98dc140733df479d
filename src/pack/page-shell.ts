import type { ElementContent, Properties, Root } from 'hast';
import { h } from 'hastscript';
import type { Labels } from '../content/labels.ts';
import type { TextDirection } from '../content/text-direction.ts';
import { partStore } from '../drawing/shared-elements.ts';
import { listFontFiles, renderFontFaces } from './fonts/font-faces.ts';

/** Base64 of the SHA-256 digest of a text's UTF-8 bytes. Handed in, so that the core needs no cryptography of its own. */
export type Digest = (text: string) => string;

/** What a page puts into the shell that all pages share. */
export interface PageParts {
  /** The page's own words: their language (BCP 47 tag), and which way they run. */
  readonly labels: Pick<Labels, 'language' | 'direction'>;
  /** For the title bar and the list of open pages; unique within the pack. */
  readonly title: string;
  /** Kind of page, as a class of the body. */
  readonly kind: string;
  /** The whole style sheet. */
  readonly styles: string;
  /** A small script that the page also works without. */
  readonly script?: string;
  /** What the page is, as JSON-LD for other programs; no `<` in it. A data block is never run, so no policy names it. */
  readonly data?: string;
  /** True when the page plays sound files of the pack. */
  readonly playsSound?: boolean;
  /** Words of the link that leads past the header. */
  readonly skipLabel: string;
  /** Printed at the foot of each sheet where the browser can; never the only place of a warning. */
  readonly runningLine?: string;
  readonly header: readonly ElementContent[];
  readonly main: readonly ElementContent[];
  readonly footer: readonly ElementContent[];
}

/**
 * A whole HTML document. Its content policy allows this one style sheet, this one script if there is one,
 * pictures and fonts of the pack, and its sounds where the page plays any; nothing from anywhere else.
 */
export function renderPageShell(page: PageParts, digest: Digest): Root {
  const content = [...page.header, ...page.main, ...page.footer];
  const fonts = renderFontFaces(listFontFiles(content, page.skipLabel + (page.runningLine ?? '')));
  const styles =
    fonts +
    page.styles +
    (page.runningLine === undefined ? '' : renderRunningLine(page.runningLine, page.labels.direction));
  const script = page.script === undefined ? [] : [h('script', page.script)];
  return h(null, [
    { type: 'doctype' },
    h('html', renderLanguage(page), [
      h('head', [
        h('meta', { httpEquiv: 'Content-Security-Policy', content: renderPolicy(page, styles, digest) }),
        h('meta', { charSet: 'utf-8' }),
        h('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
        h('title', page.title),
        ...(page.data === undefined ? [] : [h('script', { type: 'application/ld+json' }, page.data)]),
        h('style', styles),
      ]),
      h('body', { className: [page.kind] }, [
        h('a', { className: ['skip-link'], href: '#main' }, page.skipLabel),
        h('header', { className: ['page-head'] }, [...page.header]),
        h('main', { id: 'main', tabIndex: -1 }, [...page.main]),
        h('footer', { className: ['page-foot'] }, [...page.footer, partStore]),
        ...script,
      ]),
    ]),
  ]);
}

/** Pages that run from left to right need not say so. */
function renderLanguage({ labels: { language, direction } }: PageParts): Properties {
  return direction === 'rtl' ? { lang: language, dir: direction } : { lang: language };
}

/** The policy's words. `style-src` and `script-src` name digests, so that no other style or script can run. */
function renderPolicy({ script, playsSound }: PageParts, styles: string, digest: Digest): string {
  const scripts = script === undefined ? [] : [`script-src 'sha256-${digest(script)}'`];
  return [
    "default-src 'none'",
    ...scripts,
    `style-src 'sha256-${digest(styles)}'`,
    "img-src 'self' data:",
    "font-src 'self'",
    ...(playsSound === true ? ["media-src 'self'"] : []),
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}

/** Margin boxes with the page's running line and the sheet's number. */
function renderRunningLine(text: string, direction: TextDirection): string {
  const [start, end] = direction === 'rtl' ? ['right', 'left'] : ['left', 'right'];
  const box = 'font: 9pt/1.2 var(--font, sans-serif); color: #333;';
  return `@page { @bottom-${start} { content: ${quoteCss(text)}; ${box} } @bottom-${end} { content: counter(page) " / " counter(pages); ${box} } }\n`;
}

/** A text as a CSS string; all that could end the string, or the style element, is written as an escape. */
function quoteCss(text: string): string {
  const toEscape = (letter: string) => `\\${(letter.codePointAt(0) ?? 0).toString(16)} `;
  return `"${text.replace(/["\\<>&\n\r\f\0]/g, toEscape)}"`;
}
