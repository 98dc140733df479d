import { describe, expect, it } from 'vitest';
import type { MoonView, NightRecord } from '../../../src/calendar/almanac-types.ts';
import { matchMoons } from '../../../src/quiz/questions/match-moons.ts';
import { describeDisc, nameLitAmount, renderMoonPicture } from '../../../src/quiz/questions/moon-words.ts';
import { listMoonSets, type MoonNight } from '../../../src/quiz/questions/moons-apart.ts';
import { areAllDifferent, listIds, readAloud, requireMatches } from './read-instance.ts';
import { ENGLISH, FRENCH, makeSkyFacts, PLACES, placeAt } from './sky-facts.ts';
import { readDrawing } from './verify-match-moons.ts';

/** A night of an invented run with a Moon lit so much on a side. */
function buildNight(
  number: number,
  litFraction: number,
  brightLimbDegrees: number,
  name = `Night ${number}`,
): MoonNight {
  const night = { name, number, group: 'All', groupNumber: 1, numberInGroup: number };
  const record: NightRecord = {
    date: `2026-07-${String(number).padStart(2, '0')}`,
    beginsMs: number,
    endsMs: number + 1,
    beginsWith: 'sunset',
    night,
    repeat: false,
    nightOfMonth: number,
    month: { name: 'Month', number: 1, year: 2026, firstDate: '2026-07-01', length: 30, intercalary: false },
    basis: 'computed',
  };
  const moon: MoonView = {
    atMs: number,
    altitudeDegrees: 30,
    azimuthDegrees: 0,
    litFraction,
    brightLimbDegrees,
    northPoleDegrees: 0,
    waxing: brightLimbDegrees < 180,
    up: true,
  };
  return { record, moon, words: describeDisc(moon, ENGLISH) };
}

describe('sets of Moons that a child can tell apart', () => {
  it('grades wide gaps 1, narrower ones 2 and mirror images 3', () => {
    const wide = [buildNight(1, 0.1, 90), buildNight(2, 0.4, 90), buildNight(3, 0.75, 90)];
    expect(listMoonSets(wide, 3).map(({ level }) => level)).toEqual([1]);
    const narrow = [buildNight(1, 0.24, 90), buildNight(2, 0.4, 90), buildNight(3, 0.75, 90)];
    expect(listMoonSets(narrow, 3).map(({ level }) => level)).toEqual([2]);
    const mirror = [buildNight(1, 0.4, 90), buildNight(2, 1, 90), buildNight(3, 0.42, 270)];
    expect(listMoonSets(mirror, 3).map(({ level }) => level)).toEqual([3]);
  });

  it.each([
    ['lit nearly as much on the same side', buildNight(1, 0.44, 90), buildNight(2, 0.56, 90)],
    ['described in the same words', buildNight(1, 0.71, 90), buildNight(2, 0.87, 90)],
    ['of the same name', buildNight(1, 0.5, 90), buildNight(2, 0.9, 90, 'NIGHT 1')],
    ['named in the words for the other', buildNight(1, 0.5, 90), buildNight(2, 0.9, 90, 'Half of a disc')],
    ['lit as much on sides that are hardly turned', buildNight(1, 0.5, 130), buildNight(2, 0.5, 200)],
    ['mirror images with an edge that hardly shows', buildNight(1, 0.96, 90), buildNight(2, 0.97, 270)],
  ])('have no two that are %s', (_, one, other) => {
    expect(listMoonSets([one, other], 2)).toEqual([]);
  });

  it('keeps a few sets for each first night and level', () => {
    const nights = Array.from({ length: 28 }, (_, index) => {
      const age = (index / 28) * 2 * Math.PI;
      return buildNight(index + 1, (1 - Math.cos(age)) / 2, index < 14 ? 90 : 270);
    });
    const sets = listMoonSets(nights, 4);
    for (const { level } of sets) expect([1, 2, 3]).toContain(level);
    const first = sets.filter((set) => set.nights[0] === nights[0]);
    expect(first.length).toBeGreaterThan(3);
    expect(first.length).toBeLessThanOrEqual(12);
    for (const set of sets) {
      const numbers = set.nights.map(({ record }) => record.night.number);
      expect(numbers).toEqual(numbers.toSorted((one, other) => one - other));
      expect((numbers.at(-1) ?? 0) - (numbers[0] ?? 0)).toBeLessThanOrEqual(16);
    }
  });
});

