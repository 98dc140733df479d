import type { LabelEntry } from '../label-entry.ts';

/** Words about what leads out of a pack, and those by which other programs know it. */
export const OUTSIDE_LABELS = {
  'link-leaves': { english: '(leaves this pack)', about: 'After the words of a link to the web, as part of it' },
  'link-writes-mail': {
    english: '(writes an e-mail)',
    about: 'After the words of a link to a mail address, as part of it',
  },
  'nights-for-calendar': {
    english: 'The nights of this week for the calendar on your computer or phone',
    about: 'A link to a file of events',
  },
  'pack-described': {
    english: 'Lessons on {calendar}, for {audience}: what to do each day, what to print, and the answers.',
    about: 'What a pack is, for catalogues; {audience} is such as "Years 3-4"',
  },
} as const satisfies Readonly<Record<string, LabelEntry>>;
