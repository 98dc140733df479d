import type { ElementContent } from 'hast';
import type { NightRecord } from '../../calendar/almanac-types.ts';
import { fillLabel } from '../../content/fill-label.ts';
import { fillTemplate, findPlaceholders } from '../../content/template.ts';
import { keepEvenLengths } from '../even-lengths.ts';
import { foldName, foldText } from '../fold-text.ts';
import type { QuizFacts } from '../model.ts';
import { DATE_LEVELS, gradeFromTonight } from './grade.ts';
import { findMirror } from './mirror-night.ts';
import { findFirstAfter, findLastBefore } from './month-look.ts';
import { renderMonthSpan } from './month-of-date.ts';
import { hasOtherMonth, listWrongMonths } from './month-options.ts';
import { findNightAfter, findNightBefore, listKnownNights } from './neighbours.ts';
import { hasNightOptions, listNightOptions } from './night-options.ts';
import { nameNightFact, type QuestionInstance, type QuestionKind, type WrongOption } from './question-instance.ts';
import { sayDate, sayNightDate } from './say-date.ts';
import { joinSentences, renderNight } from './working.ts';

/** What stands for a name that is left out. */
const GAP = '…';

/**
 * "Finish the sentence for Friday 31 July: Tonight is …, in ….", a choice of the names that go in: one for each date, in
 * order. The right night stands with a wrong month and the right month with a wrong night as often as with each other, so
 * that no name gives itself away by coming twice.
 */
export const finishSentence: QuestionKind = {
  about: "Which night and month belong in the calendar's sentence for a date?",
  levels: DATE_LEVELS,
  list(facts) {
    return listKnownNights(facts.almanac, facts.from, facts.to)
      .filter(
        (record) =>
          hasNightOptions(facts, { right: record.night }) || (asksMonth(facts) && hasOtherMonth(facts, record)),
      )
      .map((record) => makeInstance(facts, record));
  },
};

function makeInstance(facts: QuizFacts, record: NightRecord): QuestionInstance {
  const { night, month, date } = record;
  const renderRight = () => renderFilling(facts, night.name, month.name);
  return {
    kind: 'choice',
    asks: nameNightFact(date),
    tells: [],
    ...gradeFromTonight(facts, record),
    about: { nights: [night.number], dates: [date] },
    renderRight,
    listWrongSets: () => keepEvenLengths(renderRight(), listFillings(facts, record)),
    renderPrompt: () =>
      fillLabel(facts.labels, 'quiz-ask-sentence', {
        date: sayNightDate(facts, record),
        sentence: renderSentence(facts, GAP, GAP),
      }),
    renderWorking: () => renderWorking(facts, record),
  };
}

/** The names in the order in which the sentence says them, each once. */
function renderFilling(facts: QuizFacts, night: string, month: string): ElementContent[] {
  const gaps = findPlaceholders(facts.calendar.sentence);
  return renderNight(facts, gaps.map((gap) => (gap === 'month' ? month : night)).join(` ${GAP} `));
}

function renderSentence(facts: QuizFacts, night: string, month: string): ElementContent[] {
  return renderNight(facts, fillTemplate(facts.calendar.sentence, { night, month }));
}

/** Sets of wrong fillings: the four ways to combine two nights with two months, or names for one of the gaps alone. */
function listFillings(facts: QuizFacts, record: NightRecord): readonly (readonly WrongOption[])[] {
  const nights = listOtherNights(facts, record);
  const months = asksMonth(facts) ? listOtherMonths(facts, record) : [];
  const squares = nights.flatMap((night) => months.map((month) => makeSquare(facts, record, night, month)));
  if (squares.length > 0) return squares;
  if (hasNightOptions(facts, { right: record.night })) return listOtherNames(facts, record);
  return listWrongMonths(facts, record).map((set) =>
    set.map(({ name, means }) => ({ content: renderFilling(facts, record.night.name, name), means })),
  );
}

function asksMonth({ calendar }: QuizFacts): boolean {
  return findPlaceholders(calendar.sentence).includes('month');
}

/** The sets of wrong nights where the month is no choice. */
function listOtherNames(facts: QuizFacts, record: NightRecord): readonly (readonly WrongOption[])[] {
  const renderName = (name: string) => renderFilling(facts, name, record.month.name);
  return listNightOptions(facts, { right: record.night }, { renderName });
}

/** A wrong name for one of the gaps, and what choosing it means. */
interface WrongName {
  readonly name: string;
  readonly means: ElementContent[];
}

/** The nights before and after, and the mirror night. */
function listOtherNights({ almanac, labels }: QuizFacts, record: NightRecord): WrongName[] {
  const { night } = record;
  const found = [
    [findNightBefore(almanac, record)?.night, 'quiz-means-sentence-night-before'],
    [findNightAfter(almanac, record)?.night, 'quiz-means-sentence-night-after'],
    [almanac.run[findMirror(almanac, night.number - 1)], 'quiz-means-mirror'],
  ] as const;
  const said = new Set([foldName(night)]);
  return found.flatMap(([other, label]) => {
    if (other === undefined || said.has(foldName(other))) return [];
    said.add(foldName(other));
    return [{ name: other.name, means: fillLabel(labels, label, {}) }];
  });
}

/** The months before and after. */
function listOtherMonths({ almanac, labels }: QuizFacts, record: NightRecord): WrongName[] {
  const found = [
    [findLastBefore(almanac, record)?.month, 'quiz-means-sentence-month-before'],
    [findFirstAfter(almanac, record)?.month, 'quiz-means-sentence-month-after'],
  ] as const;
  return found.flatMap(([other, label]) => {
    if (other === undefined || foldText(other.name) === foldText(record.month.name)) return [];
    return [{ name: other.name, means: fillLabel(labels, label, {}) }];
  });
}

function makeSquare(facts: QuizFacts, record: NightRecord, night: WrongName, month: WrongName): WrongOption[] {
  return [
    { content: renderFilling(facts, night.name, record.month.name), means: night.means },
    { content: renderFilling(facts, record.night.name, month.name), means: month.means },
    {
      content: renderFilling(facts, night.name, month.name),
      means: fillLabel(facts.labels, 'quiz-means-sentence-both', {}),
    },
  ];
}

/** The whole sentence, and from which date to which the month goes. */
function renderWorking(facts: QuizFacts, record: NightRecord): ElementContent[] {
  const { night, month, nightOfMonth, date } = record;
  return joinSentences([
    fillLabel(facts.labels, 'quiz-working-date', {
      date: sayDate(facts, date),
      number: String(nightOfMonth),
      night: renderNight(facts, night.name),
    }),
    asksMonth(facts) ? renderMonthSpan(facts, record) : [],
    renderSentence(facts, night.name, month.name),
  ]);
}