describe('the words for a drawing of the Moon', () => {
  it.each([
    [0.005, 'A dark disc, nothing of it lit.'],
    [0.05, 'A crescent as thin as a hair, lit on the left.'],
    [0.2, 'A thin crescent, lit on the left.'],
    [0.4, 'A broad crescent, lit on the left.'],
    [0.5, 'Half of a disc, lit on the left.'],
    [0.6, 'A little more than half of a disc, lit on the left, dark on the right.'],
    [0.8, 'About three quarters of a disc, lit on the left, dark on the right.'],
    [0.95, 'Nearly a whole disc, lit on the left, with a thin dark edge on the right.'],
    [0.995, 'A whole disc, lit all round.'],
  ])('say of %d lit: %s', (litFraction, words) => {
    const moon = { litFraction, brightLimbDegrees: 90, northPoleDegrees: 0, waxing: true };
    expect(describeDisc(moon, ENGLISH)).toBe(words);
    const picture = renderMoonPicture(moon, ENGLISH);
    expect(picture.properties).toMatchObject({ role: 'img', ariaLabel: words });
    expect(listIds([picture])).toEqual([]);
    const drawn = readDrawing([picture]);
    expect(Math.abs(drawn.litFraction - litFraction)).toBeLessThan(0.011);
    if (nameLitAmount(litFraction) === 'dark') expect(drawn).toEqual({ litFraction: 0, limbDegrees: undefined });
    else if (nameLitAmount(litFraction) === 'whole') expect(drawn).toEqual({ litFraction: 1, limbDegrees: undefined });
    else expect(drawn.limbDegrees).toBe(90);
  });
});

describe('match Moons to nights', () => {
  const facts = makeSkyFacts({ today: '2026-07-22', before: 2, after: 7 });

  it('asks for the same number of pairs in all questions, each of a night of the dates', () => {
    const instances = requireMatches(matchMoons.list(facts));
    expect(instances.length).toBeGreaterThan(4);
    expect(new Set(instances.map((instance) => instance.renderPairs().length)).size).toBe(1);
    expect(areAllDifferent(instances.map(({ asks }) => asks))).toBe(true);
    for (const instance of instances) {
      instance.renderPairs().forEach(({ left }, place) => {
        const record = facts.almanac.nightOn(instance.about.dates[place] ?? '');
        expect(readAloud(left)).toBe(record.night.name);
        expect(instance.about.nights[place]).toBe(record.night.number);
        expect(record.date >= facts.from && record.date <= facts.to).toBe(true);
      });
    }
  });

  it('names no night in the words for the drawings, and makes new trees each time', () => {
    const names = facts.almanac.run.map(({ name }) => name.toLowerCase());
    for (const instance of requireMatches(matchMoons.list(facts))) {
      for (const { right } of instance.renderPairs()) {
        const words = readAloud(right).toLowerCase();
        expect(names.filter((name) => words.includes(name))).toEqual([]);
        expect(JSON.stringify(right).toLowerCase()).not.toMatch(/night|moon \d/);
      }
      expect(instance.renderPairs()[0]?.right[0]).not.toBe(instance.renderPairs()[0]?.right[0]);
    }
  });

  it('says each night’s place and Moon in the key', () => {
    const [instance] = requireMatches(matchMoons.list(facts));
    const working = readAloud(instance?.renderWorking() ?? []);
    for (const { left, right } of instance?.renderPairs() ?? []) {
      expect(working).toContain(`${readAloud(left)} is night `);
      expect(working).toContain(readAloud(right));
    }
  });

  it('has nothing to ask where the Moon stays down, and asks around a polar night without a crescent', () => {
    const pole = placeAt(89.5, 0, 'Europe/Oslo');
    const down = makeSkyFacts({ today: '2026-07-01', before: 3, after: 3, place: pole, calendar: 'moulin' });
    expect(matchMoons.list(down)).toEqual([]);
    const polar = { today: '2030-12-26', place: PLACES.north, calendar: 'crescent' } as const;
    expect(() => matchMoons.list(makeSkyFacts(polar))).not.toThrow();
  });

  it('speaks French', () => {
    const [instance] = requireMatches(matchMoons.list({ ...facts, labels: FRENCH }));
    expect(readAloud(instance?.renderPrompt() ?? [])).toMatch(/^Quelle Lune va avec quelle nuit\s\?/);
    expect(readAloud(instance?.renderPairs()[0]?.right ?? [])).toMatch(/disque|croissant/);
  });
});
