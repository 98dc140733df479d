import { MS_PER_DAY } from '../calendar/day-number.ts';
import type { Eclipse } from '../calendar/eclipses.ts';
import type { EveningSky, MoonStand } from '../calendar/evening-sky.ts';
import { findCompassPoint } from '../calendar/evening-sky.ts';
import type { CivilDate, InstantMs } from '../calendar/rules.ts';
import { readWallClock } from '../calendar/wall-clock.ts';
import type { Labels } from '../content/labels.ts';

/** Where the words for heights change, in degrees (by eye, no source). */
const LOW_UP_TO_DEGREES = 20;
const HIGH_FROM_DEGREES = 50;

/** What words are made with. */
interface Saying {
  readonly labels: Labels;
  readonly timeZone: string;
  /** The date the words are about; times on other dates name theirs. */
  readonly date: CivilDate;
}

function sayTime(atMs: InstantMs, { labels, timeZone, date }: Saying): string {
  const local = readWallClock(atMs, timeZone);
  const time = labels.clock(local.clock);
  return local.date === date ? time : labels.text('clock-on-day', { time, day: labels.date(local.date, 'day') });
}

function sayHeight(altitudeDegrees: number, labels: Labels): string {
  if (altitudeDegrees < LOW_UP_TO_DEGREES) return labels.text('height-low');
  return labels.text(altitudeDegrees < HIGH_FROM_DEGREES ? 'height-middle' : 'height-high');
}

function sayPlace(
  { azimuthDegrees, altitudeDegrees }: Pick<MoonStand, 'azimuthDegrees' | 'altitudeDegrees'>,
  labels: Labels,
) {
  return {
    point: labels.text(`point-${findCompassPoint(azimuthDegrees)}`),
    height: sayHeight(altitudeDegrees, labels),
  };
}

/** When and where to look for the Moon in the evening, in a sentence or two that a child understands. */
export function sayEvening(sky: EveningSky, labels: Labels, timeZone: string): string {
  const saying = { labels, timeZone, date: sky.date };
  const { evening } = sky;
  const bedtime = sayTime(sky.bedtimeMs, saying);
  switch (evening.kind) {
    case 'after-dark': {
      const time = sayTime(evening.at.atMs, saying);
      const key = evening.nearSun ? 'sky-after-dark-near-sun' : 'sky-after-dark';
      const then = sayAfterwards(sky, evening.at, saying);
      return [labels.text(key, { time, ...sayPlace(evening.at, labels) }), ...then].join(' ');
    }
    case 'rising':
      return labels.text('sky-rising', {
        time: sayTime(evening.risesMs, saying),
        bedtime,
        ...sayPlace(evening.at, labels),
      });
    case 'in-daylight':
      return labels.text('sky-in-daylight', { time: bedtime, ...sayPlace(evening.at, labels) });
    case 'later':
      return labels.text('sky-later', { time: sayTime(evening.risesMs, saying), bedtime });
    case 'too-light':
    case 'low':
    case 'down':
      return labels.text(`sky-${evening.kind}`);
  }
}

/** Where the Moon is at bedtime, or when it goes down before. */
function sayAfterwards({ atBedtime, moonUp }: EveningSky, at: MoonStand, saying: Saying): string[] {
  const { labels } = saying;
  if (at.atMs === atBedtime.atMs) return [];
  const stretch = moonUp.find(({ fromMs, untilMs }) => fromMs <= at.atMs && at.atMs < untilMs);
  if (stretch !== undefined && stretch.untilMs <= atBedtime.atMs) {
    return [labels.text('sky-goes-down', { time: sayTime(stretch.untilMs, saying) })];
  }
  return [labels.text('sky-at-bedtime', { time: sayTime(atBedtime.atMs, saying), ...sayPlace(atBedtime, labels) })];
}

