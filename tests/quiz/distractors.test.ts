import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RunNight } from '../../src/calendar/almanac-types.ts';
import { hasDistractors, listDistractorSets } from '../../src/quiz/distractors.ts';
import { foldText } from '../../src/quiz/fold-text.ts';

function makeRun(names: readonly string[]): RunNight[] {
  return names.map((name, place) => ({
    name,
    number: place + 1,
    group: 'All',
    groupNumber: 1,
    numberInGroup: place + 1,
  }));
}

const RUN = makeRun(Array.from({ length: 30 }, (_, place) => `n${place + 1}`));

function nightAt(run: readonly RunNight[], number: number): RunNight {
  const night = run[number - 1];
  if (night === undefined) throw new Error(`No night ${number}.`);
  return night;
}

describe('listDistractorSets', () => {
  it('puts the right night first, in the middle and last among its neighbours, and adds the mirror phase', () => {
    expect(
      listDistractorSets(RUN, nightAt(RUN, 8)).map((set) => set.map(({ name, reason }) => `${name} ${reason}`)),
    ).toEqual([
      ['n7 too-early', 'n6 too-early', 'n23 mirror'],
      ['n7 too-early', 'n9 too-late', 'n23 mirror'],
      ['n9 too-late', 'n10 too-late', 'n23 mirror'],
    ]);
  });

  it('goes around the end of the run, and takes a far night where the mirror is a neighbour', () => {
    expect(listDistractorSets(RUN, nightAt(RUN, 1))[1]).toEqual([
      { name: 'n30', reason: 'too-early' },
      { name: 'n2', reason: 'too-late' },
      { name: 'n16', reason: 'too-late' },
    ]);
  });

  it('has a night that is passed over in every set', () => {
    const sets = listDistractorSets(RUN, nightAt(RUN, 1), [nightAt(RUN, 29)], [nightAt(RUN, 30)]);
    expect(sets).toHaveLength(2);
    for (const set of sets) expect(set[0]).toEqual({ name: 'n30', reason: 'not-reached' });
    expect(sets.flat().map(({ name }) => name)).not.toContain('n29');
  });

  it('never has two equal options, whatever the names', () => {
    const names = fc.array(fc.constantFrom('a', 'A', 'b', ' b', 'c', 'd', '\u00E9', 'e\u0301', 'f', 'g'), {
      minLength: 1,
      maxLength: 12,
    });
    fc.assert(
      fc.property(names, fc.nat(), fc.nat(), (list, chosen, avoided) => {
        const run = makeRun(list);
        const right = nightAt(run, (chosen % list.length) + 1);
        const avoid = nightAt(run, (avoided % list.length) + 1);
        const sets = listDistractorSets(run, right, [avoid]);
        expect(sets.length > 0).toBe(hasDistractors(run, right, [avoid]));
        for (const set of sets) {
          const options = [right.name, ...set.map(({ name }) => name)].map(foldText);
          expect(new Set(options).size).toBe(options.length);
          expect(set.length).toBeGreaterThan(0);
          expect(set.length).toBeLessThanOrEqual(3);
          if (foldText(right.name) !== foldText(avoid.name)) expect(options).not.toContain(foldText(avoid.name));
        }
      }),
    );
  });

  it('offers nothing where the calendar has no other name', () => {
    const run = makeRun(['a', 'A']);
    expect(listDistractorSets(run, nightAt(run, 1))).toEqual([]);
  });
});
