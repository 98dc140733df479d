import type { ElementContent } from 'hast';
import { listUp, type Stretch } from '../../calendar/above-horizon.ts';
import { MS_PER_DAY } from '../../calendar/day-number.ts';
import { isMoonTooNearSun } from '../../calendar/evening-sky.ts';
import { requireLocalInstant } from '../../calendar/local-instant.ts';
import { findMoonWhereabouts, type MoonWhereabouts } from '../../calendar/moon-whereabouts.ts';
import type { CivilDate, InstantMs, Place } from '../../calendar/rules.ts';
import { computeLighting, computeStand } from '../../calendar/sky.ts';
import { addDays } from '../../content/civil-date.ts';
import { fillLabel } from '../../content/fill-label.ts';
import type { QuizFacts } from '../model.ts';
import { namePhase } from './moon-words.ts';
import type { Level, QuestionInstance, QuestionKind } from './question-instance.ts';
import { sayMoment } from './say-moment.ts';
import { joinSentences } from './working.ts';
import { listWrongPlaces } from './wrong-places.ts';

/** "Where is the Moon on Friday 31 July at 8:30 pm?", a choice of four places of which the Moon is in one at most. */
export const moonUpAt: QuestionKind = {
  about: 'whether the Moon is up at a time of day on a date, and on which side of the sky, or whether it has set',
  levels: [
    'the question says when it rises and sets; not about new Moon, when that is near the Sun',
    'it says the shape of the Moon',
    'the date and the time alone',
  ],
  list: listMoonUpAt,
};

/** Times of day that children know, besides those of the school. */
const KNOWN_TIMES = ['06:00', '12:00'] as const;
const MIDNIGHT = '00:00';

/** An instant at which it is beyond doubt where the Moon is, and that nobody is led to look near the Sun for. */
interface MoonMoment {
  readonly date: CivilDate;
  readonly atMs: InstantMs;
  readonly whereabouts: MoonWhereabouts;
  /** When it comes up and goes down next to that instant; absent where either is not known, or is near the Sun by day. */
  readonly up?: Stretch;
}

function listMoonUpAt(facts: QuizFacts): QuestionInstance[] {
  return listMoments(facts).flatMap((moment) => {
    const levels = moment.up === undefined ? ([2, 3] as const) : ([1, 2, 3] as const);
    return levels.map((level) => makeInstance(facts, moment, level));
  });
}

function listMoments(facts: QuizFacts): MoonMoment[] {
  const { place } = facts.almanac;
  const asked = listInstants(facts);
  const [first, last] = [asked[0], asked.at(-1)];
  if (first === undefined || last === undefined) return [];
  const within = { fromMs: first.atMs - MARGIN_MS, untilMs: last.atMs + MARGIN_MS };
  const moonUp = listUp('moon', place, within);
  const tellable = new Set(moonUp.filter((up) => isTellable(place, up, within)));
  return asked.flatMap(({ date, atMs }) => {
    const whereabouts = findMoonWhereabouts(place, atMs, moonUp);
    if (whereabouts === undefined || isMoonTooNearSun(place, atMs)) return [];
    const up = findUp(whereabouts, atMs, moonUp);
    return { date, atMs, whereabouts, ...(up !== undefined && tellable.has(up) ? { up } : {}) };
  });
}

/**
 * Beyond the first and the last instant, where rises and sets next to them are looked for: but for the far north and
 * south, all are there.
 */
const MARGIN_MS = 1.25 * MS_PER_DAY;

/** Whether rise and set are both known, and neither is a time at which to look would be to look near the Sun. */
function isTellable(place: Place, up: Stretch, within: Stretch): boolean {
  const isWhole = up.fromMs > within.fromMs && up.untilMs < within.untilMs;
  return isWhole && !isMoonTooNearSun(place, up.fromMs) && !isMoonTooNearSun(place, up.untilMs);
}

