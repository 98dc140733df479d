import type { ElementContent } from 'hast';
import type { NightRecord, RunNight } from '../../calendar/almanac-types.ts';
import { fillLabel } from '../../content/fill-label.ts';
import { hasDistractors, listDistractorSets } from '../distractors.ts';
import { foldName } from '../fold-text.ts';
import type { QuizFacts } from '../model.ts';
import { findNightAfter, listPassedOver } from './neighbours.ts';
import type { QuestionInstance } from './question-instance.ts';
import { joinSentences, renderNight, renderReasons } from './working.ts';

/**
 * "Which night comes after X this month?", a choice: one for each night of the month the lesson's date lies in, in order.
 * After the last night comes the first of the next month, and a name that the month does not reach is a wrong option.
 * A name said twice in the month is not asked about: two nights come after it.
 */
export function listNextInRun(facts: QuizFacts): QuestionInstance[] {
  const records = facts.almanac.nightsOfMonth(facts.today);
  const times = new Map<string, number>();
  for (const { night } of records) times.set(foldName(night), (times.get(foldName(night)) ?? 0) + 1);
  return records.flatMap((record, place) => {
    const name = foldName(record.night);
    const next = records[place + 1] ?? findNightAfter(facts.almanac, record);
    if (next === undefined || times.get(name) !== 1 || foldName(next.night) === name) return [];
    return makeInstance(facts, record, next);
  });
}

function makeInstance(facts: QuizFacts, record: NightRecord, next: NightRecord): QuestionInstance[] {
  const { run } = facts.almanac;
  const named = [record.night];
  if (!hasDistractors(run, next.night, named)) return [];
  const missing = listPassedOver(run, record, next);
  const last = record.month.firstDate !== next.month.firstDate;
  const promptLabel = last ? 'quiz-ask-next-after-last' : 'quiz-ask-next-in-run';
  return [
    {
      kind: 'choice',
      asks: `night after ${record.date}`,
      tells: [],
      hardness: { nights: 0, hurdle: last || missing.length > 0 },
      right: next.night.name,
      listWrongSets: () => listDistractorSets(run, next.night, named, missing),
      renderPrompt: () => fillLabel(facts.labels, promptLabel, { night: renderNight(facts, record.night.name) }),
      renderWorking: (wrong) =>
        joinSentences([
          ...renderNext(facts, record, next, last),
          ...renderMissing(facts, missing),
          ...renderReasons(
            facts,
            wrong.filter(({ reason }) => reason !== 'not-reached'),
          ),
        ]),
    },
  ];
}

function renderNext(facts: QuizFacts, record: NightRecord, next: NightRecord, last: boolean): ElementContent[][] {
  const after = renderNight(facts, next.night.name);
  const sentence = fillLabel(facts.labels, 'quiz-working-next', {
    night: renderNight(facts, record.night.name),
    next: after,
  });
  if (!last) return [sentence];
  const number = String(record.month.length);
  return [sentence, fillLabel(facts.labels, 'quiz-working-month-ends', { number, night: after })];
}

function renderMissing(facts: QuizFacts, missing: readonly RunNight[]): ElementContent[][] {
  return renderReasons(
    facts,
    missing.map(({ name }) => ({ name, reason: 'not-reached' })),
  );
}
