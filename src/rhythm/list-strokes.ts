import type { Stroke, Timeline, TimelineEvent } from './timeline-types.ts';

/** What is heard on each beat of a run, one stroke a beat from its beginning to its end. */
export function listStrokes(timeline: Timeline): Stroke[] {
  return timeline.events.flatMap(listEventStrokes);
}

function listEventStrokes(event: TimelineEvent): Stroke[] {
  if (event.kind !== 'item') return Array<Stroke>(event.beats).fill(event.kind);
  return [event.strong ? 'rim' : 'drum', ...Array<Stroke>(event.beats - 1).fill('soft')];
}
