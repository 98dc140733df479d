import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import { HtmlValidate } from 'html-validate/node';
import { describe, expect, it } from 'vitest';
import { createLessonParser } from '../../src/lesson/parse-lesson.ts';
import { type RenderOptions, renderMarkdown } from '../../src/lesson/render-markdown.ts';
import { stringifyHast } from '../../src/lesson/stringify-hast.ts';
import { INLINE_NAMES } from './known-directives.ts';

const parse = createLessonParser(INLINE_NAMES);
const PLAIN: RenderOptions = { slot: () => [], tickTaskLists: false };
const TEACHER: RenderOptions = { slot: () => [], tickTaskLists: { label: 'right' } };

function render(text: string, options: Partial<RenderOptions> = {}): string {
  return stringifyHast(renderMarkdown(parse(text).tree.children, { ...PLAIN, ...options }));
}

describe('directives in renderMarkdown', () => {
  const slot: RenderOptions['slot'] = ({ name, type }, children) => [
    h(type === 'textDirective' ? 'b' : 'section', { id: name, style: 'x', 'data-form': type }, children),
  ];

  it('give way to what the caller puts in, which is not cleaned', () => {
    expect(render('On :night{on=friday} there is\n\n::tonight\n', { slot })).toBe(
      '<p>On <b id="night" style="x" data-form="textDirective"></b> there is</p>\n' +
        '<section id="tonight" style="x" data-form="leafDirective"></section>',
    );
  });

  it('hold the text between the fences, without the label, inner ones filled in first', () => {
    const seen: string[] = [];
    const html = render('::::step[Warm *up*]\n- one\n\n:::teacher\nSay :night{}.\n:::\n::::\n', {
      slot: (node, children) => {
        seen.push(node.name);
        return slot(node, children);
      },
    });
    expect(seen).toEqual(['night', 'teacher', 'step']);
    expect(html).not.toContain('Warm');
    expect(html).toContain('<p>Say <b id="night"');
  });

  it('may leave nothing, or several nodes', () => {
    expect(render('a :night{} b', { slot: () => [] })).toBe('<p>a  b</p>');
    const two: ElementContent[] = [h('i', 'x'), { type: 'text', value: 'y' }];
    expect(render('a :night{} b', { slot: () => two })).toBe('<p>a <i>x</i>y b</p>');
  });

  it('stand in tables, headings, quotations and lists alike', () => {
    const html = render('# A :night{}\n\n| :month{} |\n|---|\n| x |\n\n> ::tonight\n\n- ::tonight\n', {
      slot: ({ name }) => [{ type: 'text', value: `<${name}>` }],
    });
    expect(html).toContain('<h1>A &#x3C;night></h1>');
    expect(html).toContain('<th>&#x3C;month></th>');
    expect(html).toMatch(/<blockquote>\s*&#x3C;tonight>\s*<\/blockquote>/);
    expect(html).toMatch(/<li>\s*&#x3C;tonight>\s*<\/li>/);
  });

  it('never spread attributes onto elements', () => {
    expect(render('::tonight{onclick=x style=y .z #w}', { slot: () => [h('p')] })).toBe('<p></p>');
  });
});

describe('cleaning in renderMarkdown', () => {
  it('leaves raw HTML out and keeps the text around it', () => {
    const html = render(
      'A <b onclick="x">bold</b> word <lesson-slot value="0">.\n\n<script>alert(1)</script>\n\n<div>x</div>',
    );
    expect(html).toBe('<p>A bold word .</p>');
  });

  const addresses: readonly (readonly [string, string])[] = [
    ['[a](javascript:alert(1))', '<p><a>a</a></p>'],
    ['[a](JaVaScRiPt:alert(1))', '<p><a>a</a></p>'],
    ['[a](data:text/html,x)', '<p><a>a</a></p>'],
    ['[a](vbscript:x)', '<p><a>a</a></p>'],
    ['[a](HTTPS://x.org:80/)', '<p><a href="HTTPS://x.org:80/">a</a></p>'],
    ['[a](mailto:a@b.org)', '<p><a href="mailto:a@b.org">a</a></p>'],
    ['[a](friday.html#b "t")', '<p><a href="friday.html#b" title="t">a</a></p>'],
    ['![a](moon.svg)', '<p><img src="moon.svg" alt="a"></p>'],
  ];
  for (const [markdown, html] of addresses) {
    it(`turns ${markdown} into ${html}`, () => expect(render(markdown)).toBe(html));
  }

  it('puts the words of a picture in the place of one that is not in the pack', () => {
    expect(
      render('![the *tide*](https://x.org/a.png) ![b](//x.org/a.png) ![c](data:image/png;base64,x) ![d](DATA:x)'),
    ).toBe('<p>the tide b c d</p>');
    expect(render('![the tide][t]\n\n[t]: https://x.org/a.png')).toBe('<p>the tide</p>');
    expect(render('![the tide][t]\n\n[t]: a.png')).toBe('<p><img src="a.png" alt="the tide"></p>');
  });

  it('says alignment of cells with a class', () => {
    const html = render('| a | b | c | d |\n|:--|:-:|--:|---|\n| 1 | 2 | 3 | 4 |\n');
    expect(html.match(/<t[hd](?: [^>]*)?>/g)).toEqual([
      ...['<th class="align-left">', '<th class="align-center">', '<th class="align-right">', '<th>'],
      ...['<td class="align-left">', '<td class="align-center">', '<td class="align-right">', '<td>'],
    ]);
  });

  it('keeps the language of code and the start of a list', () => {
    expect(render('```js\na\n```\n\n3. x\n')).toBe(
      '<pre><code class="language-js">a\n</code></pre>\n<ol start="3">\n<li>x</li>\n</ol>',
    );
  });

  it('makes HTML that holds to the standard', async () => {
    const text =
      '# A\n\n## B\n\n| a | b |\n|:--|--:|\n| x | :night{} |\n\n1. c\n   - [x] d\n   - [ ] e\n\n   ::answer[d]\n\n> f\n\n```js\ng\n```\n\n![h](i.png)\n\n---\n\n- [x] j\n\n- [ ] k\n';
    const page = h('html', { lang: 'en' }, [
      h('head', [h('title', 'Page')]),
      h('body', [h('main', renderMarkdown(parse(text).tree.children, TEACHER))]),
    ]);
    const html = stringifyHast([{ type: 'doctype' }, page]);
    const judge = new HtmlValidate({ extends: ['html-validate:standard'], rules: { 'no-trailing-whitespace': 'off' } });
    const report = await judge.validateString(html);
    expect(
      report.results.flatMap(({ messages }) => messages.map(({ ruleId, message }) => `${ruleId} ${message}`)),
    ).toEqual([]);
  });
});

describe('task lists in renderMarkdown', () => {
  const text =
    '- [x] the **Sun**\n- [ ] the sea\n- plain\n\nText\n\n1. q\n\n   - [X] a\n\n     b\n\n   - [ ] :night{}\n';

  it('are drawn as empty boxes unless ticks are asked for', () => {
    expect(render('- [x] a\n- [ ] b\n')).toBe(
      '<ul>\n<li class="task"><span class="box" aria-hidden="true"></span> a</li>\n' +
        '<li class="task"><span class="box" aria-hidden="true"></span> b</li>\n</ul>',
    );
  });

  it('show ticks with a word for them when asked to', () => {
    expect(render('- [x] a\n- [ ] b\n', TEACHER)).toBe(
      '<ul>\n<li class="task"><span class="box ticked" role="img" aria-label="right"></span> a</li>\n' +
        '<li class="task"><span class="box" aria-hidden="true"></span> b</li>\n</ul>',
    );
  });

  it('put the box before the text of loose items too', () => {
    expect(render('- [x] a\n\n  b\n')).toBe(
      '<ul>\n<li class="task">\n<p><span class="box" aria-hidden="true"></span> a</p>\n<p>b</p>\n</li>\n</ul>',
    );
  });

  it('come out in the same bytes whatever is ticked', () => {
    const swapped = text.replace(/\[([ xX])\]/g, (_, mark: string) => (mark === ' ' ? '[x]' : '[ ]'));
    const unticked = text.replace(/\[[xX]\]/g, '[ ]');
    expect(render(swapped)).toBe(render(text));
    expect(render(unticked)).toBe(render(text));
    expect(JSON.stringify(renderMarkdown(parse(swapped).tree.children, PLAIN))).toBe(
      JSON.stringify(renderMarkdown(parse(text).tree.children, PLAIN)),
    );
    expect(render(swapped, TEACHER)).not.toBe(render(text, TEACHER));
  });

  it('are unticked between fences too', () => {
    const slot: RenderOptions['slot'] = (_, children) => children;
    expect(render(':::handout[A]\n- [x] a\n:::\n', { slot })).toBe(render(':::handout[A]\n- [ ] a\n:::\n', { slot }));
  });
});

describe('renderMarkdown', () => {
  it('moves headings down, to level 6 at most', () => {
    expect(render('# A\n\n### B\n\n###### C\n', { headingShift: 2 })).toBe('<h3>A</h3>\n<h5>B</h5>\n<h6>C</h6>');
    expect(render('# A')).toBe('<h1>A</h1>');
  });

  it('finds definitions that stand outside the part it renders; the first of equal ones counts', () => {
    const { tree, definitions } = parse('[a]: /first\n\nSee [a].\n\n[a]: /second\n');
    const part = tree.children.filter(({ type }) => type === 'paragraph');
    expect(stringifyHast(renderMarkdown(part, { ...PLAIN, definitions }))).toBe('<p>See <a href="/first">a</a>.</p>');
  });

  it('changes nothing in the tree it is given', () => {
    const { tree } = parse(':::step[A]\n- [x] a\n\n# B\n:::\n\n| a |\n|:-:|\n\n![a](https://x.org/b.png)\n');
    const before = JSON.stringify(tree);
    renderMarkdown(tree.children, { ...TEACHER, headingShift: 1 });
    expect(JSON.stringify(tree)).toBe(before);
  });

  it('does the same twice, and one call inside another', () => {
    const { tree } = parse('a :night{} b :month{} c');
    const inner = parse('x :night{} y').tree.children;
    const slot: RenderOptions['slot'] = ({ name }) =>
      name === 'night' ? renderMarkdown(inner, { ...PLAIN, slot: () => [h('i')] }) : [h('b')];
    const first = stringifyHast(renderMarkdown(tree.children, { ...PLAIN, slot }));
    expect(first).toBe('<p>a <p>x <i></i> y</p> b <b></b> c</p>');
    expect(stringifyHast(renderMarkdown(tree.children, { ...PLAIN, slot }))).toBe(first);
  });

  it('leaves front matter out', () => {
    expect(render('---\ntitle: a\n---\n\nText')).toBe('<p>Text</p>');
  });
});

describe('stringifyHast', () => {
  it('writes every tag and quotes every value', () => {
    expect(stringifyHast([h('p', { title: 'a"b' }, ['<', h('br'), '&']), h('ul', h('li', 'x'))])).toBe(
      '<p title="a&#x22;b">&#x3C;<br>&#x26;</p><ul><li>x</li></ul>',
    );
  });

  it('takes a whole document', () => {
    expect(stringifyHast(h(null, [{ type: 'doctype' }, h('html', [h('head'), h('body')])]))).toBe(
      '<!doctype html><html><head></head><body></body></html>',
    );
  });
});
