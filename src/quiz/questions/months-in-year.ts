import type { ElementContent } from 'hast';
import type { NightRecord } from '../../calendar/almanac-types.ts';
import type { CivilDate } from '../../calendar/rules.ts';
import { fillLabel } from '../../content/fill-label.ts';
import type { QuizFacts, Slip } from '../model.ts';
import { type MeasuredYear, measureNextYear, measureYear, measureYearBefore } from './measure-year.ts';
import { listKnownNights } from './neighbours.ts';
import type { Level, QuestionInstance, QuestionKind } from './question-instance.ts';
import { createSlips } from './slips.ts';
import { joinSentences, renderText } from './working.ts';

/** Years on either side of the lesson's: among seven, two or three are long. Our own choice. */
const YEARS_AROUND = 3;

/** The usual count of months, and the nights of twelve and of thirteen of them in the mean. */
const USUAL_MONTHS = 12;
const TWELVE_MONTHS_NIGHTS = 354;
const THIRTEEN_MONTHS_NIGHTS = 384;

const LEVELS: readonly Level[] = [1, 2, 3];

/**
 * "How many months has the year?", 12 or 13, a number to write: for the year of the lesson, those around it and those of
 * the dates asked about, each in three ways. These dates lie outside those asked about: one year alone would give all
 * groups the same answer.
 */
export const monthsInYear: QuestionKind = {
  about: 'Has a year 12 months or 13?',
  levels: [
    'the nights of the year are given',
    'the dates on which the year and the next one begin are given',
    'the dates on which the first and the last month begin are given, and the last month itself must be counted too',
  ],
  list(facts) {
    const records = listKnownNights(facts.almanac, facts.from, facts.to);
    return listYears(facts, records).flatMap((year) =>
      LEVELS.map((level) => makeInstance(facts, year, level, records)),
    );
  },
};

/** The lesson's year first, then the nearest ones, then those of the dates asked about; each once. */
function listYears({ almanac, today }: QuizFacts, records: readonly NightRecord[]): MeasuredYear[] {
  const here = measureYear(almanac, today);
  const later = walkYears(here, (year) => measureNextYear(almanac, year));
  const earlier = walkYears(here, (year) => measureYearBefore(almanac, year));
  const asked = records
    .filter(({ month }, place) => month.year !== records[place - 1]?.month.year)
    .flatMap(({ date }) => measureYear(almanac, date) ?? []);
  const around = later.flatMap((year, place) => [year, ...earlier.slice(place, place + 1)]);
  const years = [...(here ? [here] : []), ...around, ...earlier.slice(later.length), ...asked];
  return [...new Map(years.map((year) => [year.year, year])).values()];
}

function walkYears(
  from: MeasuredYear | undefined,
  step: (year: MeasuredYear) => MeasuredYear | undefined,
): MeasuredYear[] {
  const years: MeasuredYear[] = [];
  let next = from && step(from);
  while (next !== undefined && years.length < YEARS_AROUND) {
    years.push(next);
    next = step(next);
  }
  return years;
}

function makeInstance(
  facts: QuizFacts,
  year: MeasuredYear,
  level: Level,
  records: readonly NightRecord[],
): QuestionInstance {
  return {
    kind: 'line',
    asks: `months of the year ${year.year}, ${level}`,
    tells: [],
    level,
    hardness: { nights: 0, hurdle: level === 3 },
    about: {
      nights: [],
      dates: records.filter(({ month }) => month.year === year.year).map(({ date }) => date),
    },
    unit: facts.labels.text('quiz-unit-months'),
    forgive: { case: true, accents: true },
    listAnswers: () => [renderText(String(year.months))],
    listSlips: () => listSlips(facts, year, level),
    renderPrompt: () => renderPrompt(facts, year, level),
    renderWorking: () => renderWorking(facts, year, level),
  };
}

/** Years of a calendar are not those of the civil one, so the civil year is always said. */
function sayLongDate({ labels }: QuizFacts, date: CivilDate): string {
  return labels.date(date, 'long');
}

function renderPrompt(facts: QuizFacts, year: MeasuredYear, level: Level): ElementContent[] {
  const from = sayLongDate(facts, year.firstDate);
  if (level === 1) {
    return fillLabel(facts.labels, 'quiz-ask-months-by-nights', {
      date: from,
      nights: facts.labels.count('quiz-nights', year.nights),
      twelve: String(TWELVE_MONTHS_NIGHTS),
      thirteen: String(THIRTEEN_MONTHS_NIGHTS),
    });
  }
  if (level === 2) {
    return fillLabel(facts.labels, 'quiz-ask-months-by-years', { from, to: sayLongDate(facts, year.nextDate) });
  }
  return fillLabel(facts.labels, 'quiz-ask-months-by-last', { from, to: sayLongDate(facts, year.lastMonthDate) });
}

function listSlips({ labels }: QuizFacts, { months }: MeasuredYear, level: Level): Slip[] {
  const usual = [USUAL_MONTHS, fillLabel(labels, 'quiz-slip-usual-year', {})] as const;
  const extra = [USUAL_MONTHS + 1, fillLabel(labels, 'quiz-slip-extra-month', {})] as const;
  const nextYearToo = [months + 1, fillLabel(labels, 'quiz-slip-next-year-too', {})] as const;
  const lastLeftOut = [months - 1, fillLabel(labels, 'quiz-slip-last-month-left-out', {})] as const;
  const between = [months - 1, fillLabel(labels, 'quiz-slip-months-between', {})] as const;
  if (level === 1) return createSlips(months, [usual, extra]);
  return createSlips(months, level === 2 ? [usual, nextYearToo, between] : [lastLeftOut, usual, nextYearToo]);
}

/** "From 14 June 2026 to 3 July 2027 it is 384 nights. Twelve months have about 354 nights, thirteen 384: 13 months." */
function renderWorking(facts: QuizFacts, year: MeasuredYear, level: Level): ElementContent[] {
  const { labels } = facts;
  const isByLast = level === 3;
  const nights = fillLabel(labels, 'quiz-working-year-nights', {
    from: sayLongDate(facts, year.firstDate),
    to: sayLongDate(facts, isByLast ? year.lastMonthDate : year.nextDate),
    nights: labels.count('quiz-nights', isByLast ? year.nightsBeforeLast : year.nights),
  });
  const months = labels.count('quiz-months', year.months);
  const before = labels.count('quiz-months', year.months - 1);
  const counted = isByLast
    ? fillLabel(labels, 'quiz-working-year-last', { before, months })
    : fillLabel(labels, 'quiz-working-year-months', {
        twelve: String(TWELVE_MONTHS_NIGHTS),
        thirteen: String(THIRTEEN_MONTHS_NIGHTS),
        months,
      });
  return joinSentences([nights, counted]);
}
