import * as z from 'zod/mini';
import { FIRST_DATE, isClockTime, isCoveredDate, LAST_DATE, WEEK_DAYS } from '../civil-date.ts';
import { describeChoice } from '../wording.ts';

// Compiling checks on the fly costs more than it saves on a few small files, and pages may forbid it.
z.config({ jitless: true });

/*
 * Every schema here carries, as its error, the words for what is expected ("text", "a whole number from 1 to 12");
 * check-value.ts builds the author's message round them.
 */

/** Outer spaces go and every run of spaces and line ends becomes one space; a non-breaking space stays. */
export function cleanText(text: string): string {
  return text.replace(/[ \t\r\n]+/g, ' ').replace(/^ | $/g, '');
}

function isReadable(text: string): boolean {
  return text !== '' && !/[\p{Cc}\p{Cs}\u2028\u2029]/u.test(text);
}

/** One line of text; not empty, no control characters. */
export function text(expected = 'text') {
  return z.string({ error: expected }).check(z.overwrite(cleanText), z.refine(isReadable, { error: expected }));
}

/** Text that passes a test of its own. */
export function textWhere(passes: (text: string) => boolean, expected: string) {
  return z.string({ error: expected }).check(z.overwrite(cleanText), z.refine(passes, { error: expected }));
}

/** A number, both ends included. */
export function number(min: number, max: number, unit: string) {
  const expected = `a number from ${min} to ${max} (${unit})`;
  return z.number({ error: expected }).check(z.refine((value) => value >= min && value <= max, { error: expected }));
}

/** A whole number, both ends included. */
export function wholeNumber(min: number, max: number) {
  const expected = `a whole number from ${min} to ${max}`;
  const passes = (value: number) => Number.isInteger(value) && value >= min && value <= max;
  return z.number({ error: expected }).check(z.refine(passes, { error: expected }));
}

/** A whole number with no upper end of its own. */
export function wholeNumberFrom(min: number) {
  const expected = `a whole number, ${min} or more`;
  return z
    .number({ error: expected })
    .check(z.refine((value) => Number.isInteger(value) && value >= min, { error: expected }));
}

/** `true` or `false`. */
export function yesOrNo() {
  return z.boolean({ error: describeChoice(['true', 'false']) });
}

/** One of some words. */
export function choice<const Words extends readonly string[]>(words: Words) {
  return z.enum(words, { error: describeChoice(words) });
}

/** A list of at least `min` entries. */
export function list<Item extends z.ZodMiniType>(item: Item, what: string, min = 1) {
  const expected = min === 0 ? `a list of ${what}` : `a list of ${what}, at least ${min}`;
  return z.array(item, { error: expected }).check(z.minLength(min, { error: expected }));
}

/**
 * A map of exactly these keys. For an unknown key the issue's message is not a phrase but the known keys, separated by
 * spaces: check-value.ts looks for a near miss among them.
 * @param expected What a file or value that is no map should have been; left out, all its keys.
 */
export function keyed<Shape extends Readonly<Record<string, z.ZodMiniType>>>(
  shape: Shape,
  expected = `the keys ${Object.keys(shape)
    .map((key) => `\`${key}\``)
    .join(', ')}`,
) {
  const keys = Object.keys(shape);
  return z.strictObject(shape, {
    error: (issue) => (issue.code === 'unrecognized_keys' ? keys.join(' ') : expected),
  });
}

/** A map whose keys the author chooses: lower-case words joined by hyphens. */
export function named<Value extends z.ZodMiniType>(value: Value, what: string) {
  const word = z.string().check(z.regex(/^[\p{Ll}\p{Lo}\p{M}\p{N}]+(-[\p{Ll}\p{Lo}\p{M}\p{N}]+)*$/u));
  const expected = `${what}, each under a key of its own`;
  return z
    .record(word, value, {
      error: (issue) => (issue.code === 'invalid_key' ? 'lower-case words joined by hyphens' : expected),
    })
    .check(z.refine((record) => Object.keys(record).length > 0, { error: expected }));
}

/** A real date the computed calendar covers. */
export function date() {
  return textWhere(isCoveredDate, `a real date from \`${FIRST_DATE}\` to \`${LAST_DATE}\`, written \`YYYY-MM-DD\``);
}

/** A time of day. */
export function clockTime() {
  return textWhere(isClockTime, 'a time of day written `HH:MM`, such as `09:00`');
}

/** A day of the week. */
export function weekDay() {
  return choice(WEEK_DAYS);
}

const LANGUAGE_TAG =
  /^(?:[a-z]{2,3}(?:-[a-z]{3}){0,3}|[a-z]{4,8})(?:-[a-z]{4})?(?:-(?:[a-z]{2}|\d{3}))?(?:-(?:[a-z\d]{5,8}|\d[a-z\d]{3}))*(?:-[a-wyz\d](?:-[a-z\d]{2,8})+)*(?:-x(?:-[a-z\d]{1,8})+)?$/i;
const PRIVATE_TAG = /^x(?:-[a-z\d]{1,8})+$/i;

/** A well-formed language tag (BCP 47, RFC 5646 section 2.1); whether its parts are registered is not looked up. */
export function language() {
  return textWhere(
    (tag) => LANGUAGE_TAG.test(tag) || PRIVATE_TAG.test(tag),
    'a language tag (BCP 47), such as `en`, `fr` or `fr-CA`',
  );
}

/** `say` and `meaning`, allowed wherever something has a name. */
export const spoken = { say: z.exactOptional(text()), meaning: z.exactOptional(text()) };
