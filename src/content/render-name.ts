import type { Element } from 'hast';
import { runsRightToLeft } from './text-direction.ts';

/**
 * A name of the calendar, tagged with the language of the names (BCP 47) so that a voice reads it rightly. A name that
 * runs from right to left says so, and keeps the words around it in their order.
 */
export function renderName(name: string, namesLanguage: string): Element {
  // By hand: a page has hundreds of names, and a helper that parses selectors costs more than all else here.
  return {
    type: 'element',
    tagName: 'span',
    properties: runsRightToLeft(name) ? { lang: namesLanguage, dir: 'rtl' } : { lang: namesLanguage },
    children: [{ type: 'text', value: name }],
  };
}
