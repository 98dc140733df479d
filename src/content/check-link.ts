/**
 * A code of version 10 with error correction M holds so many bytes, and is still read from a wall at 25 mm: ISO/IEC
 * 18004, table 7, from memory; the tests ask an encoder.
 */
export const LONGEST_LINK_BYTES = 213;

/** What is wrong with an address that is shown in words and as a code to scan. */
export interface LinkFault {
  readonly found: string;
  readonly expected: string;
  readonly remedy: string;
}

/**
 * Checks an address. Only `https`: what it leads to is scanned from a wall by children's telephones, and nobody on the
 * way may put something else in its place. Only ASCII: readers of codes differ over everything else.
 * @returns Nothing when it is good.
 */
export function findLinkFault(link: string): LinkFault | undefined {
  const url = /^https:\/\/[^/\\]/i.test(link) ? parseUrl(link) : undefined;
  if (url === undefined || url.protocol !== 'https:') {
    const remedy = /^http:/i.test(link) ? 'see whether it opens with `https://` too' : 'copy it from the browser';
    return { found: link, expected: 'an address that begins with `https://`', remedy };
  }
  if (url.username !== '' || url.password !== '') {
    return { found: link, expected: 'an address without a name or password before `@`', remedy: 'take these out' };
  }
  if (!/^[\x21-\x7E]+$/.test(link)) {
    const remedy = `write \`${url.href}\``;
    return { found: link, expected: 'an address without spaces and letters with marks', remedy };
  }
  if (link.length <= LONGEST_LINK_BYTES) return undefined;
  return {
    found: `${link.length} characters`,
    expected: `at most ${LONGEST_LINK_BYTES}, so that a code of it can be scanned`,
    remedy: 'use a shorter address',
  };
}

function parseUrl(link: string): URL | undefined {
  try {
    return new URL(link);
  } catch {
    return undefined;
  }
}
