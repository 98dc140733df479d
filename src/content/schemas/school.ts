import * as z from 'zod/mini';
import { findTimeZone, isClockTime } from '../civil-date.ts';
import { records } from './calendar.ts';
import { clockTime, date, keyed, language, list, number, text, textWhere, yesOrNo } from './parts.ts';

const timeZone = textWhere(
  (name) => findTimeZone(name) !== undefined,
  'a time zone of the IANA list, such as `Pacific/Auckland` or `Europe/Paris`',
);

/** A school file as written. */
export const schoolSchema = keyed({
  name: text(),
  language: z.exactOptional(language()),
  note: z.exactOptional(text()),
  home: z.exactOptional(yesOrNo()),
  latitude: number(-90, 90, 'degrees, south negative'),
  longitude: number(-180, 180, 'degrees, west negative'),
  elevation: number(-500, 9000, 'metres above the sea'),
  'time-zone': timeZone,
  calendar: text('the name of a calendar file'),
  gestures: text('the name of a gestures file'),
  'class-begins': clockTime(),
  'class-ends': z.exactOptional(clockTime()),
  bedtime: z.exactOptional(
    textWhere((time) => isClockTime(time) && time >= '16:00', 'a time of day from `16:00` to `23:59`, such as `20:30`'),
  ),
  terms: z.exactOptional(list(keyed({ name: text('a name'), from: date(), to: date() }), 'terms', 0)),
  groups: list(text('the name of a group'), 'groups'),
  ...records,
});

/** A school file as written, after the schema. */
export type WrittenSchoolFile = z.infer<typeof schoolSchema>;
