import type { ElementContent } from 'hast';
import type { NightRecord, RunNight } from '../../calendar/almanac-types.ts';
import { fillLabel } from '../../content/fill-label.ts';
import { type DistractorReason, hasDistractors, listDistractorSets, type OptionRing } from '../distractors.ts';
import { keepEvenLengths } from '../even-lengths.ts';
import { foldName, foldText } from '../fold-text.ts';
import type { QuizFacts } from '../model.ts';
import { gradeFromTonight } from './grade.ts';
import { findMirror } from './mirror-night.ts';
import { findNightAfter, findNightBefore, listKnownNights } from './neighbours.ts';
import type { QuestionInstance, QuestionKind, WrongOption } from './question-instance.ts';
import { sayDate, sayNightDate } from './say-date.ts';
import { joinContent, joinSentences, renderNight } from './working.ts';

/**
 * "Which group does Round Moon belong to?", a choice: one for each name of the nights asked about, and one for each of
 * their dates. A name that stands in two groups is not asked about; its dates are.
 */
export const groupOfNight: QuestionKind = {
  about: 'Which group does a night belong to?',
  levels: [
    'the night is named',
    'its date is given',
    'its date is given, and the night is the first or last of its group, or beyond the end of the month',
  ],
  list(facts) {
    const records = listKnownNights(facts.almanac, facts.from, facts.to).filter(({ night }) =>
      hasDistractors(makeRing(facts, night)),
    );
    const named = keepFirst(records).filter((record) => isOfOneGroup(facts, record));
    return [...named.map((record) => makeNamed(facts, record)), ...records.map((record) => makeDated(facts, record))];
  },
};

/** The first night of each name, as names are folded. */
function keepFirst(records: readonly NightRecord[]): NightRecord[] {
  const said = new Set<string>();
  return records.filter(({ night }) => !said.has(foldName(night)) && said.add(foldName(night)));
}

function isOfOneGroup({ almanac }: QuizFacts, { night }: NightRecord): boolean {
  const alike = almanac.run.filter((other) => foldName(other) === foldName(night));
  return alike.every(({ groupNumber }) => groupNumber === night.groupNumber);
}

function makeRing({ almanac }: QuizFacts, night: RunNight): OptionRing {
  const nights = almanac.run.filter(({ groupNumber }) => groupNumber === night.groupNumber);
  const middle = nights[Math.floor((nights.length - 1) / 2)] ?? night;
  const mirror = almanac.run[findMirror(almanac, middle.number - 1)] ?? night;
  return {
    texts: almanac.rules.groups.map(({ name }) => foldText(name)),
    right: night.groupNumber - 1,
    across: mirror.groupNumber - 1,
  };
}

function makeNamed(facts: QuizFacts, record: NightRecord): QuestionInstance {
  const { night, date } = record;
  return {
    kind: 'choice',
    asks: `group of night ${night.number}`,
    tells: [],
    level: 1,
    hardness: { nights: 0, hurdle: false },
    about: { nights: [night.number], dates: [date] },
    renderRight: () => renderNight(facts, night.group),
    listWrongSets: () => listWrongSets(facts, record, []),
    renderPrompt: () => fillLabel(facts.labels, 'quiz-ask-group-of-night', { night: renderNight(facts, night.name) }),
    renderWorking: () => renderGroup(facts, night),
  };
}

function makeDated(facts: QuizFacts, record: NightRecord): QuestionInstance {
  const { night, date, nightOfMonth } = record;
  const beside = [findNightBefore(facts.almanac, record), findNightAfter(facts.almanac, record)];
  const grade = gradeFromTonight(facts, record);
  const isEdge = beside.some((other) => other !== undefined && other.night.groupNumber !== night.groupNumber);
  return {
    kind: 'choice',
    asks: `group on ${date}`,
    tells: [],
    level: isEdge || grade.level === 3 ? 3 : 2,
    hardness: grade.hardness,
    about: { nights: [night.number], dates: [date] },
    renderRight: () => renderNight(facts, night.group),
    listWrongSets: () => listWrongSets(facts, record, beside),
    renderPrompt: () => fillLabel(facts.labels, 'quiz-ask-group-on-date', { date: sayNightDate(facts, record) }),
    renderWorking: () =>
      joinSentences([
        fillLabel(facts.labels, 'quiz-working-date', {
          date: sayDate(facts, date),
          number: String(nightOfMonth),
          night: renderNight(facts, night.name),
        }),
        renderGroup(facts, night),
      ]),
  };
}

/** @param beside The nights before and after, where the night has to be found first. */
function listWrongSets(
  facts: QuizFacts,
  { night }: NightRecord,
  beside: readonly (NightRecord | undefined)[],
): readonly (readonly WrongOption[])[] {
  const { groups } = facts.almanac.rules;
  const sets = listDistractorSets(makeRing(facts, night)).map((set) =>
    set.flatMap(({ place, reason }) => {
      const group = groups[place];
      if (group === undefined) return [];
      const content = renderNight(facts, group.name);
      return [{ content, means: renderMeaning(facts, place + 1, reason, beside) }];
    }),
  );
  return keepEvenLengths(renderNight(facts, night.group), sets);
}

const MEANS_LABELS = {
  'just-before': 'quiz-means-group-before',
  'just-after': 'quiz-means-group-after',
  earlier: 'quiz-means-group-other',
  later: 'quiz-means-group-other',
  across: 'quiz-means-group-mirror',
  'near-across': 'quiz-means-group-other',
  'not-reached': 'quiz-means-group-other',
} as const satisfies Record<DistractorReason, string>;

function renderMeaning(
  facts: QuizFacts,
  groupNumber: number,
  reason: DistractorReason,
  [before, after]: readonly (NightRecord | undefined)[],
): ElementContent[] {
  const slip = [before, after].find((other) => other?.night.groupNumber === groupNumber);
  if (slip === undefined) return fillLabel(facts.labels, MEANS_LABELS[reason], {});
  const label = slip === before ? 'quiz-means-group-one-early' : 'quiz-means-group-one-late';
  return fillLabel(facts.labels, label, { night: renderNight(facts, slip.night.name) });
}

/** "Half Shell belongs to Open Channel: Half Shell, Filling Sail, …" */
function renderGroup(facts: QuizFacts, night: RunNight): ElementContent[] {
  const names = facts.almanac.run.filter(({ groupNumber }) => groupNumber === night.groupNumber);
  return fillLabel(facts.labels, 'quiz-working-group', {
    night: renderNight(facts, night.name),
    group: renderNight(facts, night.group),
    nights: joinContent(
      names.map(({ name }) => renderNight(facts, name)),
      ', ',
    ),
  });
}
