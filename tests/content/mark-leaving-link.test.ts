import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { createLabels } from '../../src/content/labels.ts';
import { markLeavingLink } from '../../src/content/mark-leaving-link.ts';
import { stringifyHast } from '../../src/lesson/stringify-hast.ts';

const labels = createLabels('en');
const mark = (href: string, ...words: Parameters<typeof h>[2][]) =>
  stringifyHast({ type: 'root', children: [markLeavingLink(h('a', { href }, ...words), labels)] });

describe('markLeavingLink', () => {
  it.each(['https://example.org/', 'http://example.org/', 'HTTPS://example.org/'])(
    'says in words that a link to %s leaves',
    (href) => {
      expect(mark(href, 'the ', h('em', 'map'))).toBe(
        `<a href="${href}" class="leaves">the <em>map</em><span class="leaving-words" lang="en"> (leaves this pack)</span></a>`,
      );
    },
  );

  it.each(['mailto:office@example.org', 'MAILTO:office@example.org'])('says that %s writes an e-mail', (href) => {
    expect(mark(href, 'the office')).toContain('(writes an e-mail)');
  });

  it.each([
    ['https://example.org/', 'https://example.org/', true],
    ['https://example.org/', ' https://example.org/ ', true],
    ['mailto:office@example.org', 'office@example.org', true],
    ['https://example.org/', 'example.org', false],
  ])('tells whether the words of a link to %s, %j, are its address already', (href, words, shows) => {
    expect(mark(href, words).includes('class="leaves shows-address"')).toBe(shows);
  });

  it.each(['key.html', '5-friday.html#step-1', '#top', '', 'a:b.html'])('leaves a link to %j as it is', (href) => {
    const link = h('a', { href }, 'x');
    expect(markLeavingLink(link, labels)).toBe(link);
  });
});
