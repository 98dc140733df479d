import type { ElementContent } from 'hast';
import type { NightRecord, RunNight } from '../../calendar/almanac-types.ts';
import { fillLabel } from '../../content/fill-label.ts';
import { foldText } from '../fold-text.ts';
import type { QuizFacts } from '../model.ts';
import { isMonthAlone, lookAtMonth } from './month-look.ts';
import { listKnownNights } from './neighbours.ts';
import type { QuestionInstance, QuestionKind } from './question-instance.ts';
import { createSlips } from './slips.ts';
import { joinContent, joinSentences, renderNight, renderText } from './working.ts';

/**
 * A number to write: "How many beats has Open Channel, when each of its names is said on one beat?" for each group, and
 * "How many nights of Frost Month belong to Open Channel?" for each group in each month asked about. The first goes by
 * the list of names, the second by the nights that come: they differ where a name is left out or said twice.
 * A group whose name another one has is not asked about, nor a month beside one of the same name.
 */
export const beatsInGroup: QuestionKind = {
  about: 'How many beats or nights has a group?',
  levels: [
    'the beats of a group, by the list of names',
    'the nights of a group in a month that says each of its names once',
    'the nights of a group in a month that leaves names out or says them twice',
  ],
  list(facts) {
    const groups = listGroups(facts);
    const records = listKnownNights(facts.almanac, facts.from, facts.to);
    const firsts = records.filter(({ month }, place) => month.firstDate !== records[place - 1]?.month.firstDate);
    const named = firsts.filter((first) => isMonthAlone(facts.almanac, first));
    return [
      ...groups.map((group) => makeListed(facts, group, records)),
      ...named.flatMap((first) => groups.flatMap((group) => makeInMonth(facts, group, first, records))),
    ];
  },
};

/** A group with its names. */
interface Group {
  /** 1-based. */
  readonly number: number;
  readonly name: string;
  readonly nights: readonly RunNight[];
}

function listGroups({ almanac }: QuizFacts): Group[] {
  const folded = almanac.rules.groups.map(({ name }) => foldText(name));
  return almanac.rules.groups.flatMap(({ name }, place) => {
    const nights = almanac.run.filter(({ groupNumber }) => groupNumber === place + 1);
    const isAlone = folded.indexOf(folded[place] ?? '') === folded.lastIndexOf(folded[place] ?? '');
    return isAlone && nights.length > 0 ? [{ number: place + 1, name, nights }] : [];
  });
}

function makeListed(facts: QuizFacts, group: Group, records: readonly NightRecord[]): QuestionInstance {
  const { labels } = facts;
  const beats = group.nights.length;
  return {
    kind: 'line',
    asks: `beats of group ${group.number}`,
    tells: [],
    level: 1,
    hardness: { nights: 0, hurdle: false },
    about: listAbout(group, records),
    unit: labels.text('quiz-unit-beats'),
    forgive: { case: true, accents: true },
    listAnswers: () => [renderText(String(beats))],
    listSlips: () =>
      createSlips(beats, [
        [beats * 2, fillLabel(labels, 'quiz-slip-counted-in', {})],
        [beats + 1, fillLabel(labels, 'quiz-slip-next-group-too', {})],
        [beats - 1, fillLabel(labels, 'quiz-slip-one-left-out', {})],
        ...listNeighbours(facts, group, (number) => countNames(facts, number)),
      ]),
    renderPrompt: () => fillLabel(labels, 'quiz-ask-beats-in-group', { group: renderNight(facts, group.name) }),
    renderWorking: () => renderList(facts, 'quiz-working-beats', group.name, group.nights),
  };
}

