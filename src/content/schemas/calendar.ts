import * as z from 'zod/mini';
import { isMonthDay } from '../civil-date.ts';
import { choice, date, keyed, language, list, number, spoken, text, textWhere, wholeNumber, yesOrNo } from './parts.ts';
import { recordingSchema } from './recording.ts';

/** The four principal phases as files name them. */
export const PHASES = ['new-moon', 'first-quarter', 'full-moon', 'last-quarter'] as const;

/** What was seen, and months as announced: in calendar and school files alike. */
export const records = {
  observations: z.exactOptional(
    list(
      keyed({
        date: date(),
        night: text('the name of a night'),
        by: z.exactOptional(text()),
        place: z.exactOptional(text()),
      }),
      'observations',
      0,
    ),
  ),
  'announced-months': z.exactOptional(list(date(), 'first dates of months', 0)),
};

// `..` joins the first and the last name of a stretch of nights in lessons.
const nightName = textWhere(
  (name) => name !== '' && !/\.\.|[{}"\p{Cc}\p{Cs}]/u.test(name),
  'a name without `..`, braces, double quotes or control characters',
);

const night = keyed({
  name: nightName,
  ...spoken,
  gesture: z.exactOptional(text('the key of a gesture')),
  anchor: z.exactOptional(choice(PHASES)),
  flexible: z.exactOptional(yesOrNo()),
  recording: z.exactOptional(recordingSchema),
});

const monthDay = textWhere(isMonthDay, 'a day that every year has, written `MM-DD`, such as `06-18`');

/** A calendar file as written. Exactly one of the markers of `on-or-after` must be there: checked apart. */
export const calendarSchema = keyed({
  title: text(),
  language: language(),
  'explained-in': z.exactOptional(language()),
  keeper: text('the name of whose knowledge this is'),
  sharing: choice(['open', 'school']),
  note: z.exactOptional(text()),
  'day-begins': choice(['sunset', 'midnight', 'sunrise']),
  'month-begins': keyed({
    at: choice(['conjunction', 'first-crescent', 'full-moon']),
    offset: z.exactOptional(wholeNumber(-3, 3)),
    visibility: z.exactOptional(choice(['A', 'B', 'C', 'D'])),
  }),
  groups: list(keyed({ name: text('a name'), ...spoken, nights: list(night, 'nights') }), 'groups'),
  months: list(keyed({ name: text('a name'), ...spoken }), 'months'),
  'year-begins': keyed({
    phase: choice(PHASES),
    'on-or-after': keyed({
      date: z.exactOptional(monthDay),
      solstice: z.exactOptional(choice(['june', 'december'])),
      equinox: z.exactOptional(choice(['march', 'september'])),
      rising: z.exactOptional(text('the name of a star')),
      'right-ascension': z.exactOptional(number(0, 24, 'hours')),
      declination: z.exactOptional(number(-90, 90, 'degrees, south negative')),
      'star-altitude': z.exactOptional(number(-2, 45, 'degrees')),
      'sun-altitude': z.exactOptional(number(-30, 0, 'degrees')),
    }),
  }),
  'thirteenth-month': z.exactOptional(keyed({ after: wholeNumber(1, 12), name: text('a name'), ...spoken })),
  sentence: text('a sentence with `{night}` in it'),
  ...records,
});

/** A calendar file as written, after the schema. */
export type WrittenCalendar = z.infer<typeof calendarSchema>;
