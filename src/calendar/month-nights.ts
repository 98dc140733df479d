import type { RunNight } from './almanac-types.ts';
import type { DayNumber } from './day-number.ts';
import { computeFit, type FittedName, markRepeats, type Pin } from './fit.ts';
import type { Lunations } from './lunations.ts';
import type { NightLine } from './night-line.ts';
import type { InstantMs, Observation, PhaseName } from './rules.ts';

/** An anchor and the night that holds its phase. */
export interface AnchorNight {
  readonly night: RunNight;
  readonly phase: PhaseName;
  readonly atMs: InstantMs;
  readonly day: DayNumber;
  readonly index: number;
}

/** A night that was seen, and which one it is of its month. */
export interface SeenNight {
  readonly observation: Observation;
  readonly night: RunNight;
  readonly index: number;
}

/** The dates from one to before another, over existing dates only. */
export function listDays(line: NightLine, from: DayNumber, before: DayNumber): readonly DayNumber[] {
  const days: DayNumber[] = [];
  for (let day = from; day < before; day = line.zone.nextDay(day)) days.push(day);
  return days;
}

/**
 * The anchors whose phase falls in a month. Where a phase falls in it twice, as on the first and the last night, the
 * night nearer to the name's place in the list is taken; where it does not fall in it, the anchor does not hold.
 * @param days The month's dates in order, 1 at least.
 * @param lunation A lunation about the month.
 */
export function findAnchors(
  run: readonly RunNight[],
  line: NightLine,
  lunations: Lunations,
  days: readonly DayNumber[],
  lunation: number,
): readonly AnchorNight[] {
  return run.flatMap((night) => {
    const phase = night.anchor;
    if (phase === undefined) return [];
    const found = [-1, 0, 1, 2].flatMap((later) => {
      const atMs = lunations.phaseInstant(lunation + later, phase);
      const day = line.dayHolding(atMs);
      const index = days.indexOf(day);
      return index < 0 ? [] : [{ night, phase, atMs, day, index }];
    });
    const stray = ({ index }: AnchorNight) => Math.abs(index + 1 - night.number);
    return found.sort((a, b) => stray(a) - stray(b)).slice(0, 1);
  });
}

/** Goes on past the end of a list of names: the next ones of the run, then the last one again. */
function goOn(run: readonly RunNight[], names: readonly RunNight[], length: number): readonly RunNight[] {
  const longer = [...names.slice(0, length)];
  while (longer.length < length) {
    const next = run[Math.min(longer.at(-1)?.number ?? 0, run.length - 1)];
    if (next === undefined) throw new RangeError('A calendar without names has no nights.');
    longer.push(next);
  }
  return longer;
}

/**
 * The names of a month's nights. Anchors and flexible nights are fitted to the length that the rule foresees, so that
 * a record which moves the month's end changes no name before it: a shorter month stops early, a longer one goes on. An
 * observed night takes its name whatever was computed, and the nights from there on are fitted anew, with the anchors
 * that are still to come.
 * @param foreseen Nights in the month by the rule, 1 or more.
 * @param length Nights in the month as it is.
 * @param seen Observations within the month, by date, one a night.
 */
export function computeMonthNames(
  run: readonly RunNight[],
  foreseen: number,
  length: number,
  anchors: readonly AnchorNight[],
  seen: readonly SeenNight[],
): readonly FittedName[] {
  const pins: Pin[] = anchors.map(({ index, night }) => ({ index, number: night.number }));
  let names = computeFit(run, foreseen, pins);
  for (const { index, night } of seen) {
    const tail = computeFit(run, Math.max(foreseen, index + 1), pins, { index, number: night.number });
    names = [...goOn(run, names, index), ...tail];
  }
  return markRepeats(goOn(run, names, length));
}
