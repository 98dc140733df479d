import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readMarkup } from '../../../src/pack/leaks/read-markup.ts';

const read = (source: string) => readMarkup(source, new Map());
const texts = (source: string) => read(source).runs.map(({ text }) => text);

describe('a file taken apart', () => {
  it('has its text in runs, over tags within a line', () => {
    expect(texts('<p>Ro<b>un</b>d</p><p>Moon</p>')).toEqual(['Round', 'Moon']);
    expect(read('<p>Ro<b>un</b>d</p><p>Moon</p>').parted.map(({ text }) => text)).toEqual(['Ro un d']);
    expect(read('<p>Round <b>Moon</b></p>').parted).toEqual([]);
    expect(texts('a<br>b<hr>c')).toEqual(['a', 'b', 'c']);
  });

  it('has attributes in each way of writing them, decoded, with their places', () => {
    const source = '<P Class=a b=\'c "d"\' e="f > g &eacute;&#x41;&#66;" h /><i>';
    const [element] = read(source).elements;
    expect(element?.tag.name).toBe('p');
    expect(element?.tag.attributes.map(({ name, value }) => `${name}=${value}`)).toEqual([
      'class=a',
      'b=c "d"',
      'e=f > g eAB',
      'h=',
    ]);
    expect(element?.tag.attributes.map(({ offset }) => source.slice(offset, offset + 1))).toEqual(['C', 'b', 'e', 'h']);
  });

  it('knows which element stands in which, and which is not shown', () => {
    const { elements, runs } = read(
      '<div hidden><p>a<br>b</div><template><i>c</i></template><p style="display:none">d</p><p>e</p>',
    );
    expect(elements.map(({ tag, parent }) => `${tag.name} ${parent}`)).toEqual([
      'div -1',
      'p 0',
      'br 1',
      'template -1',
      'i 3',
      'p -1',
      'p -1',
    ]);
    expect(runs.map(({ text, element }) => `${text} ${elements[element]?.hidden}`)).toEqual([
      'a true',
      'b true',
      'c true',
      'd true',
      'e false',
    ]);
  });

  it('closes what is closed in its own tag in a drawing alone', () => {
    expect(read('<svg><g/><g><path/></g></svg><p/>a').elements.map(({ parent }) => parent)).toEqual([-1, 0, 0, 2, -1]);
    expect(read('<svg><g/><g><path/></g></svg><p/>a').runs.map(({ element }) => element)).toEqual([4]);
  });

  it('has comments, scripts, styles, declarations and plain data apart', () => {
    const source =
      '<!doctype html><!-- a <b> --><script>if (a < b) "</p>"</script><style>p > a {}</style><?x y?><![CDATA[<i>]]>';
    expect(read(source).asides.map(({ kind, text }) => `${kind}:${text}`)).toEqual([
      'instruction:doctype html',
      'comment: a <b> ',
      'script:if (a < b) "</p>"',
      'style:p > a {}',
      'instruction:x y?',
    ]);
    expect(texts(source)).toEqual(['<i>']);
  });

  it('leaves nothing unread that is not finished', () => {
    expect(texts('a < b')).toEqual(['a < b']);
    expect(texts('a <p title="b')).toEqual(['a <p title="b']);
    expect(read('a <!-- b').asides.map(({ text }) => text)).toEqual([' b']);
    expect(read('<script>a').asides.map(({ text }) => text)).toEqual(['a']);
    expect(texts('a</p')).toEqual(['a']);
  });

  it('passes over attributes that hold numbers and colours alone, and over no words', () => {
    expect(read('<path d="M1 2h3zM-4.5 6" fill="#fff" stroke-width="2"/>').elements[0]?.tag.attributes).toEqual([]);
    expect(read('<path d="M1 2 round moon"/>').elements[0]?.tag.attributes).toHaveLength(1);
    expect(read('<path d="M1 2" fill="moon"/>').elements[0]?.tag.attributes).toHaveLength(2);
    expect(read('<path d="M1 2" x-d="1"/>').elements[0]?.tag.attributes).toHaveLength(2);
  });

  it('is read to its end, whatever it is', () => {
    const piece = fc.constantFrom(
      '<',
      '>',
      '/',
      '!',
      '--',
      '"',
      "'",
      '=',
      ' ',
      'a',
      'p',
      '<p',
      '</p>',
      '<!--',
      '-->',
      '<svg>',
      '<script>',
      '&lt;',
      '<![CDATA[',
      ']]>',
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 40 }), (pieces) => {
        const source = pieces.join('');
        const { elements, runs, asides } = read(source);
        for (const { at } of [...elements, ...runs, ...asides]) expect(at).toBeLessThanOrEqual(source.length);
        for (const [index, { parent }] of elements.entries()) expect(parent).toBeLessThan(index);
      }),
    );
  });

  it('takes time in proportion to its length', () => {
    // Each of these would take hours if every tag were tried to the end of the file.
    for (const piece of ['<a b="c" ', '<a', '<!--', '<![CDATA[', "<a b='", '<script>', '&', '<p ']) {
      expect(() => read(piece.repeat(20_000))).not.toThrow();
    }
  });
});
