import { encode } from 'uqr';
import { describe, expect, it } from 'vitest';
import { findLinkFault, LONGEST_LINK_BYTES } from '../../src/content/check-link.ts';

describe('findLinkFault', () => {
  it.each(['https://example.org', 'HTTPS://example.org:8443/a/b?c=d&e=%C3%A9#t=3,4', 'https://[2001:db8::1]/a'])(
    'lets %s through',
    (link) => expect(findLinkFault(link)).toBeUndefined(),
  );

  it.each([
    ['http://example.org/a', 'see whether it opens with `https://` too'],
    ['example.org', 'copy it from the browser'],
    ['https:/example.org', 'copy it from the browser'],
    ['https://', 'copy it from the browser'],
    ['https:///a', 'copy it from the browser'],
    ['javascript:alert(1)//https://', 'copy it from the browser'],
    ['https://exa mple.org', 'copy it from the browser'],
    ['https://me@example.org/', 'take these out'],
    ['https://example.org/\u00e9toile', 'write `https://example.org/%C3%A9toile`'],
    ['https://\u00e9toile.example/', 'write `https://xn--toile-9ra.example/`'],
    ['https://example.org/a b', 'write `https://example.org/a%20b`'],
  ])('stops %s', (link, remedy) => expect(findLinkFault(link)?.remedy).toBe(remedy));

  it('limits the length to what a code of version 10 holds at level M', () => {
    const begin = 'https://example.org/';
    const most = `${begin}${'a'.repeat(LONGEST_LINK_BYTES - begin.length)}`;
    expect(findLinkFault(most)).toBeUndefined();
    expect(findLinkFault(`${most}a`)).toMatchObject({ found: '214 characters', remedy: 'use a shorter address' });
    expect(encode(most, { ecc: 'M' }).version).toBe(10);
    expect(encode(`${most}a`, { ecc: 'M' }).version).toBe(11);
  });
});
