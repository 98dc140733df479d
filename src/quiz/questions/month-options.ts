import type { ElementContent } from 'hast';
import type { Almanac, NightRecord } from '../../calendar/almanac-types.ts';
import { fillLabel } from '../../content/fill-label.ts';
import { type DistractorReason, listDistractorSets, type OptionRing } from '../distractors.ts';
import { foldText } from '../fold-text.ts';
import type { QuizFacts } from '../model.ts';
import { findFirstAfter, findLastBefore } from './month-look.ts';
import { sayDate } from './say-date.ts';

/** A wrong month: its name as it is written, and what choosing it means. */
export interface WrongMonth {
  readonly name: string;
  readonly means: ElementContent[];
}

/** Whether the calendar has a month of another name than that of a night: {@link listWrongMonths} would not come back empty. */
export function hasOtherMonth({ almanac }: QuizFacts, { month }: NightRecord): boolean {
  return almanac.rules.months.some(({ name }) => foldText(name) !== foldText(month.name));
}

/**
 * Sets of wrong months beside that of a night. Its neighbours stand around it; across is the month whose number is that of
 * the civil month. A thirteenth month that is left out beside it is in every set.
 */
export function listWrongMonths(facts: QuizFacts, record: NightRecord): WrongMonth[][] {
  const names = listNames(facts.almanac, record);
  const sets = listDistractorSets(makeRing(facts.almanac, record, names));
  return sets.map((set) =>
    set.flatMap(({ place, reason }) => {
      const name = names[place];
      return name === undefined ? [] : [{ name, means: renderMeaning(facts, record, name, reason) }];
    }),
  );
}

/** The thirteenth month, where it would stand beside the month of a night in a long year and this year is none. */
export function findMissingMonth(almanac: Almanac, record: NightRecord): string | undefined {
  const { thirteenthMonth } = almanac.rules;
  if (thirteenthMonth === undefined || record.month.intercalary) return undefined;
  const { after, name } = thirteenthMonth;
  const before = findLastBefore(almanac, record)?.month;
  const next = findFirstAfter(almanac, record)?.month;
  const isMissingAfter = record.month.number === after && next?.intercalary === false;
  const isMissingBefore = before?.number === after && !before.intercalary;
  return isMissingAfter || isMissingBefore ? name : undefined;
}

/** The months of a year in order; the thirteenth only where it, or the place where it would be, is near. */
function listNames(almanac: Almanac, record: NightRecord): string[] {
  const { months, thirteenthMonth } = almanac.rules;
  const names = months.map(({ name }) => name);
  const near = [record, findLastBefore(almanac, record), findFirstAfter(almanac, record)];
  const isNear = near.some((night) => night?.month.intercalary) || findMissingMonth(almanac, record) !== undefined;
  return thirteenthMonth && isNear ? names.toSpliced(thirteenthMonth.after, 0, thirteenthMonth.name) : names;
}

function makeRing(almanac: Almanac, record: NightRecord, names: readonly string[]): OptionRing {
  const texts = names.map(foldText);
  const find = (name: string | undefined) => (name === undefined ? -1 : texts.indexOf(foldText(name)));
  const namesake = almanac.rules.months[Number(record.date.slice(5, 7)) - 1]?.name;
  return {
    texts,
    right: find(record.month.name),
    across: find(namesake),
    notReached: [find(findMissingMonth(almanac, record))].filter((place) => place >= 0),
  };
}

const MEANS_LABELS = {
  'just-before': 'quiz-means-month-other',
  'just-after': 'quiz-means-month-other',
  earlier: 'quiz-means-month-other',
  later: 'quiz-means-month-other',
  across: 'quiz-means-month-namesake',
  'near-across': 'quiz-means-month-other',
  'not-reached': 'quiz-means-month-not-there',
} as const satisfies Record<DistractorReason, string>;

function renderMeaning(
  facts: QuizFacts,
  record: NightRecord,
  name: string,
  reason: DistractorReason,
): ElementContent[] {
  const before = findLastBefore(facts.almanac, record);
  const after = findFirstAfter(facts.almanac, record);
  const isOf = (night: NightRecord | undefined) => night !== undefined && foldText(night.month.name) === foldText(name);
  if (before && isOf(before)) {
    return fillLabel(facts.labels, 'quiz-means-month-before', { date: sayDate(facts, before.date) });
  }
  if (after && isOf(after)) {
    return fillLabel(facts.labels, 'quiz-means-month-after', { date: sayDate(facts, after.date) });
  }
  return fillLabel(facts.labels, MEANS_LABELS[reason], {});
}
