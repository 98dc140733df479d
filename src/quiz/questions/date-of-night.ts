import type { ElementContent } from 'hast';
import type { Almanac, NightRecord } from '../../calendar/almanac-types.ts';
import { MS_PER_DAY } from '../../calendar/day-number.ts';
import { fillLabel } from '../../content/fill-label.ts';
import { listRows, WRONG_OPTIONS } from '../distractors.ts';
import { foldName } from '../fold-text.ts';
import type { QuizFacts } from '../model.ts';
import { gradeFromTonight } from './grade.ts';
import { findFirstAfter, findLastBefore, isMonthAlone, isSaidOnce, lookAtMonth } from './month-look.ts';
import { findNightAfter, findNightBefore, listKnownNights } from './neighbours.ts';
import { nameNightFact, type QuestionInstance, type QuestionKind, type WrongOption } from './question-instance.ts';
import { sayDate } from './say-date.ts';
import { joinSentences, renderNight, renderText } from './working.ts';

/**
 * "Which date is Round Moon in Frost Month?", a choice of dates: one for each night asked about, in order. The month is
 * named, since the name of the night comes again in the next. A name said twice in its month, and a month with a
 * neighbour of the same name, are not asked about: two dates would be right.
 */
export const dateOfNight: QuestionKind = {
  about: 'Which date is a night?',
  levels: [
    'a night at most three days from the lesson',
    'a night further off in the same month',
    'a night beyond the end of the month, or beyond a name that is left out or said twice',
  ],
  list(facts) {
    const { almanac, from, to } = facts;
    return listKnownNights(almanac, from, to)
      .filter((record) => isSaidOnce(almanac, record) && isMonthAlone(almanac, record))
      .filter((record) => findNightBefore(almanac, record) ?? findNightAfter(almanac, record))
      .map((record) => makeInstance(facts, record));
  },
};

const PROMPT_LABELS = {
  sunset: 'quiz-ask-date-from-sunset',
  midnight: 'quiz-ask-date',
  sunrise: 'quiz-ask-date-from-sunrise',
} as const;

function makeInstance(facts: QuizFacts, record: NightRecord): QuestionInstance {
  const { night, month, date } = record;
  return {
    kind: 'choice',
    asks: nameNightFact(date),
    tells: [],
    ...gradeFromTonight(facts, record),
    about: { nights: [night.number], dates: [date] },
    renderRight: () => renderDate(facts, record),
    listWrongSets: () => listWrongSets(facts, record),
    renderPrompt: () =>
      fillLabel(facts.labels, PROMPT_LABELS[record.beginsWith], {
        night: renderNight(facts, night.name),
        month: renderNight(facts, month.name),
      }),
    renderWorking: () => joinSentences([renderCount(facts, record), renderFromTonight(facts, record)]),
  };
}

/** All dates of a question lie within weeks of each other, so their year is left out. */
function renderDate({ labels }: QuizFacts, { date }: NightRecord): ElementContent[] {
  return renderText(labels.date(date, 'day'));
}

function listWrongSets(facts: QuizFacts, record: NightRecord): readonly (readonly WrongOption[])[] {
  const rows = listRows(walk(record, findNightBefore, facts), walk(record, findNightAfter, facts));
  const others = [findLastBefore, findFirstAfter].flatMap((find) => findSameName(facts, record, find));
  const pairs = others.flatMap((other) => listPairs(facts, record, other));
  const largest = rows[0]?.length ?? 0;
  return [...rows, ...pairs.filter(({ length }) => length === largest)].map((set) =>
    set.map((wrong) => ({ content: renderDate(facts, wrong), means: renderMeaning(facts, record, wrong) })),
  );
}

type FindNight = (almanac: Almanac, record: NightRecord) => NightRecord | undefined;

/** The nights on one side, the nearest first. */
function walk(record: NightRecord, find: FindNight, { almanac }: QuizFacts): NightRecord[] {
  const nights: NightRecord[] = [];
  let next = find(almanac, record);
  while (next !== undefined && nights.length < WRONG_OPTIONS) {
    nights.push(next);
    next = find(almanac, next);
  }
  return nights;
}

/** The night of the same name in the month before or after. */
function findSameName({ almanac }: QuizFacts, record: NightRecord, findMonth: FindNight): NightRecord[] {
  const beside = findMonth(almanac, record);
  const nights = beside === undefined ? [] : lookAtMonth(almanac, beside).nights;
  return nights.filter(({ night }) => foldName(night) === foldName(record.night)).slice(0, 1);
}

/** A neighbour, and the same two dates a month away: whoever sees the four cannot tell which pair is meant. */
function listPairs({ almanac }: QuizFacts, record: NightRecord, other: NightRecord): NightRecord[][] {
  return [findNightBefore, findNightAfter].flatMap((find) => {
    const set = [find(almanac, record), other, find(almanac, other)].filter((night) => night !== undefined);
    const dates = new Set([record, ...set].map(({ date }) => date));
    return dates.size === WRONG_OPTIONS + 1 ? [set] : [];
  });
}

function renderMeaning(facts: QuizFacts, right: NightRecord, wrong: NightRecord): ElementContent[] {
  const { labels, today } = facts;
  const days = Math.round((wrong.beginsMs - right.beginsMs) / MS_PER_DAY);
  if (Math.abs(days) > WRONG_OPTIONS) return renderOtherMonth(facts, right, wrong);
  const countedTonight = right.date > today ? -1 : right.date < today ? 1 : 0;
  if (days === 1 && right.beginsWith !== 'midnight') {
    return fillLabel(labels, countedTonight === 1 ? 'quiz-means-date-ends-count' : 'quiz-means-date-ends', {});
  }
  if (days === countedTonight) return fillLabel(labels, 'quiz-slip-counted-tonight', {});
  return renderText(labels.count(days < 0 ? 'quiz-means-days-early' : 'quiz-means-days-late', Math.abs(days)));
}

function renderOtherMonth(facts: QuizFacts, right: NightRecord, wrong: NightRecord): ElementContent[] {
  const month = renderNight(facts, wrong.month.name);
  const isSame = foldName(wrong.night) === foldName(right.night);
  return fillLabel(facts.labels, isSame ? 'quiz-means-other-month' : 'quiz-means-other-month-off', { month });
}

/** "Frost Month begins on Tuesday 14 July. Round Moon is its night 16: Wednesday 29 July." */
function renderCount(facts: QuizFacts, { night, month, nightOfMonth, date }: NightRecord): ElementContent[] {
  return fillLabel(facts.labels, 'quiz-working-date-of', {
    month: renderNight(facts, month.name),
    first: sayDate(facts, month.firstDate),
    night: renderNight(facts, night.name),
    number: String(nightOfMonth),
    date: sayDate(facts, date),
  });
}

function renderFromTonight(facts: QuizFacts, record: NightRecord): ElementContent[] {
  const tonight = facts.almanac.nightOn(facts.today);
  const nights = record.nightOfMonth - tonight.nightOfMonth;
  if (record.month.firstDate !== tonight.month.firstDate || nights === 0) return [];
  return fillLabel(facts.labels, nights > 0 ? 'quiz-working-count-on' : 'quiz-working-count-back', {
    date: sayDate(facts, tonight.date),
    from: String(tonight.nightOfMonth),
    count: facts.labels.count('quiz-nights', Math.abs(nights)),
  });
}
