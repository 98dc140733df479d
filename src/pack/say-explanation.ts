import type { NightExplanation } from '../calendar/explanation.ts';
import type { Labels } from '../content/labels.ts';
import { findStandInLabel } from '../content/stand-in-label.ts';
import { sayCloseCalls } from './say-close-calls.ts';
import { sayMonthBeginning, sayObservation } from './say-month-beginning.ts';
import { sayYear } from './say-year.ts';
import { createVoice, type Sentence, type Voice } from './voice.ts';

/** Why a date has its night, in plain sentences. */
export interface SaidExplanation {
  /** Which night it is and how long it lasts. */
  readonly night: readonly Sentence[];
  /** The steps from the sky to the name, in order: the month's beginning, the month's name, the night's name. */
  readonly steps: readonly Sentence[];
  /** How close the call was; one sentence that it was not, or more that say why and what to do. */
  readonly closeness: readonly Sentence[];
  readonly closeCall: boolean;
}

/**
 * Says an explanation in the words of a language. Times are local, phases in universal time as well.
 * @param timeZone IANA name of the place's time zone.
 */
export function sayExplanation(explanation: NightExplanation, labels: Labels, timeZone: string): SaidExplanation {
  const voice = createVoice(labels, timeZone, explanation.date);
  return {
    night: sayNight(explanation, voice),
    steps: [...sayMonthBeginning(explanation, voice), ...sayYear(explanation, voice), ...sayName(explanation, voice)],
    closeness: sayCloseCalls(explanation, voice),
    closeCall: explanation.closeCall,
  };
}

function sayNight(explanation: NightExplanation, voice: Voice): Sentence[] {
  const { date, night, nightOfMonth, month } = explanation;
  const place = { n: String(nightOfMonth), length: String(month.length) };
  const names = { night: { name: night.name }, month: { name: month.name } };
  return [
    voice.say('explain-night', { date: voice.labels.date(date, 'long'), ...names, ...place }),
    ...sayStretch(explanation, voice),
  ];
}

/** When the night begins and ends; what stands in where the Sun does not rise or set. */
export function sayStretch(
  night: Pick<NightExplanation, 'date' | 'beginsMs' | 'endsMs' | 'beginsWith' | 'sunStays' | 'dayBegins'>,
  voice: Voice,
): Sentence[] {
  const { date, beginsMs, endsMs, beginsWith, dayBegins } = night;
  const standIn = findStandInLabel(dayBegins, night);
  const times = { begins: voice.clock(beginsMs, date), ends: voice.clock(endsMs, date) };
  const stretch = voice.say(`night-lasts-${beginsWith}`, times);
  return standIn === null ? [stretch] : [stretch, voice.say(standIn, {})];
}

function sayName(explanation: NightExplanation, voice: Voice): Sentence[] {
  const { night, nightOfMonth, repeat, name, month, phase, date } = explanation;
  const takes = { n: String(nightOfMonth), night: { name: night.name } };
  const anchors = name.anchors.map((anchor) =>
    voice.say('explain-anchor', {
      night: { name: anchor.night },
      phase: voice.labels.phase(anchor.phase),
      instant: voice.instant(anchor.atMs),
      date: voice.date(anchor.date),
    }),
  );
  // What opened the month or moved its end has been told.
  const isTold = [month.basis, month.ending?.basis].some(
    (basis) => basis?.kind === 'observation' && basis.observation === name.observation,
  );
  const observed = name.observation === null || isTold ? [] : [sayObservation(name.observation, voice)];
  // The phase that opened the month, or that a name belongs to, has been spoken of.
  const told = [month.openingPhase, ...name.anchors].map(({ atMs }) => atMs);
  const tonight = phase === null || told.includes(phase.atMs) ? [] : [phase];
  return [
    ...anchors,
    ...observed,
    voice.say(`explain-name-${name.by}`, takes),
    ...(repeat ? [voice.say(name.by === 'observation' ? 'explain-repeat-observed' : 'explain-repeat', {})] : []),
    ...tonight.map(({ name: phaseName, atMs }) =>
      voice.say('explain-phase', {
        date: voice.date(date),
        phase: voice.labels.phase(phaseName),
        instant: voice.instant(atMs),
      }),
    ),
  ];
}
