import type { Element } from 'hast';

/** A name of the calendar, tagged with the language of the names (BCP 47) so that a voice reads it rightly. */
export function renderName(name: string, namesLanguage: string): Element {
  // By hand: a page has hundreds of names, and a helper that parses selectors costs more than all else here.
  return {
    type: 'element',
    tagName: 'span',
    properties: { lang: namesLanguage },
    children: [{ type: 'text', value: name }],
  };
}
