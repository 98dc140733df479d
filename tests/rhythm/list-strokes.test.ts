import { describe, expect, it } from 'vitest';
import { computeTimeline } from '../../src/rhythm/compute-timeline.ts';
import { listStrokes } from '../../src/rhythm/list-strokes.ts';
import { buildGroups, buildRhythm } from './sample-runs.ts';

describe('listStrokes', () => {
  it('gives a stroke for every beat', () => {
    const timeline = computeTimeline(buildGroups(2, 1), buildRhythm({ beatsPerItem: 3, restBeats: 2 }));
    expect(listStrokes(timeline)).toEqual([
      ...['count', 'count', 'rim', 'soft', 'soft', 'drum', 'soft', 'soft'],
      ...['rest', 'rest', 'count', 'rim', 'soft', 'soft'],
    ]);
  });
});
