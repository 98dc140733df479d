import type { ElementContent } from 'hast';
import type { NightRecord } from '../../calendar/almanac-types.ts';
import { fillLabel } from '../../content/fill-label.ts';
import { hasDistractors, listDistractorSets } from '../distractors.ts';
import type { QuizFacts } from '../model.ts';
import { findNightAfter, findNightBefore, listKnownNights } from './neighbours.ts';
import { nameNightFact, type QuestionInstance } from './question-instance.ts';
import { joinSentences, renderNight, renderReasons } from './working.ts';

/** Nights differ from a day's length by minutes only. */
const DAY_MS = 86_400_000;

/** "Which night is Friday 31 July?", a choice: one for each date between the two, in order. */
export function listNightOfDate(facts: QuizFacts): QuestionInstance[] {
  const instances: QuestionInstance[] = [];
  const tonight = facts.almanac.nightOn(facts.today);
  for (const record of listKnownNights(facts.almanac, facts.from, facts.to)) {
    if (!hasDistractors(facts.almanac.run, record.night)) continue;
    instances.push({
      kind: 'choice',
      asks: nameNightFact(record.date),
      tells: [],
      hardness: {
        nights: Math.round(Math.abs(record.beginsMs - tonight.beginsMs) / DAY_MS),
        hurdle: record.month.firstDate !== tonight.month.firstDate,
      },
      right: record.night.name,
      listWrongSets: () => listDistractorSets(facts.almanac.run, record.night),
      renderPrompt: () => fillLabel(facts.labels, PROMPT_LABELS[record.beginsWith], { date: nameDate(facts, record) }),
      renderWorking: (wrong) =>
        joinSentences([...renderDate(facts, record), renderNeighbours(facts, record), ...renderReasons(facts, wrong)]),
    });
  }
  return instances;
}

/** A day of the week touches two nights; the words say from when on the night of a date is meant. */
const PROMPT_LABELS = {
  sunset: 'quiz-ask-night-from-sunset',
  midnight: 'quiz-ask-night-of-date',
  sunrise: 'quiz-ask-night-from-sunrise',
} as const;

function nameDate(facts: QuizFacts, record: NightRecord): string {
  return facts.labels.date(record.date, 'day');
}

function renderDate(facts: QuizFacts, record: NightRecord): ElementContent[][] {
  const night = renderNight(facts, record.night.name);
  const number = String(record.nightOfMonth);
  const date = fillLabel(facts.labels, 'quiz-working-date', { date: nameDate(facts, record), number, night });
  return record.repeat ? [date, fillLabel(facts.labels, 'quiz-working-said-again', { night })] : [date];
}

function renderNeighbours(facts: QuizFacts, record: NightRecord): ElementContent[] {
  const before = findNightBefore(facts.almanac, record);
  const after = findNightAfter(facts.almanac, record);
  if (before === undefined || after === undefined) return [];
  return fillLabel(facts.labels, 'quiz-working-between', {
    before: renderNight(facts, before.night.name),
    after: renderNight(facts, after.night.name),
  });
}
