import { describe, expect, it } from 'vitest';
import { litSide } from '../../../src/quiz/questions/lit-side.ts';
import { listWrongSides } from '../../../src/quiz/questions/lit-sides.ts';
import { areAllDifferent, readAloud, requireChoices } from './read-instance.ts';
import { FRENCH, makeSkyFacts, PLACES, placeAt } from './sky-facts.ts';
import { requireSideAngle } from './verify-lit-side.ts';

const SCHOOL_WEEK = makeSkyFacts({ today: '2026-07-22', before: 2, after: 7 });

describe('which side of the Moon is lit', () => {
  it('is asked with four sides a quarter turn apart, the right one among them once', () => {
    const instances = requireChoices(litSide.list(SCHOOL_WEEK));
    expect(instances.length).toBeGreaterThan(6);
    for (const instance of instances) {
      const right = readAloud(instance.renderRight());
      for (const set of instance.listWrongSets()) {
        const options = [right, ...set.map(({ content }) => readAloud(content))];
        expect(options).toHaveLength(4);
        const angles = options.map(requireSideAngle).sort((one, other) => one - other);
        expect(angles.map((angle) => angle - (angles[0] ?? 0))).toEqual([0, 90, 180, 270]);
        for (const { means } of set) expect(readAloud(means)).not.toBe('');
      }
    }
  });

  // A growing half Moon at dusk: the Sun has gone down in the west, which is on the left of who faces the Moon in the
  // north, and on the right of who faces it in the south (plain geometry).
  it.each([
    ['saltgrass', 'left'],
    ['ormevire', 'right'],
  ] as const)('lights the growing half Moon at %s on the %s', (place, hand) => {
    // First quarter: 21 July 2026, 11:06 UT (published phase tables, from memory).
    const facts = makeSkyFacts({ today: '2026-07-21', before: 2, after: 2, place: PLACES[place] });
    const rights = requireChoices(litSide.list(facts)).map((instance) => readAloud(instance.renderRight()));
    expect(rights.length).toBeGreaterThan(0);
    for (const right of rights) expect(right.endsWith(hand)).toBe(true);
  });

  it('takes the mirror image for the other half of the month, or the other side of the equator', () => {
    expect(listWrongSides('left')).toEqual([
      { side: 'bottom', reason: 'below' },
      { side: 'right', reason: 'mirror' },
      { side: 'top', reason: 'lamp' },
    ]);
    expect(listWrongSides('bottom-left')).toEqual([
      { side: 'bottom-right', reason: 'mirror' },
      { side: 'top-right', reason: 'dark-side' },
      { side: 'top-left', reason: 'upside-down' },
    ]);
    expect(listWrongSides('bottom').map(({ reason }) => reason)).toEqual(['upright', 'dark-side', 'upright']);
    const [growing] = requireChoices(litSide.list(SCHOOL_WEEK));
    const means = growing?.listWrongSets()[0]?.map((wrong) => readAloud(wrong.means)) ?? [];
    expect(means.join('\n')).toContain('as while the Moon shrinks, or in pictures from the other side of the equator');
  });

  it('says shape and growth on level 1 alone, and no side', () => {
    for (const instance of litSide.list(SCHOOL_WEEK)) {
      const prompt = readAloud(instance.renderPrompt());
      expect(/growing|shrinking/.test(prompt)).toBe(instance.level === 1);
      expect(prompt).not.toMatch(/left|right|top|bottom/);
    }
  });

  it('is a trap where the light has changed sides since the night of the lesson', () => {
    // Full Moon: 29 July 2026, 14:36 UT (published phase tables, from memory), the night of 29 July at this place.
    const facts = makeSkyFacts({ today: '2026-07-27', before: 4, after: 8 });
    const levels = new Map(litSide.list(facts).map(({ about, level }) => [`${about.dates[0]} ${level}`, level]));
    expect([...levels.keys()].filter((key) => key.endsWith(' 2')).every((key) => key < '2026-07-30')).toBe(true);
    expect([...levels.keys()].filter((key) => key.endsWith(' 3')).every((key) => key > '2026-07-30')).toBe(true);
    expect(new Set(levels.values())).toEqual(new Set([1, 2, 3]));
    const trap = litSide.list(facts).find(({ level }) => level === 3);
    expect(readAloud(trap?.renderWorking() ?? [])).toContain('the light changes sides');
  });

  it('is not asked near new and full Moon, nor where the Moon does not come up', () => {
    expect(litSide.list(makeSkyFacts({ today: '2026-07-29', before: 1, after: 1 }))).toEqual([]);
    expect(litSide.list(makeSkyFacts({ today: '2026-08-12', before: 1, after: 1 }))).toEqual([]);
    // At the pole the Moon of the summer's full Moons is down for days.
    const pole = placeAt(89.9, 0, 'Europe/Oslo');
    const summer = makeSkyFacts({ today: '2026-07-01', before: 3, after: 3, place: pole, calendar: 'moulin' });
    expect(litSide.list(summer)).toEqual([]);
  });

  it('asks one thing once, within the dates', () => {
    const instances = litSide.list(SCHOOL_WEEK);
    expect(areAllDifferent(instances.map(({ asks, level }) => `${asks} ${level}`))).toBe(true);
    for (const { about } of instances) {
      for (const date of about.dates) expect(date >= SCHOOL_WEEK.from && date <= SCHOOL_WEEK.to).toBe(true);
    }
  });

  it('speaks French', () => {
    const [instance] = requireChoices(litSide.list({ ...SCHOOL_WEEK, labels: FRENCH }));
    expect(readAloud(instance?.renderPrompt() ?? [])).toMatch(/^Prenons la Lune le \S+ \d+\sjuillet à \d+\sh\s\d\d/);
    expect(readAloud(instance?.renderRight() ?? [])).toMatch(/gauche|droite|haut|bas/);
  });
});
