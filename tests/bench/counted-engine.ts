/**
 * Stands in for astronomy-engine in the benchmark: the same functions, each call written down while `recording.calls` is
 * a list. Only calls from outside the engine pass here.
 */
import * as engine from 'astronomy-engine';

export * from 'astronomy-engine';

/** A call of the engine: the name of the function, and its arguments with times and places as numbers. */
export interface Call {
  readonly name: keyof typeof COUNTED;
  readonly values: readonly Value[];
}

type Value =
  | string
  | number
  | boolean
  | { readonly ut: number }
  | { readonly place: readonly [number, number, number] };

export const recording: { calls: Call[] | null } = { calls: null };

/** What the calendar asks of the engine to know which night a date is and what its sky does. */
const COUNTED = {
  SearchRiseSet: engine.SearchRiseSet,
  SearchMoonPhase: engine.SearchMoonPhase,
  SearchSunLongitude: engine.SearchSunLongitude,
  SearchAltitude: engine.SearchAltitude,
  Illumination: engine.Illumination,
  MoonPhase: engine.MoonPhase,
  Equator: engine.Equator,
  Horizon: engine.Horizon,
} as const;

function writeDown(value: unknown): Value {
  if (value instanceof engine.AstroTime) return { ut: value.ut };
  if (value instanceof engine.Observer) return { place: [value.latitude, value.longitude, value.height] };
  if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') return value;
  throw new Error(`An argument that the benchmark cannot write down: ${String(value)}`);
}

function readBack(value: Value): unknown {
  if (typeof value !== 'object') return value;
  // Made anew, as the kit must make them: a used time remembers what was worked out for it.
  return 'ut' in value ? new engine.AstroTime(value.ut) : new engine.Observer(...value.place);
}

function counted<Args extends readonly unknown[], Result>(name: Call['name'], call: (...args: Args) => Result) {
  return (...args: Args): Result => {
    recording.calls?.push({ name, values: args.map(writeDown) });
    return call(...args);
  };
}

/** Makes calls again, of the engine alone. */
export function replay(calls: readonly Call[]): void {
  for (const { name, values } of calls) {
    // The values came from a call of the same function.
    (COUNTED[name] as (...args: unknown[]) => unknown)(...values.map(readBack));
  }
}

export const SearchRiseSet = counted('SearchRiseSet', engine.SearchRiseSet);
export const SearchMoonPhase = counted('SearchMoonPhase', engine.SearchMoonPhase);
export const SearchSunLongitude = counted('SearchSunLongitude', engine.SearchSunLongitude);
export const SearchAltitude = counted('SearchAltitude', engine.SearchAltitude);
export const Illumination = counted('Illumination', engine.Illumination);
export const MoonPhase = counted('MoonPhase', engine.MoonPhase);
export const Equator = counted('Equator', engine.Equator);
export const Horizon = counted('Horizon', engine.Horizon);
