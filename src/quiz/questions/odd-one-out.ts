import type { ElementContent } from 'hast';
import type { NightRecord, RunNight } from '../../calendar/almanac-types.ts';
import { fillLabel } from '../../content/fill-label.ts';
import { keepEvenLengths } from '../even-lengths.ts';
import { foldName, foldText } from '../fold-text.ts';
import type { QuizFacts } from '../model.ts';
import { listKnownNights } from './neighbours.ts';
import type { Level, QuestionInstance, QuestionKind, WrongOption } from './question-instance.ts';
import { joinContent, joinSentences, renderNight } from './working.ts';

/** So many nights of one group stand against the odd one. */
const OF_ONE_GROUP = 3;

/**
 * "Three of these nights belong to one group. Which one does not?", a choice: for each name of the nights asked about,
 * one beside each other group that has three nights. The three follow each other, so that no other reading makes one of
 * them the odd one. Names and groups that are there twice are not asked about.
 */
export const oddOneOut: QuestionKind = {
  about: 'Which of four nights belongs to another group than the rest?',
  levels: [
    'the group of the three is named, and far from the odd one',
    'the three are of a group next to that of the odd one',
    'the odd one comes just before or just after the three',
  ],
  list(facts) {
    const clear = listClearNights(facts);
    const groups = listGroups(facts, clear);
    return listOddNights(facts, clear).flatMap((record) =>
      groups
        .filter(({ nights }) => nights[0]?.groupNumber !== record.night.groupNumber)
        .map((group) => makeInstance(facts, record, group)),
    );
  },
};

/** A group of which three nights may be shown. */
interface Group {
  readonly name: string;
  /** Three or more, in order. */
  readonly nights: readonly RunNight[];
}

function listGroups({ almanac }: QuizFacts, clear: ReadonlySet<number>): Group[] {
  return almanac.rules.groups.flatMap(({ name }, place) => {
    const nights = almanac.run.filter(({ groupNumber }) => groupNumber === place + 1);
    return nights.length >= OF_ONE_GROUP && nights.every((night) => clear.has(night.number)) ? [{ name, nights }] : [];
  });
}

/** The nights asked about, each name once. */
function listOddNights(facts: QuizFacts, clear: ReadonlySet<number>): NightRecord[] {
  const records = listKnownNights(facts.almanac, facts.from, facts.to).filter(({ night }) => clear.has(night.number));
  return [...new Map(records.toReversed().map((record) => [record.night.number, record])).values()].toReversed();
}

/** The numbers of the nights whose name, and that of whose group, is there once. */
function listClearNights({ almanac }: QuizFacts): ReadonlySet<number> {
  const names = countTexts(almanac.run.map(foldName));
  const groups = countTexts(almanac.rules.groups.map(({ name }) => foldText(name)));
  const isClear = (night: RunNight) => names.get(foldName(night)) === 1 && groups.get(foldText(night.group)) === 1;
  return new Set(almanac.run.filter(isClear).map(({ number }) => number));
}

function countTexts(texts: readonly string[]): Map<string, number> {
  const times = new Map<string, number>();
  for (const text of texts) times.set(text, (times.get(text) ?? 0) + 1);
  return times;
}

function makeInstance(facts: QuizFacts, { night, date }: NightRecord, group: Group): QuestionInstance {
  const level = findLevel(facts, night, group);
  return {
    kind: 'choice',
    asks: `odd night ${night.number} beside group ${group.nights[0]?.groupNumber}`,
    tells: [],
    level,
    hardness: { nights: 0, hurdle: level === 3 },
    about: { nights: [night.number], dates: [date] },
    renderRight: () => renderNight(facts, night.name),
    listWrongSets: () => listWrongSets(facts, night, group, level),
    renderPrompt: () =>
      level === 1
        ? fillLabel(facts.labels, 'quiz-ask-odd-one-of-group', { group: renderNight(facts, group.name) })
        : fillLabel(facts.labels, 'quiz-ask-odd-one-out', {}),
    renderWorking: () => renderWorking(facts, night, group),
  };
}

/** How far the odd one is from the group: the run is taken as a ring, as the last nights lead to the first. */
function findLevel({ almanac }: QuizFacts, night: RunNight, { nights }: Group): Level {
  const { length } = almanac.run;
  const steps = nights.map(({ number }) => Math.abs(number - night.number));
  if (steps.some((step) => step === 1 || step === length - 1)) return 3;
  const groups = Math.abs((nights[0]?.groupNumber ?? 0) - night.groupNumber);
  return groups === 1 || groups === almanac.rules.groups.length - 1 ? 2 : 1;
}

function listWrongSets(
  facts: QuizFacts,
  odd: RunNight,
  group: Group,
  level: Level,
): readonly (readonly WrongOption[])[] {
  const threes = group.nights.flatMap((_, place) => {
    const three = group.nights.slice(place, place + OF_ONE_GROUP);
    return three.length === OF_ONE_GROUP ? [three] : [];
  });
  const near = threes.filter((three) => findLevel(facts, odd, { ...group, nights: three }) === level);
  const sets = (near.length > 0 ? near : threes).map((three) =>
    three.map((night) => ({ content: renderNight(facts, night.name), means: renderMeaning(facts, night, group) })),
  );
  return keepEvenLengths(renderNight(facts, odd.name), sets);
}

function renderMeaning(facts: QuizFacts, night: RunNight, { name, nights }: Group): ElementContent[] {
  const values = { group: renderNight(facts, name) };
  if (night === nights[0]) return fillLabel(facts.labels, 'quiz-means-odd-first', values);
  if (night === nights.at(-1)) return fillLabel(facts.labels, 'quiz-means-odd-last', values);
  return fillLabel(facts.labels, 'quiz-means-odd-middle', values);
}

/** "Half Shell belongs to Open Channel. The others belong to Reed Edge: Silver Thread, …" */
function renderWorking(facts: QuizFacts, odd: RunNight, group: Group): ElementContent[] {
  const { labels } = facts;
  return joinSentences([
    fillLabel(labels, 'quiz-working-odd', {
      night: renderNight(facts, odd.name),
      group: renderNight(facts, odd.group),
    }),
    fillLabel(labels, 'quiz-working-odd-others', {
      group: renderNight(facts, group.name),
      nights: joinContent(
        group.nights.map(({ name }) => renderNight(facts, name)),
        ', ',
      ),
    }),
  ]);
}
