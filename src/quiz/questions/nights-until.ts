import type { ElementContent } from 'hast';
import type { NightRecord } from '../../calendar/almanac-types.ts';
import { fillLabel } from '../../content/fill-label.ts';
import { foldName } from '../fold-text.ts';
import type { QuizFacts } from '../model.ts';
import { findNightAfter, listPassedOver, runsOn } from './neighbours.ts';
import { nameNightFact, type QuestionInstance } from './question-instance.ts';
import { joinContent, joinSentences, renderNight, renderReasons } from './working.ts';

/** Tomorrow's night is too easy to ask for, and more than this is long to count in class. Our own choice. */
const FEWEST_NIGHTS = 2;
const MOST_NIGHTS = 12;

/**
 * "Tonight is X. How many nights until Y?", a number to write: one for each of the coming nights, nearest first.
 * Tonight is the night of the lesson's date. The nights are counted as they follow each other in the almanac, over the
 * end of the month too, so a name that is left out or said twice is counted as it happens. A name is asked for only
 * as it comes next, and never tonight's.
 */
export function listNightsUntil(facts: QuizFacts): QuestionInstance[] {
  const nights = listComingNights(facts);
  const tonight = facts.almanac.nightOn(facts.today);
  const said = new Set([foldName(tonight.night)]);
  return nights.flatMap((night, place) => {
    const name = foldName(night.night);
    if (said.has(name)) return [];
    said.add(name);
    return place + 1 < FEWEST_NIGHTS ? [] : [makeInstance(facts, tonight, nights.slice(0, place + 1), night)];
  });
}

function listComingNights(facts: QuizFacts): NightRecord[] {
  const nights: NightRecord[] = [];
  let last: NightRecord | undefined = facts.almanac.nightOn(facts.today);
  while (nights.length < MOST_NIGHTS) {
    last = findNightAfter(facts.almanac, last);
    if (last === undefined) break;
    nights.push(last);
  }
  return nights;
}

/** @param counted The nights after tonight, up to the one asked for. */
function makeInstance(
  facts: QuizFacts,
  tonight: NightRecord,
  counted: readonly NightRecord[],
  asked: NightRecord,
): QuestionInstance {
  const { labels } = facts;
  return {
    kind: 'line',
    asks: `nights until ${asked.date}`,
    tells: [nameNightFact(tonight.date)],
    hardness: { nights: counted.length, hurdle: !runsOn([tonight, ...counted]) },
    unit: labels.text('quiz-unit-nights'),
    writeAnswer: () => labels.count('quiz-nights', counted.length),
    renderPrompt: () =>
      fillLabel(labels, 'quiz-ask-nights-until', {
        tonight: renderNight(facts, tonight.night.name),
        night: renderNight(facts, asked.night.name),
      }),
    renderWorking: () =>
      joinSentences([
        fillLabel(labels, 'quiz-working-count', { nights: renderCount(facts, counted) }),
        ...renderPassedOver(facts, [tonight, ...counted]),
        fillLabel(labels, 'quiz-working-counted-tonight', { number: String(counted.length + 1) }),
      ]),
  };
}

/** "1 Clear Shell, 2 Wide Shell", to say aloud. */
function renderCount(facts: QuizFacts, counted: readonly NightRecord[]): ElementContent[] {
  const parts = counted.map((record, place): ElementContent[] => [
    { type: 'text', value: `${place + 1}\u00A0` },
    ...renderNight(facts, record.night.name),
  ]);
  return joinContent(parts, ', ');
}

function renderPassedOver(facts: QuizFacts, records: readonly NightRecord[]): ElementContent[][] {
  const missing = records.flatMap((record, place) => {
    const next = records[place + 1];
    return next === undefined ? [] : listPassedOver(facts.almanac.run, record, next);
  });
  return renderReasons(
    facts,
    missing.map(({ name }) => ({ name, reason: 'not-reached' })),
  );
}