/** Whether the Moon is up in school hours, in a sentence. */
export function saySchoolHours({ school, date }: EveningSky, labels: Labels, timeZone: string): string {
  if (school.kind !== 'up') return labels.text(`sky-school-${school.kind}`);
  const time = sayTime(school.at.atMs, { labels, timeZone, date });
  return labels.text('sky-school-up', { time, ...sayPlace(school.at, labels) });
}

/** A caution. */
type CareKey = 'care-sun' | 'care-crescent' | 'care-night' | 'care-lunar-eclipse' | 'care-solar-eclipse';

/** The cautions that go with what is said of the evening. */
export function listEveningCare({ evening }: EveningSky): CareKey[] {
  const crescent: CareKey[] = evening.kind === 'after-dark' && evening.nearSun ? ['care-crescent'] : [];
  return ['care-sun', ...crescent, 'care-night'];
}

/** The cautions that go with eclipses. */
export function listEclipseCare(eclipses: readonly Eclipse[]): CareKey[] {
  const has = (of: Eclipse['of']) => eclipses.some((eclipse) => eclipse.of === of);
  const solar: CareKey[] = has('sun') ? ['care-sun', 'care-solar-eclipse'] : [];
  return has('moon') ? [...solar, 'care-lunar-eclipse', 'care-night'] : solar;
}

/** Cautions in sentences, each once. */
export function sayCare(keys: readonly CareKey[], labels: Labels): string {
  return [...new Set(keys)].map((key) => labels.text(key)).join(' ');
}

/**
 * What an eclipse is, when, how deep, and of the Moon where; a direction is never given for the Sun.
 * @param eclipse One that is more than a dimming in the penumbra.
 */
export function sayEclipse(eclipse: Eclipse, labels: Labels, timeZone: string): string {
  const { deepest, of, seen } = eclipse;
  const { date } = readWallClock(seen.fromMs, timeZone);
  const saying = { labels, timeZone, date };
  const times = labels.text('eclipse-times', {
    from: sayTime(seen.fromMs, saying),
    until: sayTime(seen.untilMs, saying),
    time: sayTime(deepest.atMs, saying),
  });
  const where = of === 'moon' ? [labels.text('eclipse-moon-where', sayPlace(deepest, labels))] : [];
  return [sayKind(eclipse, labels, sayEclipseDate(eclipse, labels, timeZone)), times, ...where].join(' ');
}

/** Before this time an eclipse of the Moon belongs to the night that is ending (our own rule). */
const NIGHT_UNTIL_CLOCK = '08:00';

/** The day it is first seen; of a lunar eclipse after midnight both days of the night, lest it be waited for an evening late. */
function sayEclipseDate({ of, seen }: Eclipse, labels: Labels, timeZone: string): string {
  const first = readWallClock(seen.fromMs, timeZone);
  const isPastMidnight = first.clock < NIGHT_UNTIL_CLOCK || readWallClock(seen.untilMs, timeZone).date !== first.date;
  if (of === 'sun' || !isPastMidnight) return labels.date(first.date, 'day');
  const sayDay = (atMs: InstantMs) => labels.date(readWallClock(atMs, timeZone).date, 'day');
  return labels.text('eclipse-night', {
    evening: sayDay(seen.fromMs - MS_PER_DAY / 2),
    morning: sayDay(seen.fromMs + MS_PER_DAY / 2),
  });
}

/** What is seen here decides: a total eclipse that is not yet total when the Moon sets is a partial one. */
function sayKind({ of, core, deepest }: Eclipse, labels: Labels, date: string): string {
  const isCore = core !== null && core.fromMs <= deepest.atMs && deepest.atMs <= core.untilMs;
  // A partial eclipse covers neither nothing nor all.
  const percent = Math.min(99, Math.max(1, Math.round(deepest.obscuration * 100)));
  if (!isCore) return labels.text(`eclipse-${of}-partial`, { date, percent });
  if (of === 'moon') return labels.text('eclipse-moon-total', { date });
  return labels.text(deepest.magnitude < 1 ? 'eclipse-sun-annular' : 'eclipse-sun-total', { date });
}
