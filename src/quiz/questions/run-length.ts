import type { ElementContent } from 'hast';
import type { NightRecord } from '../../calendar/almanac-types.ts';
import { fillLabel } from '../../content/fill-label.ts';
import type { Labels } from '../../content/labels.ts';
import { formatElapsed } from '../../rhythm/format-elapsed.ts';
import type { QuizFacts, Slip } from '../model.ts';
import { listKnownNights } from './neighbours.ts';
import type { QuestionInstance, QuestionKind } from './question-instance.ts';
import { type AskedRun, listAskedRuns } from './run-lengths.ts';
import { joinSentences, renderNight } from './working.ts';

/** "At 120 beats a minute, how many seconds does it take to do the nights of Dark Water?", a length to write. */
export const runLength: QuestionKind = {
  about: 'how long a run of nights takes at a tempo: a whole number of seconds, or of minutes and seconds',
  levels: [
    'one group, nothing counted in, 30, 60 or 120 beats a minute',
    'the same with a count-in, whose beats take time too',
    'several groups with a count-in before each, any tempo, minutes and seconds',
  ],
  list: listRunLength,
};

function listRunLength(facts: QuizFacts): QuestionInstance[] {
  const records = listKnownNights(facts.almanac, facts.from, facts.to);
  const numbers = new Set(records.map(({ night }) => night.groupNumber));
  if (numbers.size === 0) return [];
  return listAskedRuns(facts.almanac.run, numbers).map((asked) => makeInstance(facts, asked, records));
}

function makeInstance(facts: QuizFacts, asked: AskedRun, records: readonly NightRecord[]): QuestionInstance {
  const nights = asked.groups.flatMap(({ items }) => items.map(({ number }) => number));
  const { labels } = facts;
  return {
    kind: 'line',
    asks: `length of nights ${nights[0]} to ${nights.at(-1)}, ${asked.beats} beats at ${asked.tempo}, count-in ${asked.countIn}`,
    tells: [],
    level: asked.level,
    hardness: { nights: asked.nights, hurdle: false },
    about: { nights, dates: records.filter(({ night }) => nights.includes(night.number)).map(({ date }) => date) },
    ...(isInSeconds(asked) ? { unit: labels.text('quiz-unit-seconds') } : {}),
    forgive: { case: true, accents: true },
    renderPrompt: () => renderPrompt(facts, asked),
    listAnswers: () => listSpellings(asked, asked.seconds, labels).map((value) => [{ type: 'text', value }]),
    listSlips: () => listSlips(asked, labels),
    renderWorking: () => renderWorking(facts, asked),
  };
}

/** Short runs are asked for in seconds, long ones in minutes and seconds. */
function isInSeconds({ level }: AskedRun): boolean {
  return level < 3;
}

function renderPrompt(facts: QuizFacts, asked: AskedRun): ElementContent[] {
  const { labels } = facts;
  return joinSentences([
    renderWhat(facts, asked),
    [{ type: 'text', value: labels.count('quiz-run-beats', asked.beats) }],
    [{ type: 'text', value: sayCountIn(asked, labels) }],
    fillLabel(labels, chooseQuestion(asked), {}),
  ]);
}

function renderWhat(facts: QuizFacts, { groups, isWhole, tempo }: AskedRun): ElementContent[] {
  const { labels } = facts;
  const [first, second] = groups.map(({ name }) => renderNight(facts, name));
  const beats = String(tempo);
  if (first === undefined || isWhole) return fillLabel(labels, 'quiz-run-of-all', { tempo: beats });
  if (second === undefined) return fillLabel(labels, 'quiz-run-of-group', { group: first, tempo: beats });
  return fillLabel(labels, 'quiz-run-of-two', { first, second, tempo: beats });
}

function sayCountIn({ countIn, groups }: AskedRun, labels: Labels): string {
  if (countIn === 'none') return labels.text('quiz-run-no-count-in');
  if (countIn !== 'by-group') return labels.count('quiz-run-count-in-beats', countIn);
  return labels.text(groups.length > 1 ? 'quiz-run-count-in-each' : 'quiz-run-count-in-group');
}

function chooseQuestion(asked: AskedRun) {
  if (!isInSeconds(asked)) return 'quiz-ask-run-minutes';
  return asked.countIn === 'none' ? 'quiz-ask-run-seconds' : 'quiz-ask-run-seconds-counted';
}

/** A length as a learner may write it, the shown one first. */
function listSpellings(asked: AskedRun, seconds: number, labels: Labels): [shown: string, ...others: string[]] {
  // The unit stands after the line already.
  if (isInSeconds(asked)) return [String(seconds)];
  const [shown, ...others] = [labels.count('quiz-seconds', seconds), String(seconds), `${seconds} s`] as const;
  if (seconds < 60) return [shown, ...others];
  const [whole, rest] = [Math.floor(seconds / 60), seconds % 60];
  const minutes = labels.count('minutes', whole);
  const both = labels.text('quiz-minutes-and-seconds', { minutes, seconds: labels.count('quiz-seconds', rest) });
  const short = rest === 0 ? [`${whole} min`] : [`${whole} min ${rest} s`, `${whole} min ${rest}`];
  return [rest === 0 ? minutes : both, formatElapsed(seconds), ...short, shown, ...others];
}

/** Lengths that come of a step left out or turned round, where they are whole and differ. */
function listSlips(asked: AskedRun, labels: Labels): Slip[] {
  const { nights, nightBeats, countBeats, totalBeats: total, groups, tempo, seconds } = asked;
  const firstCount = groups[0]?.wholeLength ?? 0;
  const toSeconds = (beats: number) => (beats * 60) / tempo;
  const found = [
    ['no-count-in', toSeconds(nightBeats)],
    ['one-count-in', groups.length > 1 ? toSeconds(nightBeats + firstCount) : seconds],
    ['wrong-way', (total * tempo) / 60],
    ['beats', total],
    ['one-beat-a-night', toSeconds(nights + countBeats)],
    ['one-beat-off', toSeconds(total - 1)],
  ] as const;
  const taken = new Set([seconds]);
  return found.flatMap(([slip, length]) => {
    if (!Number.isInteger(length) || length <= 0 || taken.has(length)) return [];
    taken.add(length);
    const answer = slip === 'beats' ? String(length) : listSpellings(asked, length, labels)[0];
    return { answer, means: fillLabel(labels, `quiz-means-run-${slip}`, {}) };
  });
}

function renderWorking({ labels }: QuizFacts, asked: AskedRun): ElementContent[] {
  const { nights, beats, nightBeats, countBeats, totalBeats: total, tempo, seconds } = asked;
  const [shown] = listSpellings(asked, seconds, labels);
  const inSeconds = labels.count('quiz-seconds', seconds);
  return joinSentences([
    fillLabel(labels, 'quiz-working-run-nights', { nights, beats, total: nightBeats }),
    ...(countBeats === 0 ? [] : [fillLabel(labels, 'quiz-working-run-count-in', { count: countBeats, total })]),
    fillLabel(labels, 'quiz-working-run-tempo', { tempo, total, seconds: inSeconds }),
    ...(isInSeconds(asked) ? [] : [fillLabel(labels, 'quiz-working-run-minutes', { time: shown })]),
  ]);
}
