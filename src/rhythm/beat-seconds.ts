import type { TempoChange } from './timeline-types.ts';

/**
 * Seconds from the beginning of a track to a beat: one division for each tempo that it has had until then, so that
 * errors do not add up beat by beat.
 * @param tempi in order; the first at beat 0
 * @param beat counted from 0
 */
export function computeBeatSeconds(tempi: readonly TempoChange[], beat: number): number {
  return tempi.reduce((seconds, { atBeat, beatsPerMinute }, index) => {
    const until = Math.min(beat, tempi[index + 1]?.atBeat ?? beat);
    return seconds + (Math.max(0, until - atBeat) * 60) / beatsPerMinute;
  }, 0);
}
