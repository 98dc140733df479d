import { computeDateParts, type DayNumber, dayNumberOf, MS_PER_DAY } from './day-number.ts';
import { createMemo } from './memo.ts';
import { NoNightError } from './no-night-error.ts';
import type { InstantMs, Place, YearMarker } from './rules.ts';
import { computeStarAltitude, findSunClimbing } from './sky.ts';

/** The marker of a year that begins with a star. */
export type RisingMarker = Extract<YearMarker, { kind: 'rising' }>;

/** A star on a morning: the instant at which the Sun stands at its altitude, and how high the star is then. */
interface StarMorning {
  readonly atMs: InstantMs;
  /** Refracted. */
  readonly starAltitudeDegrees: number;
}

/** The morning on which a star is back, and the morning before. */
export interface HeliacalRising {
  readonly morning: StarMorning;
  /** null where the Sun did not stand at its altitude that morning. */
  readonly morningBefore: StarMorning | null;
}

/** The year from which the season of a star at a place is taken. */
const SEASON_YEAR = 2000;

/** Mornings between looks when the season is searched: a star must be away, and there, for longer than this. */
const STRIDE = 8;

const LOOKS = 46;

/**
 * How far before and after the season's date a year's search goes. Precession moves a rising by 3 days in 200 years, the
 * leap days by one; the rest is for high latitudes, where the season is not so sharp.
 */
const SEARCH_DAYS = 40;

/** Nearer steps back from which to begin, for speed. */
const HEAD_START_DAYS = 10;

/** Finds the ends of the longest stretch of looks without the star, going round the year; null when there is none. */
function findEndOfAbsence(stands: readonly boolean[]): number | null {
  let longest = 0;
  let end: number | null = null;
  let run = 0;
  for (let index = 0; index < 2 * stands.length; index += 1) {
    if (stands[index % stands.length]) {
      if (run > longest && run < stands.length) {
        longest = run;
        end = index - 1;
      }
      run = 0;
    } else run += 1;
  }
  return end;
}

/** The mornings of a place, as far as a star is looked for. */
interface Mornings {
  /** null where the Sun does not stand at its altitude that morning. */
  find(day: DayNumber): StarMorning | null;
  /** Whether the star is there. */
  stands(morning: StarMorning | null): morning is StarMorning;
  /** @throws NoNightError for a star that does not come back. */
  refuse(what: string): never;
}

function createMornings(marker: RisingMarker, place: Place): Mornings {
  const { star, starAltitudeDegrees, sunAltitudeDegrees } = marker;
  return {
    find: (day) => {
      const midnightMs = day * MS_PER_DAY - (place.longitudeDegrees / 360) * MS_PER_DAY;
      const atMs = findSunClimbing(sunAltitudeDegrees, place, midnightMs, 0.5);
      return atMs === null ? null : { atMs, starAltitudeDegrees: computeStarAltitude(place, star, atMs) };
    },
    stands: (morning): morning is StarMorning => morning !== null && morning.starAltitudeDegrees >= starAltitudeDegrees,
    refuse: (what) => {
      const expected = 'expected a star that is away for some weeks and comes back';
      throw new NoNightError(
        `The star \`${star.name}\` ${what} at this place, ${expected}, use another star or marker.`,
      );
    },
  };
}

/** The first morning of the star in {@link SEASON_YEAR}, after its longest absence. */
function findSeason(mornings: Mornings, { starAltitudeDegrees }: RisingMarker): DayNumber {
  const first = dayNumberOf(SEASON_YEAR, 1, 1);
  const looks = Array.from({ length: LOOKS }, (_look, index) => mornings.find(first + STRIDE * index));
  const stood = looks.map((morning) => mornings.stands(morning));
  if (!stood.includes(true)) return mornings.refuse(`is never ${starAltitudeDegrees} degrees high before dawn`);
  // Where summer nights are too light, mornings are lost: that alone is no absence of the star.
  const isEverLow = looks.some((morning) => morning !== null && !mornings.stands(morning));
  const end = isEverLow ? findEndOfAbsence(stood) : null;
  if (end === null) return mornings.refuse('is never away before dawn');
  let day = first + STRIDE * (end % LOOKS) + 1;
  while (!mornings.stands(mornings.find(day))) day += 1;
  return day;
}

/** The first morning that counts in a year, searched for about the date of the season. */
function findRising(mornings: Mornings, season: DayNumber, year: number): HeliacalRising {
  let day = season - HEAD_START_DAYS;
  while (mornings.stands(mornings.find(day)) && day > season - SEARCH_DAYS) day -= HEAD_START_DAYS;
  let morningBefore = mornings.find(day);
  if (mornings.stands(morningBefore)) return mornings.refuse(`is not away long enough before dawn in ${year}`);
  for (; day < season + SEARCH_DAYS; day += 1) {
    const morning = mornings.find(day + 1);
    if (mornings.stands(morning)) return { morning, morningBefore };
    morningBefore = morning;
  }
  return mornings.refuse(`is not seen to come back in ${year}`);
}

/**
 * Finds the morning of each year on which a star is first seen again. A morning counts when the star stands at
 * `starAltitudeDegrees` or higher at the instant at which the Sun, before sunrise, stands at `sunAltitudeDegrees`.
 * The search of a year: the year 2000 is gone through first, and the end of the star's longest absence from its mornings
 * is the season; in every other year the first morning that counts is searched for from up to forty days before that
 * date to forty days after it. Mornings are counted by the mean Sun at the place, not by civil dates.
 * @returns What gives the rising of a Gregorian year. The morning itself may fall on the other side of New Year for a
 * star whose season is New Year.
 * @throws NoNightError from the call for a year when the star never comes back at this place: always or never there.
 */
export function createRisings(marker: RisingMarker, place: Place): (year: number) => HeliacalRising {
  const mornings = createMornings(marker, place);
  const seasonDay = createMemo(1, (_: 'season') => findSeason(mornings, marker));
  return (year) => {
    const { month, day } = computeDateParts(seasonDay('season'));
    return findRising(mornings, dayNumberOf(year, month, day), year);
  };
}
