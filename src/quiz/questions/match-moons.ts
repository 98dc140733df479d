import type { ElementContent } from 'hast';
import type { NightRecord } from '../../calendar/almanac-types.ts';
import { fillLabel } from '../../content/fill-label.ts';
import type { MatchedPair, QuizFacts } from '../model.ts';
import { describeDisc, nameLitAmount, renderMoonPicture } from './moon-words.ts';
import { listMoonSets, type MoonNight, type MoonSet, namesNight } from './moons-apart.ts';
import { findNightAfter, listKnownNights } from './neighbours.ts';
import type { QuestionInstance, QuestionKind } from './question-instance.ts';
import { joinSentences, renderNight } from './working.ts';

/** Pairs of a question, the same for all groups and levels; fewer where too few nights of the dates look different. */
const PAIRS = 4;
const FEWER_PAIRS = 3;
const LEVELS = 3;

/** With fewer sets the groups would get the same ones, so that fewer pairs are better. Our own choice. */
const ENOUGH_SETS = 4;

/** "Which Moon belongs to which night?": drawings of the Moon as it stands here when it is best seen, and names. */
export const matchMoons: QuestionKind = {
  about: 'match drawings of the Moon, as it stands in this sky, to the names of nights',
  levels: [
    'the Moons differ much in how much of them is lit',
    'they differ less',
    'some are mirror images: before and after full or new Moon',
  ],
  list: listMatchMoons,
};

function listMatchMoons(facts: QuizFacts): QuestionInstance[] {
  const nights = listKnownNights(facts.almanac, facts.from, facts.to).flatMap((record) => lookAtNight(facts, record));
  return chooseSets(nights).map((set) => makeInstance(facts, set));
}

/** The larger sets, unless there are too few, or a level would have none that has some of the smaller. */
function chooseSets(nights: readonly MoonNight[]): readonly MoonSet[] {
  const larger = listMoonSets(nights, PAIRS);
  const levels = new Set(larger.map(({ level }) => level));
  if (levels.size === LEVELS) return larger;
  const smaller = listMoonSets(nights, FEWER_PAIRS);
  return larger.length >= ENOUGH_SETS && smaller.every(({ level }) => levels.has(level)) ? larger : smaller;
}

/** A lit or a dark edge thinner than this is lost on a photocopy: less than a millimetre of 21. By eye. */
const LEAST_EDGE = 0.035;

/**
 * A night whose drawing may be asked for: the Moon is up in its dark, or is dark itself, what is drawn can be seen on
 * paper, and the name is said once in the month.
 */
function lookAtNight(facts: QuizFacts, record: NightRecord): MoonNight[] {
  if (record.repeat || findNightAfter(facts.almanac, record)?.repeat === true) return [];
  const moon = facts.almanac.moonBestSeen(record);
  const amount = nameLitAmount(moon.litFraction);
  if (!moon.up && amount !== 'dark') return [];
  const hasThinEdge = Math.min(moon.litFraction, 1 - moon.litFraction) < LEAST_EDGE;
  if (hasThinEdge && amount !== 'dark' && amount !== 'whole') return [];
  const words = describeDisc(moon, facts.labels);
  return namesNight(words, record) ? [] : [{ record, moon, words }];
}

function makeInstance(facts: QuizFacts, { nights, level }: MoonSet): QuestionInstance {
  const dates = nights.map(({ record }) => record.date);
  return {
    kind: 'match',
    asks: `Moons of ${dates.join(', ')}`,
    tells: [],
    level,
    hardness: { nights: 0, hurdle: false },
    about: { nights: nights.map(({ record }) => record.night.number), dates },
    renderPrompt: () => fillLabel(facts.labels, 'quiz-ask-match-moons', {}),
    renderPairs: () => nights.map((night) => renderPair(facts, night)),
    renderWorking: () => renderWorking(facts, nights, level),
  };
}

function renderPair(facts: QuizFacts, { record, moon }: MoonNight): MatchedPair {
  return { left: renderNight(facts, record.night.name), right: [renderMoonPicture(moon, facts.labels)] };
}

function renderWorking(facts: QuizFacts, nights: readonly MoonNight[], level: number): ElementContent[] {
  const { labels } = facts;
  const lines = nights.map(({ record, words }) =>
    fillLabel(labels, 'quiz-working-match-moon', {
      night: renderNight(facts, record.night.name),
      number: String(record.nightOfMonth),
      disc: words,
    }),
  );
  return joinSentences([...lines, ...(level === 3 ? [fillLabel(labels, 'quiz-working-mirror-moons', {})] : [])]);
}
