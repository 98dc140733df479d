import type { ElementContent } from 'hast';
import type { NightRecord, RunNight } from '../../calendar/almanac-types.ts';
import { fillLabel } from '../../content/fill-label.ts';
import { foldName } from '../fold-text.ts';
import type { QuizFacts } from '../model.ts';
import { DATE_LEVELS, gradeFromTonight } from './grade.ts';
import { findNightAfter, findNightBefore, listKnownNights, listPassedOver } from './neighbours.ts';
import { hasNightOptions, listNightOptions } from './night-options.ts';
import { nameNightFact, type QuestionInstance, type QuestionKind } from './question-instance.ts';
import { sayDate } from './say-date.ts';
import { joinSentences, renderNight } from './working.ts';

/** "Which night is Friday 31 July?", a choice: one for each date between the two, in order. */
export const nightOfDate: QuestionKind = {
  about: 'Which night is a date?',
  levels: DATE_LEVELS,
  list(facts) {
    return listKnownNights(facts.almanac, facts.from, facts.to)
      .filter(({ night }) => hasNightOptions(facts, { right: night }))
      .map((record) => makeInstance(facts, record));
  },
};

/** A day of the week touches two nights; the words say from when on the night of a date is meant. */
const PROMPT_LABELS = {
  sunset: 'quiz-ask-night-from-sunset',
  midnight: 'quiz-ask-night-of-date',
  sunrise: 'quiz-ask-night-from-sunrise',
} as const;

function makeInstance(facts: QuizFacts, record: NightRecord): QuestionInstance {
  const { night, date } = record;
  return {
    kind: 'choice',
    asks: nameNightFact(date),
    tells: [],
    ...gradeFromTonight(facts, record),
    about: { nights: [night.number], dates: [date] },
    renderRight: () => renderNight(facts, night.name),
    listWrongSets: () => listWrongSets(facts, record),
    renderPrompt: () => fillLabel(facts.labels, PROMPT_LABELS[record.beginsWith], { date: sayDate(facts, date) }),
    renderWorking: () => joinSentences([...renderDate(facts, record), renderNeighbours(facts, record)]),
  };
}

function listWrongSets(facts: QuizFacts, record: NightRecord) {
  const { run } = facts.almanac;
  const before = findNightBefore(facts.almanac, record);
  const after = findNightAfter(facts.almanac, record);
  const passedOver = [
    ...(before === undefined ? [] : listPassedOver(run, before, record)),
    ...(after === undefined ? [] : listPassedOver(run, record, after)),
  ];
  const explain = (night: RunNight) =>
    before !== undefined && foldName(before.night) === foldName(night) ? explainNightBefore(facts, record) : undefined;
  return listNightOptions(facts, { right: record.night, notReached: passedOver }, { explain });
}

/** The night before is chosen by a slip of its own: it ends on the date asked for. */
function explainNightBefore({ labels, today }: QuizFacts, record: NightRecord): ElementContent[] | undefined {
  if (record.beginsWith === 'midnight') return undefined;
  const label = record.date > today ? 'quiz-means-night-before-count' : 'quiz-means-night-before';
  return fillLabel(labels, label, {});
}

function renderDate(facts: QuizFacts, record: NightRecord): ElementContent[][] {
  const night = renderNight(facts, record.night.name);
  const number = String(record.nightOfMonth);
  const date = sayDate(facts, record.date);
  const sentence = fillLabel(facts.labels, 'quiz-working-date', { date, number, night });
  return record.repeat ? [sentence, fillLabel(facts.labels, 'quiz-working-said-again', { night })] : [sentence];
}

function renderNeighbours(facts: QuizFacts, record: NightRecord): ElementContent[] {
  const before = findNightBefore(facts.almanac, record);
  const after = findNightAfter(facts.almanac, record);
  if (before === undefined || after === undefined) return [];
  const render = ({ night }: { night: RunNight }) => renderNight(facts, night.name);
  return fillLabel(facts.labels, 'quiz-working-between', { before: render(before), after: render(after) });
}
