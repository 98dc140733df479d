import { getMoonPosition, getPosition } from 'suncalc';
import { Temporal } from 'temporal-polyfill';
import { expect } from 'vitest';
import type { Place } from '../../../src/calendar/rules.ts';
import { addDays } from '../../../src/content/civil-date.ts';
import type { QuizFacts } from '../../../src/quiz/model.ts';
import { moonUpAt } from '../../../src/quiz/questions/moon-up-at.ts';
import { type ChoiceInstance, readAloud, requireChoices } from './read-instance.ts';
import { sampleSome } from './sky-weeks.ts';

const HOUR_MS = 3_600_000;

/** The last moment that a prompt in English names, by the clock on the wall; its date is one of the quiz or the next. */
function readMoment(prompt: string, { labels, today, from, to, almanac }: QuizFacts): number {
  const say = (date: string) => labels.date(date, date.slice(0, 4) === today.slice(0, 4) ? 'day' : 'long');
  const last = prompt.slice(
    prompt.lastIndexOf('Where is it') > 0 && /rises/.test(prompt) ? prompt.lastIndexOf('Where') : 0,
  );
  for (let date = from; date <= to; date = addDays(date, 1)) {
    const day = say(date);
    const next = addDays(date, 1);
    const toMs = (iso: string) =>
      Temporal.PlainDateTime.from(iso).toZonedDateTime(almanac.place.timeZone).epochMilliseconds;
    if (last.includes(`at midnight between ${labels.date(date, 'day')} and ${say(next)}`)) return toMs(`${next}T00:00`);
    if (last.includes(`at midday on ${day}`)) return toMs(`${date}T12:00`);
    const clock = new RegExp(`on ${day} at (\\d+):(\\d\\d) (am|pm)`).exec(last);
    if (clock === null) continue;
    const hour = (Number(clock[1]) % 12) + (clock[3] === 'pm' ? 12 : 0);
    return toMs(`${date}T${String(hour).padStart(2, '0')}:${clock[2]}`);
  }
  throw new Error(`No moment was found in: ${prompt}`);
}

function findMoon(atMs: number, { latitudeDegrees, longitudeDegrees }: Place) {
  return getMoonPosition(new Date(atMs), latitudeDegrees, longitudeDegrees);
}

/** The altitudes of the Moon twelve times in so many hours after an instant, or before it. */
function listAltitudes(atMs: number, hours: number, place: Place): number[] {
  return Array.from({ length: 12 }, (_, step) => findMoon(atMs + ((step + 1) / 12) * hours * HOUR_MS, place).altitude);
}

/** The answers that are true at an instant by suncalc's Moon alone, which is good to 0.3 degrees, with a margin of 1. */
function listTrue(atMs: number, place: Place): string[] {
  const { altitude, azimuth } = findMoon(atMs, place);
  if (altitude > 0)
    return azimuth < 180
      ? ['It is up, in the eastern half of the sky.']
      : ['It is up, in the western half of the sky.'];
  const wasUp = listAltitudes(atMs, -6, place).some((each) => each > -1);
  const willBeUp = listAltitudes(atMs, 6, place).some((each) => each > -1);
  return [
    ...(wasUp ? ['It is down: it set in the 6 hours before.'] : []),
    ...(willBeUp ? ['It is down: it rises in the 6 hours after.'] : []),
  ];
}

/**
 * Holds the answers of a week against suncalc's altitude and azimuth of the Moon at the moment that the prompt names, in
 * the six hours around it, and twenty minutes before and after: the right answer alone is true, and it is not within
 * twenty minutes of being false. By day the Moon is a quarter of the sky from the Sun at least.
 * @returns the right answers
 */
export function verifyMoonUpAt(facts: QuizFacts, seed: number): string[] {
  const { place } = facts.almanac;
  return sampleSome(requireChoices(moonUpAt.list(facts)), 3, seed).map((instance) => {
    const atMs = readMoment(readAloud(instance.renderPrompt()), facts);
    const right = readAloud(instance.renderRight());
    expect(listTrue(atMs, place), instance.asks).toEqual([right]);
    for (const shiftMs of [-HOUR_MS / 3, HOUR_MS / 3]) {
      const { altitude, azimuth } = findMoon(atMs + shiftMs, place);
      expect(altitude > 0, instance.asks).toBe(right.startsWith('It is up'));
      if (altitude > 0) expect(azimuth < 180, instance.asks).toBe(right.includes('eastern'));
    }
    expect(Math.abs(findMoon(atMs, place).altitude), instance.asks).toBeGreaterThan(
      right.startsWith('It is up') ? 9 : 2,
    );
    expect(isNearSun(atMs, place), instance.asks).toBe(false);
    expectOneRight(instance, right);
    return right;
  });
}

function isNearSun(atMs: number, { latitudeDegrees, longitudeDegrees }: Place): boolean {
  const sun = getPosition(new Date(atMs), latitudeDegrees, longitudeDegrees);
  if (sun.altitude < -5) return false;
  const moon = findMoon(atMs, { latitudeDegrees, longitudeDegrees, elevationMetres: 0, timeZone: 'UTC' });
  const radians = Math.PI / 180;
  const cosine =
    Math.sin(sun.altitude * radians) * Math.sin(moon.altitude * radians) +
    Math.cos(sun.altitude * radians) *
      Math.cos(moon.altitude * radians) *
      Math.cos((sun.azimuth - moon.azimuth) * radians);
  // A degree of margin for the Moon's parallax and the air.
  return Math.acos(Math.min(1, Math.max(-1, cosine))) / radians < 89;
}

function expectOneRight(instance: ChoiceInstance, right: string): void {
  for (const set of instance.listWrongSets()) {
    const wrong = set.map(({ content }) => readAloud(content));
    expect(new Set([right, ...wrong]).size).toBe(4);
  }
}
