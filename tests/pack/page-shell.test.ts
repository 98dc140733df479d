import { describe, expect, it } from 'vitest';
import { stringifyHast } from '../../src/lesson/stringify-hast.ts';
import { type PageParts, renderPageShell } from '../../src/pack/page-shell.ts';
import { findAll, readText, sha256 } from './render-pages.ts';

const PARTS: PageParts = {
  labels: { language: 'en-NZ', direction: 'ltr' },
  title: 'A page',
  kind: 'some-page',
  styles: 'p { color: red }',
  skipLabel: 'Skip',
  header: [],
  main: [],
  footer: [],
};

describe('renderPageShell', () => {
  it('begins with the policy, which names the digests of style and script and nothing else', () => {
    const page = renderPageShell({ ...PARTS, script: 'void 0;' }, (text) => `<${text}>`);
    const [head] = findAll(page, 'head');
    const [policy] = findAll(page, 'meta');
    expect(head?.children[0]).toBe(policy);
    expect(policy?.properties).toMatchObject({
      httpEquiv: ['Content-Security-Policy'],
      content: expect.stringMatching(
        /^default-src 'none'; script-src 'sha256-<void 0;>'; style-src 'sha256-<(?:@font-face\{[^}]*\}\n)*p \{ color: red \}>'; img-src 'self' data:; font-src 'self'; base-uri 'none'; form-action 'none'$/,
      ),
    });
  });

  it('allows no script on a page without one', () => {
    const page = renderPageShell(PARTS, sha256);
    expect(JSON.stringify(findAll(page, 'meta'))).not.toContain('script-src');
    expect(findAll(page, 'script')).toEqual([]);
  });

  it('takes the digest of the style as it is written, running line included', () => {
    const html = stringifyHast(renderPageShell({ ...PARTS, runningLine: 'Lesson "1" </style> \\ & more' }, sha256));
    const style = /<style>([\s\S]*?)<\/style>/.exec(html)?.[1] ?? '';
    expect(html.replaceAll('&#x27;', "'")).toContain(`style-src 'sha256-${sha256(style)}'`);
    expect(style).toContain('content: "Lesson \\22 1\\22  \\3c /style\\3e  \\5c  \\26  more"');
    expect(html.match(/<\/style>/g)).toHaveLength(1);
  });

  it('has a language, a title, a skip link and the three landmarks', () => {
    const page = renderPageShell(PARTS, sha256);
    expect(findAll(page, 'html')[0]?.properties['lang']).toBe('en-NZ');
    expect(readText(page)).toContain('A page');
    expect(findAll(page, 'a')[0]?.properties['href']).toBe('#main');
    expect(['header', 'main', 'footer'].map((name) => findAll(page, name).length)).toEqual([1, 1, 1]);
    expect(findAll(page, 'main')[0]?.properties['id']).toBe('main');
  });

  it('runs as its words do, and so does the line at the foot of its sheets', () => {
    const running = { ...PARTS, runningLine: 'Line' };
    const leftToRight = stringifyHast(renderPageShell(running, sha256));
    expect(leftToRight).toContain('<html lang="en-NZ">');
    expect(leftToRight).toContain('@bottom-left { content: "Line"');
    const labels = { language: 'und-Hebr', direction: 'rtl' } as const;
    const rightToLeft = stringifyHast(renderPageShell({ ...running, labels }, sha256));
    expect(rightToLeft).toContain('<html lang="und-Hebr" dir="rtl">');
    expect(rightToLeft).toContain('@bottom-right { content: "Line"');
    expect(rightToLeft).toContain('@bottom-left { content: counter(page)');
  });
});
