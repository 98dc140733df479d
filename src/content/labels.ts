import type { CivilDate, PhaseName } from '../calendar/rules.ts';
import { computeWeekDay, isClockTime } from './civil-date.ts';
import { type CountKey, getLabelEntry, type LabelKey, type PlaceholderOf, type TextKey } from './label-catalogue.ts';
import { fillParts, fillTemplate } from './template.ts';
import { findDirection, type TextDirection } from './text-direction.ts';
import type { WeekDay } from './types.ts';

/** A label with forms for a number, by the plural categories of Unicode CLDR. */
export type PluralText = Readonly<Partial<Record<Intl.LDMLPluralRule, string>>> & { readonly other: string };

/** A labels file, checked. Labels it does not have are English. */
export interface LabelFile {
  readonly id: string;
  /** BCP 47 tag of the texts. */
  readonly language: string;
  readonly labels: Readonly<Partial<Record<LabelKey, string | PluralText>>>;
}

/** `long`: `Wednesday 29 July 2026`; `day`: `Wednesday 29 July`; `short`: `Wed 29 Jul`. */
export type DateForm = 'long' | 'day' | 'short';

type Values<Key extends LabelKey, Value> = Readonly<Record<PlaceholderOf<Key>, Value>>;
type ValueArgument<Key extends LabelKey> = [PlaceholderOf<Key>] extends [never]
  ? []
  : [values: Values<Key, string | number>];

/** The fixed words of a pack in one language. Everything is plain text, to be escaped where it is written. */
export interface Labels {
  /** BCP 47 tag of the words: `en` where no file for the wanted language was given. */
  readonly language: string;
  /** Which way the words run, and with them the pages. */
  readonly direction: TextDirection;
  /** A label with its placeholders filled. */
  text<Key extends TextKey>(key: Key, ...values: ValueArgument<Key>): string;
  /** The same as parts, for a view that puts elements where the placeholders stood. */
  parts<Key extends TextKey, Part>(key: Key, values: Values<Key, Part>): (string | Part)[];
  /** The form of a label that goes with a number; `{n}` in it is that number. */
  count<Key extends CountKey>(key: Key, n: number, ...values: ValueArgument<Key>): string;
  /** A number with a fixed count of decimals (0 to 20). */
  number(value: number, decimals: number): string;
  /** A real date in words. */
  date(date: CivilDate, form: DateForm): string;
  /** A time of day given as `HH:MM`, such as `5:25 pm` or `17 h 25`. Throws RangeError for anything else. */
  clock(time: string): string;
  /** The name of a day of the week, as it stands in a date. */
  weekday(day: WeekDay): string;
  /** The name of a principal phase. */
  phase(name: PhaseName): string;
  /** `a, b and c`; empty for an empty list. */
  list(items: readonly string[]): string;
}

/**
 * The fixed words for a language.
 * @param language BCP 47 tag of what is to be written.
 * @param file The labels of that language; without it, and for labels it lacks, the words are English.
 */
export function createLabels(language: string, file?: LabelFile): Labels {
  const shown = file || isEnglish(language) ? language : 'en';
  const find = (key: LabelKey): string | PluralText => file?.labels[key] ?? getLabelEntry(key).english;
  const plain = (key: LabelKey): string => requireText(key, find(key));
  // Made when first asked for: making one takes longer than a thousand answers.
  let pluralRules: Intl.PluralRules | undefined;
  const findCategory = (n: number) => {
    pluralRules ??= new Intl.PluralRules(shown);
    return pluralRules.select(n);
  };
  const fill = (key: TextKey, values: Readonly<Record<string, string | number>> = {}) =>
    fillTemplate(plain(key), values);
  return {
    language: shown,
    direction: findDirection(listTexts(file)),
    text: (key, ...[values]) => fill(key, values),
    parts: (key, values) => fillParts(plain(key), values),
    count: (key, n, ...[values]) => fillTemplate(choosePlural(find(key), n, findCategory), { ...values, n }),
    number: (value, decimals) => value.toFixed(decimals).replace('.', () => plain('decimal-mark')),
    date: (date, form) => fill(`date-${form}`, computeDateValues(date, form, plain)),
    clock: (time) => fill('clock', computeClockValues(time, plain)),
    weekday: (day) => plain(`weekday-${day}`),
    phase: (name) => plain(`phase-${name}`),
    list: (items) => joinList(items, fill),
  };
}

/** True for `en` and its regional forms. */
export function isEnglish(language: string): boolean {
  return /^en(-|$)/i.test(language);
}

/**
 * The id of the labels file for a language: its own tag, else the tag cut from the right (`fr-CA`, then `fr`), as in
 * the lookup of RFC 4647 section 3.4. Nothing when there is none; English needs none.
 */
export function findLabelFileId(language: string, ids: readonly string[]): string | undefined {
  const parts = language.toLowerCase().split('-');
  for (let length = parts.length; length > 0; length--) {
    const id = ids.find((each) => each.toLowerCase() === parts.slice(0, length).join('-'));
    if (id !== undefined) return id;
  }
  return undefined;
}

function listTexts(file: LabelFile | undefined): string[] {
  return Object.values(file?.labels ?? {}).map((label) => (typeof label === 'string' ? label : label.other));
}

function requireText(key: LabelKey, label: string | PluralText): string {
  if (typeof label !== 'string') throw new Error(`The label ${key} has forms for a number; use count().`);
  return label;
}

function choosePlural(label: string | PluralText, n: number, findCategory: (n: number) => Intl.LDMLPluralRule): string {
  return typeof label === 'string' ? label : (label[findCategory(n)] ?? label.other);
}

function computeDateValues(date: CivilDate, form: DateForm, plain: (key: LabelKey) => string): Record<string, string> {
  const [year = '', month = '', day = ''] = date.split('-');
  const weekday = computeWeekDay(date);
  const short = form === 'short' ? 'short-' : '';
  // A date that has a day of the week has a month from 1 to 12.
  const monthKey = `month-${short}${Number(month)}` as LabelKey;
  const dayText = day === '01' ? plain('date-first-of-month') : `${Number(day)}`;
  return { year, month: plain(monthKey), day: dayText, weekday: plain(`weekday-${short}${weekday}`) };
}

function computeClockValues(time: string, plain: (key: LabelKey) => string): Record<string, string> {
  if (!isClockTime(time)) throw new RangeError(`"${time}" is no time of day written HH:MM.`);
  const [hh = '', mm = ''] = time.split(':');
  const hour = Number(hh);
  return { hh, mm, h24: `${hour}`, h12: `${hour % 12 || 12}`, ampm: plain(hour < 12 ? 'clock-am' : 'clock-pm') };
}

function joinList(
  items: readonly string[],
  fill: (key: 'list-between' | 'list-last', values: Record<string, string>) => string,
): string {
  const [first = '', ...rest] = items;
  const last = rest.pop();
  const before = rest.reduce((joined, next) => fill('list-between', { before: joined, next }), first);
  return last === undefined ? before : fill('list-last', { before, last });
}
