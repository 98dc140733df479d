import type { ElementContent } from 'hast';
import type { NightRecord } from '../../calendar/almanac-types.ts';
import type { CivilDate } from '../../calendar/rules.ts';
import { fillLabel } from '../../content/fill-label.ts';
import { keepEvenLengths } from '../even-lengths.ts';
import type { QuizFacts } from '../model.ts';
import { lookAtMonth } from './month-look.ts';
import { findMissingMonth, hasOtherMonth, listWrongMonths } from './month-options.ts';
import { listKnownNights } from './neighbours.ts';
import type { Level, QuestionInstance, QuestionKind } from './question-instance.ts';
import { sayDate, sayNightDate } from './say-date.ts';
import { joinSentences, renderNight } from './working.ts';

/** "Which month is the night of Friday 31 July in?", a choice: one for each date, in order. */
export const monthOfDate: QuestionKind = {
  about: 'Which month is the night of a date in?',
  levels: [
    'a date in the month of the lesson',
    'a date in another month',
    'the first or last night of a month, or a month beside which the thirteenth stands or is left out',
  ],
  list(facts) {
    return listKnownNights(facts.almanac, facts.from, facts.to)
      .filter((record) => hasOtherMonth(facts, record))
      .map((record) => makeInstance(facts, record));
  },
};

function makeInstance(facts: QuizFacts, record: NightRecord): QuestionInstance {
  const level = findLevel(facts, record);
  return {
    kind: 'choice',
    asks: `month on ${record.date}`,
    tells: [],
    level,
    hardness: { nights: 0, hurdle: level === 3 },
    about: { nights: [record.night.number], dates: [record.date] },
    renderRight: () => renderNight(facts, record.month.name),
    listWrongSets: () =>
      keepEvenLengths(
        renderNight(facts, record.month.name),
        listWrongMonths(facts, record).map((set) =>
          set.map(({ name, means }) => ({ content: renderNight(facts, name), means })),
        ),
      ),
    renderPrompt: () => fillLabel(facts.labels, 'quiz-ask-month-of-date', { date: sayNightDate(facts, record) }),
    renderWorking: () => renderWorking(facts, record),
  };
}

function findLevel(facts: QuizFacts, record: NightRecord): Level {
  const { month, nightOfMonth } = record;
  const isEdge = nightOfMonth === 1 || nightOfMonth === month.length;
  if (isEdge || month.intercalary || findMissingMonth(facts.almanac, record) !== undefined) return 3;
  return month.firstDate === facts.almanac.nightOn(facts.today).month.firstDate ? 1 : 2;
}

/** "Frost Month goes from Tuesday 14 July to Tuesday 11 August. Friday 31 July is its night 18." */
function renderWorking(facts: QuizFacts, record: NightRecord): ElementContent[] {
  return joinSentences([
    renderMonthSpan(facts, record),
    fillLabel(facts.labels, 'quiz-working-night-of-month', {
      date: sayDate(facts, record.date),
      number: String(record.nightOfMonth),
    }),
  ]);
}

/** From which date to which a month goes. */
export function renderMonthSpan(facts: QuizFacts, record: NightRecord): ElementContent[] {
  const last: CivilDate = lookAtMonth(facts.almanac, record).nights.at(-1)?.date ?? record.date;
  return fillLabel(facts.labels, 'quiz-working-month-span', {
    month: renderNight(facts, record.month.name),
    from: sayDate(facts, record.month.firstDate),
    to: sayDate(facts, last),
  });
}
