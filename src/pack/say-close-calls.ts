import { MS_PER_DAY } from '../calendar/day-number.ts';
import { type CloseCall, isOfYear, type NightExplanation } from '../calendar/explanation.ts';
import type { Sentence, Voice } from './voice.ts';

/** A year's beginning further than this from a night is out of sight: Moon and star show it for about a month. */
const DAYS_IN_SIGHT = 31;

/**
 * How close the call was, what the night would be otherwise, and whether to look or to ask. A crescent is only ever
 * looked for with the Sun down, and a rising star with the Sun not yet up, so the sentence that sends somebody out to
 * look says so. Nobody is sent out for a year that began months ago, or will begin in months.
 */
export function sayCloseCalls({ closeCalls, beginsMs }: NightExplanation, voice: Voice): Sentence[] {
  if (closeCalls.length === 0) return [voice.say('not-a-close-call', {})];
  const inSight = closeCalls.filter((call) => isInSight(call, beginsMs));
  return [
    ...closeCalls.flatMap((call) => [sayReason(call, voice), ...sayUnsure(call, voice), ...sayOtherwise(call, voice)]),
    ...(inSight.length > 0 ? [voice.say('check-by-eye', {})] : []),
    ...(inSight.length < closeCalls.length ? [voice.say('ask-about-year', {})] : []),
    ...(inSight.some(isOfYoungMoon) ? [voice.say('look-after-sunset', {})] : []),
    ...(inSight.some(({ what }) => what === 'rising') ? [voice.say('look-before-dawn', {})] : []),
  ];
}

/** Whether what is in doubt can be checked by eye about a night. */
function isInSight(call: CloseCall, beginsMs: number): boolean {
  return !isOfYear(call) || Math.abs(call.atMs - beginsMs) <= DAYS_IN_SIGHT * MS_PER_DAY;
}

/** Whether checking the call by eye means to look for a young crescent, near the Sun. */
function isOfYoungMoon(call: CloseCall): boolean {
  return call.what === 'crescent' || call.phase === 'new-moon';
}

function sayReason(call: CloseCall, voice: Voice): Sentence {
  switch (call.what) {
    case 'opening-phase':
      return sayOpeningPhase(call, voice);
    case 'crescent':
      return sayCrescent(call, voice);
    case 'anchor': {
      const night = { name: call.night };
      return voice.say('close-anchor', { night, margin: voice.duration(call.marginMinutes), ...sayPhase(call, voice) });
    }
    case 'year-phase':
    case 'year-marker': {
      const margin = voice.duration(call.marginMinutes);
      return voice.say(`close-${call.what}`, { margin, ...sayYear(call, voice), ...sayPhase(call, voice) });
    }
    case 'rising': {
      const degrees = voice.labels.number(call.marginDegrees, 1);
      const values = { star: call.star, degrees, ...sayYear(call, voice), ...sayPhase(call, voice) };
      return voice.say('close-rising', values);
    }
  }
}

function sayOpeningPhase(call: Extract<CloseCall, { what: 'opening-phase' }>, voice: Voice): Sentence {
  const margin = voice.duration(call.marginMinutes);
  if (call.opens === 'this-month') return voice.say('close-opening-phase', { margin });
  const first = voice.date(call.firstDate);
  return voice.say('close-next-opening-phase', { first, margin, ...sayPhase(call, voice) });
}

function sayCrescent(call: Extract<CloseCall, { what: 'crescent' }>, voice: Voice): Sentence {
  const { number } = voice.labels;
  const values = { date: voice.date(call.date), q: number(call.q, 3), margin: number(Math.abs(call.marginQ), 3) };
  if (call.opens === 'this-month') return voice.say('close-crescent', values);
  return voice.say('close-next-crescent', { first: voice.date(call.firstDate), ...values });
}

function sayPhase({ phase, atMs }: Extract<CloseCall, { phase: unknown }>, voice: Voice) {
  return { phase: voice.labels.phase(phase), instant: voice.instant(atMs) };
}

function sayYear({ year, markerDate }: Extract<CloseCall, { year: number }>, voice: Voice) {
  return { year: String(year), date: voice.date(markerDate) };
}

/** In the far north and south: that the boundary itself is in doubt. */
function sayUnsure(call: CloseCall, voice: Voice): Sentence[] {
  return 'isUnsure' in call && call.isUnsure ? [voice.say('boundary-unsure', {})] : [];
}

/** What this night would be, or this month where only a year is in doubt. */
function sayOtherwise(call: CloseCall, voice: Voice): Sentence[] {
  if (call.otherwise === null) return [];
  const { night, nightOfMonth, month } = call.otherwise;
  const name = { name: month.name };
  if (isOfYear(call)) {
    const values = { month: name, n: String(month.number), year: String(month.year) };
    return [voice.say('otherwise-month', values)];
  }
  const values = { night: { name: night }, n: String(nightOfMonth), length: String(month.length), month: name };
  return [voice.say('otherwise-night', values)];
}
