import type { ElementContent } from 'hast';
import type { NightRecord } from '../../calendar/almanac-types.ts';
import { fillLabel } from '../../content/fill-label.ts';
import { foldName } from '../fold-text.ts';
import type { QuizFacts, Slip } from '../model.ts';
import { findNightAfter, listPassedOver, runsOn } from './neighbours.ts';
import { nameNightFact, type QuestionInstance, type QuestionKind } from './question-instance.ts';
import { createSlips } from './slips.ts';
import { joinContent, joinSentences, renderMissing, renderNight, renderText } from './working.ts';

/** Tomorrow's night is too easy to ask for, and more than this is long to count in class. Our own choice. */
const FEWEST_NIGHTS = 2;
const MOST_NIGHTS = 12;

/** As many as a hand has fingers. */
const FEW_NIGHTS = 5;

/**
 * "Tonight is X. How many nights until Y?", a number to write: one for each of the coming nights that are asked about,
 * nearest first. Tonight is the night of the lesson's date. The nights are counted as they follow each other in the
 * almanac, over the end of the month too, so a name that is left out or said twice is counted as it happens. A name is
 * asked for only as it comes next, and never tonight's.
 */
export const nightsUntil: QuestionKind = {
  about: 'How many nights is it from tonight to a night?',
  levels: [
    'a night that comes within five nights',
    'a night that comes within twelve nights',
    'the same over the end of the month, or over a name that is left out or said twice',
  ],
  list(facts) {
    const tonight = facts.almanac.nightOn(facts.today);
    const said = new Set([foldName(tonight.night)]);
    const nights = listComingNights(facts, tonight);
    return nights.flatMap((night, place) => {
      const name = foldName(night.night);
      if (said.has(name)) return [];
      said.add(name);
      if (place + 1 < FEWEST_NIGHTS || night.date < facts.from) return [];
      return [makeInstance(facts, tonight, nights.slice(0, place + 1), night)];
    });
  },
};

function listComingNights({ almanac, to }: QuizFacts, tonight: NightRecord): NightRecord[] {
  const nights: NightRecord[] = [];
  let next = findNightAfter(almanac, tonight);
  while (next !== undefined && next.date <= to && nights.length < MOST_NIGHTS) {
    nights.push(next);
    next = findNightAfter(almanac, next);
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
  const hurdle = !runsOn([tonight, ...counted]);
  return {
    kind: 'line',
    asks: `nights until ${asked.date}`,
    tells: [nameNightFact(tonight.date)],
    level: hurdle ? 3 : counted.length <= FEW_NIGHTS ? 1 : 2,
    hardness: { nights: counted.length, hurdle },
    about: { nights: [asked.night.number], dates: [asked.date] },
    unit: labels.text('quiz-unit-nights'),
    forgive: { case: true, accents: true },
    listAnswers: () => [renderText(String(counted.length))],
    listSlips: () => listSlips(facts, tonight, counted, asked),
    renderPrompt: () =>
      fillLabel(labels, 'quiz-ask-nights-until', {
        tonight: renderNight(facts, tonight.night.name),
        night: renderNight(facts, asked.night.name),
      }),
    renderWorking: () =>
      joinSentences([
        renderPlaces(facts, tonight, asked, counted.length),
        fillLabel(labels, 'quiz-working-count', { nights: renderCount(facts, counted) }),
        ...renderMissing(facts, listMissing(facts, [tonight, ...counted])),
      ]),
  };
}

function listSlips(
  { almanac, labels }: QuizFacts,
  tonight: NightRecord,
  counted: readonly NightRecord[],
  asked: NightRecord,
): Slip[] {
  const { length } = almanac.run;
  const byList = (asked.night.number - tonight.night.number + length) % length;
  return createSlips(counted.length, [
    [counted.length + 1, fillLabel(labels, 'quiz-slip-counted-tonight', {})],
    [byList, fillLabel(labels, 'quiz-slip-counted-names', {})],
    [counted.length - 1, fillLabel(labels, 'quiz-slip-stopped-early', {})],
  ]);
}

/** "Round Moon is night 16; tonight is night 13; 3 nights to go." */
function renderPlaces(facts: QuizFacts, tonight: NightRecord, asked: NightRecord, nights: number): ElementContent[] {
  const { labels } = facts;
  const { length } = tonight.month;
  const shared = {
    night: renderNight(facts, asked.night.name),
    to: String(asked.nightOfMonth),
    from: String(tonight.nightOfMonth),
    count: labels.count('quiz-nights', nights),
  };
  if (asked.month.firstDate === tonight.month.firstDate) return fillLabel(labels, 'quiz-working-to-go', shared);
  const left = labels.count('quiz-nights', length - tonight.nightOfMonth);
  return fillLabel(labels, 'quiz-working-to-go-over', { ...shared, length: String(length), left });
}

/** "1 Clear Shell, 2 Wide Shell", to say aloud. */
function renderCount(facts: QuizFacts, counted: readonly NightRecord[]): ElementContent[] {
  const parts = counted.map((record, place): ElementContent[] => [
    { type: 'text', value: `${place + 1}\u00A0` },
    ...renderNight(facts, record.night.name),
  ]);
  return joinContent(parts, ', ');
}

function listMissing({ almanac }: QuizFacts, records: readonly NightRecord[]) {
  return records.flatMap((record, place) => {
    const next = records[place + 1];
    return next === undefined ? [] : listPassedOver(almanac.run, record, next);
  });
}
