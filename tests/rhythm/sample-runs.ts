import fc from 'fast-check';
import type { Rhythm, RunGroup } from '../../src/rhythm/timeline-types.ts';

/** Builds groups of nights with the given lengths, whole and in order, called A, B, C … */
export const buildGroups = (...lengths: readonly number[]): RunGroup[] => {
  let number = 0;
  return lengths.map((length, group) => ({
    kind: 'nights',
    name: String.fromCharCode(65 + group),
    items: Array.from({ length }, () => {
      number += 1;
      return { kind: 'night', name: `Night ${number}`, number } as const;
    }),
    wholeLength: length,
    firstInGroup: 1,
  }));
};

/** The last of some groups with its first items alone. */
export const cutLast = (groups: readonly RunGroup[], length: number): RunGroup[] =>
  groups.map((group, index) => (index < groups.length - 1 ? group : { ...group, items: group.items.slice(0, length) }));

/** A rhythm: a beat a night at 60, counted in by group, but for what is given. */
export const buildRhythm = (changes: Partial<Rhythm> = {}): Rhythm => ({
  tempoBeatsPerMinute: 60,
  beatsPerItem: 1,
  countIn: 'by-group',
  restBeats: 0,
  passes: 1,
  slowFirst: false,
  ...changes,
});

/** A made-up month of 30 nights in 8 groups. */
export const monthGroups = buildGroups(2, 5, 4, 3, 3, 4, 5, 4);

/** Any rhythm that the directive takes. */
export const anyRhythm: fc.Arbitrary<Rhythm> = fc.record({
  tempoBeatsPerMinute: fc.integer({ min: 30, max: 160 }),
  beatsPerItem: fc.integer({ min: 1, max: 8 }),
  countIn: fc.oneof(fc.constantFrom('by-group' as const, 'none' as const), fc.integer({ min: 1, max: 8 })),
  restBeats: fc.integer({ min: 0, max: 4 }),
  passes: fc.integer({ min: 1, max: 3 }),
  slowFirst: fc.boolean(),
});

/** Any piece of a month: some neighbouring groups, the first begun late and the last ended early. */
export const anyGroups: fc.Arbitrary<RunGroup[]> = fc
  .record({
    first: fc.integer({ min: 0, max: 7 }),
    count: fc.integer({ min: 1, max: 8 }),
    skipped: fc.integer({ min: 0, max: 1 }),
    kept: fc.integer({ min: 1, max: 5 }),
  })
  .map(({ first, count, skipped, kept }) => {
    const groups = cutLast(monthGroups.slice(first, first + count), kept);
    return groups.map((group, index) =>
      index > 0 || group.items.length <= skipped
        ? group
        : { ...group, items: group.items.slice(skipped), firstInGroup: 1 + skipped },
    );
  });
