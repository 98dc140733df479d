import type { MoonWhereabouts } from '../../calendar/moon-whereabouts.ts';

/**
 * What a learner who takes a wrong place of the Moon for the right one likely thought. `sides`: east and west, or coming
 * up and going down, changed over, as in the other half of the month; `rises-early`, `rises-late`, `sets-early`,
 * `sets-late`: it is thought to do so earlier or later than it does; `all-night`: that it is up whenever it is dark;
 * `never-by-day`: that it is up only in the dark; `across`: a place on the other side of its way.
 */
type PlaceReason =
  | 'sides'
  | 'rises-early'
  | 'rises-late'
  | 'sets-early'
  | 'sets-late'
  | 'all-night'
  | 'never-by-day'
  | 'across';

/** A wrong place and what it stands for. */
interface WrongPlace {
  readonly place: MoonWhereabouts;
  readonly reason: PlaceReason;
}

/** The three other places, in the order in which the Moon comes through them. @param isLight whether the Sun is up. */
export function listWrongPlaces(right: MoonWhereabouts, isLight: boolean): WrongPlace[] {
  const [downByDay, upAtNight] = isLight ? (['never-by-day', 'across'] as const) : (['across', 'all-night'] as const);
  switch (right) {
    case 'up-east':
      return [
        { place: 'up-west', reason: 'sides' },
        { place: 'has-set', reason: downByDay },
        { place: 'will-rise', reason: 'rises-late' },
      ];
    case 'up-west':
      return [
        { place: 'up-east', reason: 'sides' },
        { place: 'has-set', reason: 'sets-early' },
        { place: 'will-rise', reason: downByDay },
      ];
    case 'has-set':
      return [
        { place: 'up-east', reason: upAtNight },
        { place: 'up-west', reason: 'sets-late' },
        { place: 'will-rise', reason: 'sides' },
      ];
    case 'will-rise':
      return [
        { place: 'up-east', reason: 'rises-early' },
        { place: 'up-west', reason: upAtNight },
        { place: 'has-set', reason: 'sides' },
      ];
  }
}
