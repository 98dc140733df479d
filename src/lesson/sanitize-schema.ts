import type { Options } from 'rehype-sanitize';

/** The tag that keeps the place of trusted content while the author's own tree is cleaned. */
export const SLOT_TAG = 'lesson-slot';

/**
 * What may stay of an author's Markdown: the elements Markdown itself has, with the few attributes it needs.
 * No styles, handlers, ids, `data-*` or classes beyond the language of a code block; links only to the web, to mail
 * and within the pack; pictures only from the pack, which works without a network.
 * Names of elements and attributes are those of the HTML standard (WHATWG).
 */
export const LESSON_SCHEMA: NonNullable<Options> = {
  tagNames: [
    ...['a', 'blockquote', 'br', 'code', 'em', 'h1', 'h2', 'h3', 'h4', 'h5', 'h6', 'hr', 'img', 'li', 'ol', 'p'],
    ...['pre', 'strong', 'table', 'tbody', 'td', 'th', 'thead', 'tr', 'ul', SLOT_TAG],
  ],
  attributes: {
    a: ['href', 'title'],
    code: [['className', /^language-./]],
    // Set by our own task lists: a class written by hand never gets here.
    li: [['className', 'task']],
    img: ['alt', 'src', 'title'],
    ol: ['start'],
    td: ['align'],
    th: ['align'],
    [SLOT_TAG]: ['value'],
  },
  ancestors: { tbody: ['table'], td: ['table'], th: ['table'], thead: ['table'], tr: ['table'] },
  // The cleaning compares letter by letter; schemes may be written in capitals (RFC 3986, section 3.1).
  protocols: { href: ['http', 'https', 'mailto', 'HTTP', 'HTTPS', 'MAILTO'] },
  required: {},
  strip: ['script'],
  clobber: [],
  allowComments: false,
  allowDoctypes: false,
};
