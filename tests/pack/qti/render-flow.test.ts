import type { ElementContent } from 'hast';
import { h, s } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { createPictureStore } from '../../../src/pack/qti/picture-store.ts';
import { printXml } from '../../../src/pack/qti/print-xml.ts';
import { renderBlock, renderFlow } from '../../../src/pack/qti/render-flow.ts';
import { xmlElement } from '../../../src/pack/qti/xml-element.ts';

const FILES = new Map([['tide 1.png', new Uint8Array(3)]]);

function flow(...content: ElementContent[]): string {
  const inside = renderFlow(content, createPictureStore(FILES));
  return printXml(xmlElement('x', {}, inside)).replace(/^.*\n<x>|<\/x>\n$|^.*\n<x\/>\n$/g, '');
}

describe('content of an item', () => {
  it.each<[string, ElementContent, string]>([
    [
      'keeps what the schema knows',
      h('p', [h('em', 'a'), h('strong', 'b'), h('br')]),
      '<p><em>a</em><strong>b</strong><br/></p>',
    ],
    [
      'keeps languages and directions, and nothing that styles or tells',
      h('span', { lang: 'ar', dir: 'rtl', className: ['right'], id: 'i', dataRight: 'yes', title: 't' }, 'قمر'),
      '<span xml:lang="ar" lang="ar" dir="rtl">قمر</span>',
    ],
    [
      'keeps links to the web',
      h('a', { href: 'https://example.org/?a&b' }, 'x'),
      '<a href="https://example.org/?a&amp;b">x</a>',
    ],
    ['keeps the words of other links', h('a', { href: '../key.html' }, 'x'), 'x'],
    ['keeps the words of unknown elements', h('p', [h('mark', 'x'), h('del', 'y')]), '<p>xy</p>'],
    ['leaves out what is no text', h('p', [h('input', { type: 'checkbox' }), h('style', 'p{}'), 'x']), '<p>x</p>'],
    [
      'takes blocks out of lines',
      h('p', ['a', h('span', [h('div', 'b'), h('ul', [h('li', 'c')])])]),
      '<p>a<span> b   c  </span></p>',
    ],
    ['takes blocks out of lines, whatever lies between', h('h3', [h('mark', [h('p', 'b')])]), '<h3> b </h3>'],
    ['keeps blocks in an unknown block', h('section', [h('p', 'a')]), '<p>a</p>'],
    [
      'numbers lists that do not begin with one',
      h('ol', { start: 9 }, [h('li', 'a'), '\n', h('li', [h('p', 'b')])]),
      '<div>9. a</div><div>10. <p>b</p></div>',
    ],
    [
      'keeps the sides of cells',
      h('table', [h('tr', [h('th', { align: 'right', scope: 'col' }, 'a'), h('td', { colSpan: 2 }, 'b')])]),
      '<table><tr><th align="right" scope="col">a</th><td colspan="2">b</td></tr></table>',
    ],
    [
      'shows a picture file',
      h('img', { src: '../images/tide%201.png', alt: '<A> "tide"' }),
      '<img src="images/picture-1.png" alt="&lt;A&gt; &quot;tide&quot;"/>',
    ],
    [
      'shows a drawing with its label',
      s('svg', { width: 80, height: 40.4, ariaLabel: 'Lit at the left.', lang: 'fr' }, [s('circle')]),
      '<img src="images/picture-1.svg" alt="Lit at the left." xml:lang="fr" lang="fr" width="80" height="40"/>',
    ],
    [
      'shows a drawing with its title',
      s('svg', [s('title', { lang: 'fr' }, 'Lune'), s('circle')]),
      '<img src="images/picture-1.svg" alt="Lune" xml:lang="fr" lang="fr"/>',
    ],
    [
      'shows a drawing that is hidden from screen readers without words',
      s('svg', { ariaHidden: 'true' }, [s('circle')]),
      '<img src="images/picture-1.svg" alt=""/>',
    ],
    [
      'shows a picture that stands in a drawing as itself',
      s('svg', { width: 9, height: 9, ariaLabel: 'Wave.' }, [s('g', [s('image', { href: 'images/tide%201.png' })])]),
      '<img src="images/picture-1.png" alt="Wave." width="9" height="9"/>',
    ],
  ])('%s', (_, content, written) => {
    expect(flow(content)).toBe(written);
  });

  it('leaves out comments', () => {
    expect(flow({ type: 'comment', value: 'the answer' })).toBe('');
  });

  it('is a paragraph or a division where blocks are wanted', () => {
    const pictures = createPictureStore(FILES);
    const names = (content: ElementContent[]) =>
      renderBlock(content, pictures).map((each) => (typeof each === 'string' ? each : each.name));
    expect(names([{ type: 'text', value: 'a' }, h('em', 'b')])).toEqual(['p']);
    expect(names([h('p', 'a'), h('p', 'b')])).toEqual(['div']);
    expect(names([h('section', [h('p', 'a')])])).toEqual(['div']);
    expect(names([])).toEqual([]);
  });
});

describe('pictures of a package', () => {
  const moon = (words: string, r = 4) =>
    s('svg', { viewBox: '0 0 9 9', className: ['moon'], role: 'img', ariaLabel: words }, [
      s('title', words),
      s('circle', { className: ['moon-lit'], r, strokeWidth: 2, fillOpacity: 0.5 }),
    ]);

  it('are drawn without words, styles or anything of the page', () => {
    const store = createPictureStore(FILES);
    store.addDrawing(moon('Round Moon'));
    expect(store.list().map(({ content }) => content)).toEqual([
      '<?xml version="1.0" encoding="UTF-8"?>\n<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><circle r="4" stroke-width="2" fill-opacity="0.5"/></svg>\n',
    ]);
  });

  it('are there once, whatever is said of them', () => {
    const store = createPictureStore(FILES);
    const paths = [moon('a'), moon('b'), moon('c', 3)].map((each) => store.addDrawing(each).path);
    expect(paths).toEqual(['images/picture-1.svg', 'images/picture-1.svg', 'images/picture-2.svg']);
    expect(store.list().map(({ path }) => path)).toEqual(['images/picture-1.svg', 'images/picture-2.svg']);
  });

  it('need nothing from elsewhere on their page', () => {
    const store = createPictureStore(FILES);
    const whole = s('svg', [s('defs', [s('path', { id: 'sea' })]), s('use', { href: '#sea' })]);
    expect(store.addDrawing(whole).path).toBe('images/picture-1.svg');
    const part = s('svg', [s('use', { href: '#figure-3' })]);
    expect(() => store.addDrawing(part)).toThrow('A drawing of a question uses "figure-3", which is not part of it.');
  });
});
