import { MS_PER_DAY } from './day-number.ts';
import { createMemo } from './memo.ts';
import type { InstantMs, PhaseName } from './rules.ts';
import { findPhase } from './sky.ts';

/** The phases of the Moon by lunation number: lunation 0 began with the new Moon of 2000-01-06. */
export interface Lunations {
  /** The instant of a phase of lunation `lunation`; the new Moon opens it, the other three follow in order. */
  phaseInstant(lunation: number, phase: PhaseName): InstantMs;
  /** The lunation of the first such phase at or after an instant. */
  firstFrom(phase: PhaseName, instantMs: InstantMs): number;
  /** The lunation that holds an instant: its new Moon is at or before it, the next one after. */
  lunationAt(instantMs: InstantMs): number;
}

/** The principal phases in the order in which they come. */
export const PHASES = ['new-moon', 'first-quarter', 'full-moon', 'last-quarter'] as const satisfies PhaseName[];

/** Mean new Moon of lunation 0, JDE 2451550.09766: Meeus, Astronomical Algorithms (2nd edition), formula 49.1. */
const EPOCH_MS = (2451550.09766 - 2440587.5) * MS_PER_DAY;

/** Mean length of a lunation in days, same formula; its change is under a tenth of a second in our centuries. */
const LUNATION_DAYS = 29.530588861;

/** True phases stray up to 0.81 day from the mean ones (seen from 1800 to 2200); the rest is room to spare. */
const STRAY_DAYS = 1.5;

/** Ten years of phases: enough for any page, and a century does not pile up. */
const PHASES_KEPT = 500;

/** Phase `quarter`, counted in quarters of a lunation from the new Moon of lunation 0. */
function computeQuarter(quarter: number): InstantMs {
  const phase = PHASES[quarter - 4 * Math.floor(quarter / 4)];
  if (phase === undefined) throw new RangeError(`Unexpected lunation ${quarter / 4}, expected a whole number.`);
  const meanMs = EPOCH_MS + (quarter * LUNATION_DAYS * MS_PER_DAY) / 4;
  const found = findPhase(phase, meanMs - STRAY_DAYS * MS_PER_DAY, 2 * STRAY_DAYS);
  if (found === null) throw new Error(`No ${phase} was found for lunation ${Math.floor(quarter / 4)}.`);
  return found;
}

/** Numbers phases by when they fall. */
function numberPhases(phaseInstant: Lunations['phaseInstant']): Lunations {
  const firstFrom = (phase: PhaseName, instantMs: InstantMs) => {
    const meanLunations = (instantMs - EPOCH_MS) / (LUNATION_DAYS * MS_PER_DAY) - PHASES.indexOf(phase) / 4;
    let lunation = Math.ceil(meanLunations);
    // The true phase can lie on the other side of the instant than the mean one.
    while (phaseInstant(lunation - 1, phase) >= instantMs) lunation -= 1;
    while (phaseInstant(lunation, phase) < instantMs) lunation += 1;
    return lunation;
  };
  return { phaseInstant, firstFrom, lunationAt: (instantMs) => firstFrom('new-moon', instantMs + 1) - 1 };
}

/** Makes the phases of the real Moon, each searched for once. */
export function createLunations(): Lunations {
  const quarterInstant = createMemo(PHASES_KEPT, computeQuarter);
  return numberPhases((lunation, phase) => quarterInstant(4 * lunation + PHASES.indexOf(phase)));
}

/** The same phases but for one, which falls at another instant: to see what would hang on it. */
export function movePhase(lunations: Lunations, lunation: number, phase: PhaseName, toMs: InstantMs): Lunations {
  return numberPhases((each, name) =>
    each === lunation && name === phase ? toMs : lunations.phaseInstant(each, name),
  );
}