/** The instants asked about, in order; midnight is the end of its day. Dates that the place left out have none. */
function listInstants({ almanac, school, from, to }: QuizFacts): { date: CivilDate; atMs: InstantMs }[] {
  const clocks = new Set([...KNOWN_TIMES, school.classBegins, school.classEnds, school.bedtime]);
  clocks.delete(MIDNIGHT);
  const times = [...[...clocks].sort().map((clock) => ({ clock, days: 0 })), { clock: MIDNIGHT, days: 1 }];
  const instants: { date: CivilDate; atMs: InstantMs }[] = [];
  for (let date = from; date <= to; date = addDays(date, 1)) {
    for (const { clock, days } of times) {
      const atMs = findInstant(almanac.place.timeZone, addDays(date, days), clock);
      if (atMs !== undefined) instants.push({ date, atMs });
    }
  }
  return instants;
}

function findInstant(timeZone: string, date: CivilDate, clock: string): InstantMs | undefined {
  try {
    return requireLocalInstant(timeZone, date, clock);
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

/** The stretch above the horizon that a place is about: the one it is in, the last one, or the one to come. */
function findUp(whereabouts: MoonWhereabouts, atMs: InstantMs, moonUp: readonly Stretch[]): Stretch | undefined {
  if (whereabouts === 'has-set') return moonUp.findLast(({ untilMs }) => untilMs <= atMs);
  return moonUp.find(({ untilMs }) => untilMs > atMs);
}

function makeInstance(facts: QuizFacts, moment: MoonMoment, level: Level): QuestionInstance {
  const { date, atMs, whereabouts } = moment;
  return {
    kind: 'choice',
    asks: `Moon of ${date} at ${atMs}`,
    tells: [],
    level,
    hardness: { nights: 0, hurdle: false },
    about: { nights: listNights(facts, atMs), dates: [date] },
    renderPrompt: () => renderPrompt(facts, moment, level),
    renderRight: () => renderPlace(facts, whereabouts),
    listWrongSets: () => {
      const isLight = computeStand('sun', facts.almanac.place, atMs).altitudeDegrees > 0;
      const wrong = listWrongPlaces(whereabouts, isLight);
      return [
        wrong.map(({ place, reason }) => ({
          content: renderPlace(facts, place),
          means: fillLabel(facts.labels, `quiz-means-moon-${reason}`, {}),
        })),
      ];
    },
    renderWorking: () => renderWorking(facts, moment),
  };
}

function listNights({ almanac }: QuizFacts, atMs: InstantMs): number[] {
  try {
    return [almanac.nightAt(atMs).night.number];
  } catch (error) {
    // The sky can be asked about where the calendar cannot tell the night, and beyond the years it covers.
    if (error instanceof RangeError) return [];
    throw error;
  }
}

function renderPlace({ labels }: QuizFacts, place: MoonWhereabouts): ElementContent[] {
  return fillLabel(labels, `quiz-moon-${place}`, {});
}

function renderPrompt(facts: QuizFacts, { atMs, up }: MoonMoment, level: Level): ElementContent[] {
  const { labels } = facts;
  const when = sayMoment(facts, atMs);
  if (level === 1 && up !== undefined) {
    const times = { rise: sayMoment(facts, up.fromMs), set: sayMoment(facts, up.untilMs) };
    return fillLabel(labels, 'quiz-ask-moon-at-between', { ...times, when });
  }
  if (level === 3) return fillLabel(labels, 'quiz-ask-moon-at', { when });
  const { litFraction, waxing } = computeLighting(atMs);
  return fillLabel(labels, 'quiz-ask-moon-at-of-phase', { phase: namePhase({ litFraction, waxing }, labels), when });
}

function renderWorking(facts: QuizFacts, { whereabouts, up }: MoonMoment): ElementContent[] {
  const { labels } = facts;
  const times =
    up === undefined
      ? []
      : [
          fillLabel(labels, 'quiz-working-rise-and-set', {
            rise: sayMoment(facts, up.fromMs),
            set: sayMoment(facts, up.untilMs),
          }),
        ];
  return joinSentences([...times, fillLabel(labels, `quiz-working-moon-${whereabouts}`, {})]);
}