/** One question, or none where no night of the month belongs to the group. */
function makeInMonth(
  facts: QuizFacts,
  group: Group,
  first: NightRecord,
  records: readonly NightRecord[],
): QuestionInstance[] {
  const { labels } = facts;
  const { nights } = lookAtMonth(facts.almanac, first);
  const own = nights.filter(({ night }) => night.groupNumber === group.number);
  if (own.length === 0) return [];
  const said = new Set(own.map(({ night }) => night.number));
  const hurdle = own.length !== group.nights.length || said.size !== own.length;
  const month = () => renderNight(facts, first.month.name);
  const countInMonth = (number: number) => nights.filter(({ night }) => night.groupNumber === number).length;
  return [
    {
      kind: 'line',
      asks: `nights of group ${group.number} in ${first.month.firstDate}`,
      tells: [],
      level: hurdle ? 3 : 2,
      hardness: { nights: 0, hurdle },
      about: listAbout(
        group,
        records.filter((record) => record.month.firstDate === first.month.firstDate),
      ),
      unit: labels.text('quiz-unit-nights'),
      forgive: { case: true, accents: true },
      listAnswers: () => [renderText(String(own.length))],
      listSlips: () =>
        createSlips(own.length, [
          [group.nights.length, fillLabel(labels, 'quiz-slip-counted-names', {})],
          [own.length + 1, fillLabel(labels, 'quiz-slip-next-group-too', {})],
          [own.length - 1, fillLabel(labels, 'quiz-slip-one-left-out', {})],
          ...listNeighbours(facts, group, countInMonth),
        ]),
      renderPrompt: () =>
        fillLabel(labels, 'quiz-ask-nights-in-group', { group: renderNight(facts, group.name), month: month() }),
      renderWorking: () =>
        joinSentences([
          renderList(
            facts,
            'quiz-working-nights-of-group',
            group.name,
            own.map(({ night }) => night),
          ),
          ...renderDifference(facts, group, own),
        ]),
    },
  ];
}

function listAbout({ number, nights }: Group, records: readonly NightRecord[]): QuestionInstance['about'] {
  return {
    nights: nights.map((night) => night.number),
    dates: records.filter(({ night }) => night.groupNumber === number).map(({ date }) => date),
  };
}

function countNames({ almanac }: QuizFacts, groupNumber: number): number {
  return almanac.run.filter((night) => night.groupNumber === groupNumber).length;
}

/** The counts of the groups before and after, for who looked at the wrong line of the score. */
function listNeighbours(facts: QuizFacts, { number }: Group, count: (groupNumber: number) => number) {
  return [number - 1, number + 1].flatMap((other): [number, ElementContent[]][] => {
    const group = facts.almanac.rules.groups[other - 1];
    if (group === undefined) return [];
    return [
      [count(other), fillLabel(facts.labels, 'quiz-slip-other-group', { group: renderNight(facts, group.name) })],
    ];
  });
}

/** "Open Channel: 1 Half Shell, 2 Filling Sail, 3 Dry Seas; 3 beats." */
function renderList(
  facts: QuizFacts,
  label: 'quiz-working-beats' | 'quiz-working-nights-of-group',
  group: string,
  nights: readonly RunNight[],
): ElementContent[] {
  const counted = nights.map(({ name }, place) => [...renderText(`${place + 1}\u00A0`), ...renderNight(facts, name)]);
  const countLabel = label === 'quiz-working-beats' ? 'quiz-beats' : 'quiz-nights';
  return fillLabel(facts.labels, label, {
    group: renderNight(facts, group),
    nights: joinContent(counted, ', '),
    count: facts.labels.count(countLabel, nights.length),
  });
}

/** What is left out this month, and what is said twice. */
function renderDifference(facts: QuizFacts, group: Group, own: readonly NightRecord[]): ElementContent[][] {
  const times = (number: number) => own.filter(({ night }) => night.number === number).length;
  const render = (label: 'quiz-working-not-reached' | 'quiz-working-said-again', { name }: RunNight) =>
    fillLabel(facts.labels, label, { night: renderNight(facts, name) });
  return group.nights.flatMap((night) => {
    if (times(night.number) === 0) return [render('quiz-working-not-reached', night)];
    return times(night.number) > 1 ? [render('quiz-working-said-again', night)] : [];
  });
}
