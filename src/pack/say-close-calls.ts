import type { CloseCall, NightExplanation } from '../calendar/explanation.ts';
import type { Sentence, Voice } from './voice.ts';

/**
 * How close the call was. A crescent is only ever looked for with the Sun down, and a rising star with the Sun not yet
 * up, so the sentence that sends somebody out to look says so.
 */
export function sayCloseCalls(explanation: NightExplanation, voice: Voice): Sentence[] {
  const { closeCalls, closeCall } = explanation;
  if (!closeCall) return [voice.say('not-a-close-call', {})];
  const isYoungMoon = closeCalls.some((call) => isOfYoungMoon(call, explanation));
  const isRising = closeCalls.some(({ what }) => what === 'rising');
  return [
    ...closeCalls.map((call) => sayCloseCall(call, voice)),
    voice.say('check-by-eye', {}),
    ...(isYoungMoon ? [voice.say('look-after-sunset', {})] : []),
    ...(isRising ? [voice.say('look-before-dawn', {})] : []),
  ];
}

/** Whether checking the call by eye means to look for a young crescent, near the Sun. */
function isOfYoungMoon(call: CloseCall, { month, year }: NightExplanation): boolean {
  switch (call.what) {
    case 'opening-phase':
    case 'crescent':
      return month.opening.at !== 'full-moon';
    case 'anchor':
      return call.phase === 'new-moon';
    case 'year-marker':
      return year.phase === 'new-moon';
    case 'rising':
      return false;
  }
}

function sayCloseCall(call: CloseCall, voice: Voice): Sentence {
  switch (call.what) {
    case 'opening-phase':
      return voice.say('close-opening-phase', { margin: voice.duration(call.marginMinutes) });
    case 'crescent': {
      const { number } = voice.labels;
      const values = { date: voice.date(call.date), q: number(call.q, 3), margin: number(Math.abs(call.marginQ), 3) };
      return voice.say('close-crescent', values);
    }
    case 'year-marker':
      return voice.say('close-year-marker', {});
    case 'rising':
      return voice.say('close-rising', { degrees: voice.labels.number(Math.abs(call.marginDegrees), 1) });
    case 'anchor': {
      const phase = voice.labels.phase(call.phase);
      return voice.say('close-anchor', { phase, margin: voice.duration(call.marginMinutes) });
    }
  }
}
