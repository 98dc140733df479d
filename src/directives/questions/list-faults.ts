import { addDays, clampDate, computeMonday, computeWeekDay } from '../../content/civil-date.ts';
import { quote } from '../../content/wording.ts';
import { foldName, foldText } from '../../quiz/fold-text.ts';
import { listKnownNights } from '../../quiz/questions/neighbours.ts';
import type { FactSetting } from './answer-facts.ts';

/** Where the parts of an answer do not stand together as the calendar has them. Texts are as they stand in a message. */
export interface ListFault {
  readonly found: string;
  readonly expected: string;
}

/** The words of two things that belong together. */
export interface TextPair {
  readonly left: string;
  readonly right: string;
}

/** Names of nights in the order in which they come in the month of the lesson's date. */
export function findRunFault(items: readonly string[], { almanac, lesson }: FactSetting): ListFault | undefined {
  const month = almanac.nightsOfMonth(lesson.date).map(({ night }) => foldName(night));
  const placed = items.map((item) => ({ item, place: month.indexOf(foldText(item)) }));
  const missing = placed.find(({ place }) => place < 0);
  if (missing !== undefined) {
    const known = almanac.run.some((night) => foldName(night) === foldText(missing.item));
    const found = `${quote(missing.item)}, which is ${known ? 'left out' : 'no night'},`;
    return { found, expected: `names of nights that come in the month of \`${lesson.date}\`` };
  }
  const right = placed.toSorted((one, other) => one.place - other.place);
  if (right.every(({ place }, index) => place === placed[index]?.place)) return undefined;
  const list = (entries: readonly { readonly item: string }[]) => entries.map(({ item }) => quote(item)).join(', ');
  return { found: list(placed), expected: `${list(right)}, as they come in the month of \`${lesson.date}\`` };
}

/** Days of the lesson's week, in the words of the pack, each with the night that begins on it; on either side. */
export function findDayFault(
  pairs: readonly TextPair[],
  { almanac, labels, lesson }: FactSetting,
): ListFault | undefined {
  const monday = computeMonday(lesson.date);
  const records = listKnownNights(almanac, clampDate(monday), clampDate(addDays(monday, 6)));
  const nights = new Map(records.map((record) => [foldText(labels.weekday(computeWeekDay(record.date))), record]));
  for (const { left, right } of pairs) {
    const record = nights.get(foldText(left)) ?? nights.get(foldText(right));
    if (record === undefined) {
      const expected = `a day of the week, such as \`${labels.weekday('monday')}\`, with each night`;
      return { found: `${quote(left)} with ${quote(right)}`, expected };
    }
    const [day, name] = nights.has(foldText(left)) ? [left, right] : [right, left];
    if (foldText(name) === foldName(record.night)) continue;
    const expected = `\`${record.night.name}\`, the night of \`${record.date}\``;
    return { found: `${quote(name)} with ${quote(day)}`, expected };
  }
  return undefined;
}

/** Names of nights, each with its group; on either side. */
export function findGroupFault(pairs: readonly TextPair[], { almanac }: FactSetting): ListFault | undefined {
  for (const { left, right } of pairs) {
    const texts = [foldText(left), foldText(right)];
    const nights = almanac.run.filter((night) => texts.includes(foldName(night)));
    if (nights.some((night) => isNightWithGroup(texts, foldName(night), foldText(night.group)))) continue;
    const [night] = nights;
    const expected =
      night === undefined ? 'the name of a night with a group' : `\`${night.name}\` with \`${night.group}\``;
    return { found: `${quote(left)} with ${quote(right)}`, expected };
  }
  return undefined;
}

function isNightWithGroup([left, right]: readonly string[], night: string, group: string): boolean {
  return (left === night && right === group) || (left === group && right === night);
}
