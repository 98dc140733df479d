import type { ElementContent } from 'hast';
import type { NightRecord } from '../../calendar/almanac-types.ts';
import { fillLabel } from '../../content/fill-label.ts';
import { foldName } from '../fold-text.ts';
import type { QuizFacts } from '../model.ts';
import { isMonthAlone, isSaidOnce } from './month-look.ts';
import { findNightAfter, findNightBefore, listKnownNights, listPassedOver } from './neighbours.ts';
import { type ExplainNight, hasNightOptions, listNightOptions } from './night-options.ts';
import type { QuestionInstance } from './question-instance.ts';
import { joinSentences, renderMissing, renderNight } from './working.ts';

/** Which way a question goes from the night it names. */
export type Direction = 'next' | 'before';

/** A night, the one asked for beside it, and what is passed over between them. */
interface Step {
  readonly direction: Direction;
  readonly from: NightRecord;
  readonly to: NightRecord;
  /** The two in the order of time. */
  readonly early: NightRecord;
  readonly late: NightRecord;
}

/**
 * A question for each night of the lesson's month, and for each night asked about in other months: which night stands
 * next to it in time. After the last night comes the first of the next month. A name said twice in its month is not
 * asked about: two nights stand next to it.
 */
export function listSteps(facts: QuizFacts, direction: Direction): QuestionInstance[] {
  return listStepNights(facts).flatMap((from) => {
    const to = direction === 'next' ? findNightAfter(facts.almanac, from) : findNightBefore(facts.almanac, from);
    if (to === undefined || foldName(to.night) === foldName(from.night)) return [];
    if (!hasNightOptions(facts, { right: to.night, avoid: [from.night] })) return [];
    const [early, late] = direction === 'next' ? [from, to] : [to, from];
    return [makeInstance(facts, { direction, from, to, early, late })];
  });
}

function listStepNights({ almanac, today, from, to }: QuizFacts): NightRecord[] {
  const month = almanac.nightsOfMonth(today);
  const others = listKnownNights(almanac, from, to).filter(
    (record) => record.month.firstDate !== month[0]?.month.firstDate && isMonthAlone(almanac, record),
  );
  const asked = [...month, ...others].toSorted((one, other) => one.beginsMs - other.beginsMs);
  return asked.filter((record) => isSaidOnce(almanac, record));
}

function makeInstance(facts: QuizFacts, step: Step): QuestionInstance {
  const { direction, from, to, early, late } = step;
  const missing = listPassedOver(facts.almanac.run, early, late);
  const hurdle = isOverMonthEnd(step) || missing.length > 0;
  const choice = { right: to.night, avoid: [from.night], notReached: missing };
  return {
    kind: 'choice',
    asks: `night ${direction === 'next' ? 'after' : 'before'} ${from.date}`,
    tells: [],
    level: hurdle ? 3 : early.night.groupNumber === late.night.groupNumber ? 1 : 2,
    hardness: { nights: 0, hurdle },
    about: { nights: [from.night.number], dates: [from.date] },
    renderRight: () => renderNight(facts, to.night.name),
    listWrongSets: () => listNightOptions(facts, choice, { explain: createExplain(facts, step) }),
    renderPrompt: () => renderPrompt(facts, step),
    renderWorking: () =>
      joinSentences([
        fillLabel(facts.labels, 'quiz-working-next', {
          night: renderNight(facts, early.night.name),
          next: renderNight(facts, late.night.name),
        }),
        isOverMonthEnd(step) ? renderMonthEnd(facts, step) : renderGroups(facts, step),
        ...renderMissing(facts, missing),
      ]),
  };
}

function isOverMonthEnd({ early, late }: Step): boolean {
  return early.month.firstDate !== late.month.firstDate;
}

const PROMPT_LABELS = {
  next: { within: 'quiz-ask-next-in-run', end: 'quiz-ask-next-after-last' },
  before: { within: 'quiz-ask-before-in-run', end: 'quiz-ask-before-first' },
} as const;

const MONTH_PROMPT_LABELS = {
  next: { within: 'quiz-ask-next-in-month', end: 'quiz-ask-next-after-last-of' },
  before: { within: 'quiz-ask-before-in-month', end: 'quiz-ask-before-first-of' },
} as const;

/** "This month" is the lesson's; other months are named. */
function renderPrompt(facts: QuizFacts, step: Step): ElementContent[] {
  const { direction, from } = step;
  const form = isOverMonthEnd(step) ? 'end' : 'within';
  const night = renderNight(facts, from.night.name);
  const { firstDate } = facts.almanac.nightOn(facts.today).month;
  if (from.month.firstDate === firstDate) return fillLabel(facts.labels, PROMPT_LABELS[direction][form], { night });
  const month = renderNight(facts, from.month.name);
  return fillLabel(facts.labels, MONTH_PROMPT_LABELS[direction][form], { night, month });
}

/** Two slips of its own has this kind: to go the wrong way, and to skip a night. */
function createExplain({ almanac: { run }, labels }: QuizFacts, { direction, from }: Step): ExplainNight {
  const [wrongWay, skipped] = direction === 'next' ? [-1, 'just-after'] : [1, 'just-before'];
  const other = (from.night.number - 1 + wrongWay + run.length) % run.length;
  return (night, reason) => {
    if (reason === skipped) return fillLabel(labels, 'quiz-means-skipped-one', {});
    if (night.number !== other + 1 || reason === 'not-reached') return undefined;
    return fillLabel(labels, direction === 'next' ? 'quiz-means-went-back' : 'quiz-means-went-on', {});
  };
}

/** "Frost Month has 29 nights; the next month begins with Hidden Moon." */
function renderMonthEnd(facts: QuizFacts, { early, late }: Step): ElementContent[] {
  return fillLabel(facts.labels, 'quiz-working-month-ends', {
    month: renderNight(facts, early.month.name),
    number: String(early.month.length),
    night: renderNight(facts, late.night.name),
  });
}

/** "Reed Edge ends with Nearly Half, and Open Channel begins with Half Shell." */
function renderGroups(facts: QuizFacts, { early, late }: Step): ElementContent[] {
  if (early.night.groupNumber === late.night.groupNumber) return [];
  return fillLabel(facts.labels, 'quiz-working-groups-meet', {
    group: renderNight(facts, early.night.group),
    last: renderNight(facts, early.night.name),
    'next-group': renderNight(facts, late.night.group),
    first: renderNight(facts, late.night.name),
  });
}
