import type { ElementContent } from 'hast';
import type { NightRecord } from '../../calendar/almanac-types.ts';
import { fillLabel } from '../../content/fill-label.ts';
import { foldName } from '../fold-text.ts';
import type { QuizFacts } from '../model.ts';
import { findMirror } from './mirror-night.ts';
import { isSaidOnce, lookAtMonth } from './month-look.ts';
import { listKnownNights, runsOn } from './neighbours.ts';
import type { Level, QuestionInstance, QuestionKind } from './question-instance.ts';
import { sayNightDate } from './say-date.ts';
import { joinContent, joinSentences, renderNight } from './working.ts';

/** Nights to put in order: few enough to keep in mind, more orders than can be guessed. Our own choice. */
const NIGHTS = 4;

/** Steps from night to night where some lie between; they change from question to question. */
const GAPS = [
  [2, 1, 2],
  [1, 3, 1],
  [3, 1, 2],
] as const;

/** How far the two halves of the month must be apart to be mixed. */
const NEAREST_MIRROR = 4;

/**
 * Four nights to put in the order in which they come, in a month that is named, or from a date on where the month ends
 * between them. Each name is said once there, so there is one order only.
 */
export const orderNights: QuestionKind = {
  about: 'Put four nights in the order in which they come.',
  levels: [
    'four nights that follow each other',
    'four nights with others between them',
    'nights on both sides of the end of the month or of a name that is left out, or two pairs with the same shape of Moon',
  ],
  list(facts) {
    const records = listKnownNights(facts.almanac, facts.from, facts.to);
    const rows = records.flatMap((_, place) => listRowsFrom(facts, records, place));
    const known = new Set(rows.map(({ asks }) => asks));
    // Where names between are left out, two mirrored pairs can be four nights that were asked for already.
    return [...rows, ...listMirrorRows(facts, records).filter(({ asks }) => !known.has(asks))];
  },
};

/** Four nights from a place of the list on: those that follow each other, and some further apart. */
function listRowsFrom(facts: QuizFacts, records: readonly NightRecord[], place: number): QuestionInstance[] {
  const close = pickNights(records, place, [1, 1, 1]);
  const wide = pickNights(records, place, GAPS[place % GAPS.length] ?? GAPS[0]);
  return [
    ...(isAsked(facts, close) ? [makeInstance(facts, close.asked, runsOn(close.stretch) ? 1 : 3)] : []),
    ...(isAsked(facts, wide) && runsOn(wide.stretch) ? [makeInstance(facts, wide.asked, 2)] : []),
  ];
}

/** Nights to put in order, and all nights from the first to the last of them. */
interface Row {
  readonly asked: readonly NightRecord[];
  readonly stretch: readonly NightRecord[];
}

function pickNights(records: readonly NightRecord[], place: number, gaps: readonly [number, number, number]): Row {
  const [one, two, three] = gaps;
  const last = place + one + two + three;
  const asked = [place, place + one, place + one + two, last].flatMap((each) => records[each] ?? []);
  return { asked, stretch: records.slice(place, last + 1) };
}

/** Whether all are there, and each name is said once where the question looks: in its month, or from the first night on. */
function isAsked({ almanac }: QuizFacts, { asked, stretch }: Row): boolean {
  if (asked.length < NIGHTS) return false;
  // A date that cannot be told would be a gap in the count.
  if (!stretch.every((record, place) => place === 0 || stretch[place - 1]?.endsMs === record.beginsMs)) return false;
  if (asked[0]?.month.firstDate === asked.at(-1)?.month.firstDate) {
    return asked.every((record) => isSaidOnce(almanac, record));
  }
  const names = stretch.map(({ night }) => foldName(night));
  return asked.every(({ night }) => names.filter((name) => name === foldName(night)).length === 1);
}

/** Two nights beside each other, and the two that mirror them in the other half of the same month. */
function listMirrorRows(facts: QuizFacts, records: readonly NightRecord[]): QuestionInstance[] {
  const made = new Set<string>();
  return records.flatMap((first) => {
    const { nights } = lookAtMonth(facts.almanac, first);
    const mirrored = listMirrored(facts, first.night.number);
    const asked = nights.filter(({ night }) => mirrored.includes(night.number));
    const key = asked.map(({ date }) => date).join();
    const isWhole = asked.length === NIGHTS && asked.every((record) => isSaidOnce(facts.almanac, record));
    if (!isWhole || made.has(key)) return [];
    made.add(key);
    return [makeInstance(facts, asked, 3)];
  });
}

/** The numbers of a night, the next one and their mirrors, in order; none where the two pairs do not lie apart. */
function listMirrored({ almanac }: QuizFacts, number: number): number[] {
  const mirrors = [number - 1, number].map((place) => findMirror(almanac, place) + 1);
  const sorted = [number, number + 1, ...mirrors].sort((one, other) => one - other);
  const [first = 0, second = 0, third = 0, fourth = 0] = sorted;
  const arePairs = second - first === 1 && fourth - third === 1;
  return arePairs && third - second >= NEAREST_MIRROR ? sorted : [];
}

/** @param asked In the right order. */
function makeInstance(facts: QuizFacts, asked: readonly NightRecord[], level: Level): QuestionInstance {
  const dates = asked.map(({ date }) => date);
  return {
    kind: 'order',
    asks: `order of ${dates.join(', ')}`,
    tells: [],
    level,
    hardness: { nights: 0, hurdle: level === 3 },
    about: { nights: asked.map(({ night }) => night.number), dates },
    renderItems: () => asked.map(({ night }) => renderNight(facts, night.name)),
    renderPrompt: () => renderPrompt(facts, asked),
    renderWorking: () => renderWorking(facts, asked),
  };
}

function renderPrompt(facts: QuizFacts, asked: readonly NightRecord[]): ElementContent[] {
  const [first, last] = [asked[0], asked.at(-1)];
  if (first === undefined || last === undefined) return [];
  if (first.month.firstDate !== last.month.firstDate) {
    return fillLabel(facts.labels, 'quiz-ask-order-from', { date: sayNightDate(facts, first) });
  }
  return fillLabel(facts.labels, 'quiz-ask-order-in-month', { month: renderNight(facts, first.month.name) });
}

/** "In this order: Lost in Light is night 29, Hidden Moon is night 1. Frost Month has 29 nights; …" */
function renderWorking(facts: QuizFacts, asked: readonly NightRecord[]): ElementContent[] {
  const { labels } = facts;
  const numbered = asked.map(({ night, nightOfMonth }) =>
    fillLabel(labels, 'quiz-working-numbered', { night: renderNight(facts, night.name), number: String(nightOfMonth) }),
  );
  const ends = asked.flatMap((record, place) => {
    const next = asked[place + 1];
    if (next === undefined || next.month.firstDate === record.month.firstDate) return [];
    return [
      fillLabel(labels, 'quiz-working-month-ends', {
        month: renderNight(facts, record.month.name),
        number: String(record.month.length),
        night: renderNight(facts, next.night.name),
      }),
    ];
  });
  return joinSentences([fillLabel(labels, 'quiz-working-order', { nights: joinContent(numbered, ', ') }), ...ends]);
}
