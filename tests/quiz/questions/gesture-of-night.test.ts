import { describe, expect, it } from 'vitest';
import type { ContentPicture, Gesture, GestureSet } from '../../../src/content/types.ts';
import { listAlikeGestures } from '../../../src/drawing/figure/figure.ts';
import type { QuizFacts } from '../../../src/quiz/model.ts';
import { describeGesture } from '../../../src/quiz/questions/describe-gesture.ts';
import { gestureOfNight } from '../../../src/quiz/questions/gesture-of-night.ts';
import { areAllDifferent, listIds, readAloud, requireChoices } from './read-instance.ts';
import { ENGLISH, FRENCH, GESTURES, makeSkyFacts } from './sky-facts.ts';

const facts = makeSkyFacts({ today: '2026-07-22', before: 2, after: 7 });

/** The nights of the run with other gestures: by the number of the night. */
function withGestures(base: QuizFacts, gestures: Readonly<Record<number, string>>, set = base.gestures): QuizFacts {
  const run = base.almanac.run.map(({ gesture: _, ...night }) => {
    const key = gestures[night.number];
    return key === undefined ? night : { ...night, gesture: key };
  });
  return { ...base, gestures: set, almanac: { ...base.almanac, run } };
}

function buildPicture(number: number): ContentPicture {
  return {
    file: `${number}.png`,
    packName: `picture-${number}.png`,
    widthPx: 3,
    heightPx: 4,
    bytes: Uint8Array.of(number),
  };
}

describe('which gesture belongs to a night', () => {
  const instances = requireChoices(gestureOfNight.list(facts));

  it('asks for each night of the dates once on each level', () => {
    expect(instances).toHaveLength(3 * 10);
    expect(areAllDifferent(instances.map(({ asks, level }) => `${asks} ${level}`))).toBe(true);
  });

  it('has four pictures that all differ, with words and without a name or an id', () => {
    const alike = listAlikeGestures(facts.gestures);
    expect(alike.length).toBeLessThan(3);
    const names = facts.almanac.run.map(({ name }) => name.toLowerCase());
    for (const instance of instances) {
      for (const set of instance.listWrongSets()) {
        const options = [instance.renderRight(), ...set.map(({ content }) => content)];
        expect(options).toHaveLength(4);
        expect(areAllDifferent(options.map((option) => JSON.stringify(option)))).toBe(true);
        expect(areAllDifferent(options.map(readAloud))).toBe(true);
        for (const option of options) {
          expect(option[0]).toMatchObject({ tagName: 'svg', properties: { role: 'img' } });
          expect(listIds(option)).toEqual([]);
          expect(names.filter((name) => readAloud(option).toLowerCase().includes(name))).toEqual([]);
        }
      }
    }
  });

  it('takes far nights, then a neighbour and the mirror night, then the nearest', () => {
    const [one, two, three] = [1, 2, 3].map((level) =>
      instances.find((instance) => instance.level === level && instance.about.nights[0] === 12),
    );
    const tell = (instance: typeof one) =>
      instance?.listWrongSets().map((set) => set.map(({ means }) => readAloud(means).replace(/^It belongs to /, ''))) ??
      [];
    for (const means of tell(one)
      .flat()
      .filter((each) => !each.includes('as far from')))
      expect(Number(/(\d+) nights/.exec(means)?.[1])).toBeGreaterThan(4);
    expect(tell(two)).toHaveLength(2);
    for (const set of tell(two)) {
      expect(set[0]).toMatch(/, 1 night (earlier|later) in the run\.$/);
      // Night 12 of 30 and night 19: each has eleven before it, or after it.
      expect(set[1]).toBe('Nibbled Moon, as far from the end of the run as this night is from its beginning.');
    }
    expect(tell(three)).toHaveLength(4);
    for (const means of tell(three).flat()) expect(Number(/(\d+) nights?/.exec(means)?.[1])).toBeLessThan(4);
    // The right one is not in the middle each time.
    expect(tell(three).map((set) => set.filter((means) => means.includes('earlier')).length)).toEqual([0, 1, 2, 3]);
  });

  it('never has two nights that share a gesture as options, nor asks for a night without one', () => {
    const keys = ['cover', 'peep', 'tip-boat', 'full-circle', 'scoop'];
    const shared = withGestures(
      facts,
      Object.fromEntries(Array.from({ length: 20 }, (_, n) => [n + 1, keys[n % 5] ?? ''])),
    );
    const asked = requireChoices(gestureOfNight.list(shared));
    expect(asked.length).toBeGreaterThan(0);
    for (const instance of asked) {
      expect(instance.about.nights[0]).toBeLessThanOrEqual(20);
      for (const set of instance.listWrongSets()) {
        const options = [instance.renderRight(), ...set.map(({ content }) => content)];
        expect(areAllDifferent(options.map(readAloud))).toBe(true);
      }
    }
  });

  it('asks nothing where too few gestures differ', () => {
    expect(gestureOfNight.list(withGestures(facts, { 8: 'cover', 9: 'peep' }))).toEqual([]);
    expect(gestureOfNight.list(withGestures(facts, {}))).toEqual([]);
    const three = gestureOfNight.list(withGestures(facts, { 8: 'not-there', 9: 'peep', 10: 'scoop', 11: 'cover' }));
    expect(three.length).toBeGreaterThan(0);
    expect(three.filter(({ about }) => about.nights.includes(8))).toEqual([]);
  });

  it('shows the author’s own pictures beside each other alone, with the cue', () => {
    const estuary = GESTURES.estuary.gestures;
    const [cover, peep, scoop] = [estuary['cover'], estuary['peep'], estuary['scoop']];
    if (cover === undefined || peep === undefined || scoop === undefined)
      throw new Error('The demonstration has these.');
    const photo = (number: number, cue: string): Gesture => ({
      move: 'hold',
      cue,
      seated: cue,
      picture: buildPicture(number),
    });
    const set: GestureSet = {
      ...GESTURES.estuary,
      gestures: {
        ...estuary,
        a: photo(1, 'Arms wide.'),
        b: photo(2, 'One arm up.'),
        c: photo(3, 'Both arms down.'),
        d: photo(4, 'Like half a plate.'),
      },
    };
    const nights = { 8: 'a', 9: 'b', 10: 'c', 11: 'cover', 12: 'peep', 13: 'scoop' };
    const asked = requireChoices(gestureOfNight.list(withGestures(facts, nights, set)));
    const ofPhotos = asked.filter((instance) => (instance.about.nights[0] ?? 0) <= 10);
    expect(ofPhotos.length).toBeGreaterThan(0);
    for (const instance of ofPhotos) {
      const options = [instance.renderRight(), ...(instance.listWrongSets()[0] ?? []).map(({ content }) => content)];
      expect(options.map(readAloud).sort()).toEqual(['Arms wide.', 'Both arms down.', 'One arm up.']);
      for (const option of options) expect(JSON.stringify(option)).toMatch(/"href":"images\/picture-\d\.png"/);
    }
    for (const instance of asked.filter((each) => (each.about.nights[0] ?? 0) > 10)) {
      expect(JSON.stringify(instance.listWrongSets().flat())).not.toContain('picture-');
    }
    // Half Shell, night 8: the cue has a word of its name.
    const told = requireChoices(gestureOfNight.list(withGestures(facts, { ...nights, 8: 'd' }, set)));
    expect(told.filter((instance) => instance.about.nights[0] === 8)).toEqual([]);
  });

  it('says the cue in the key', () => {
    const [instance] = instances;
    const { night } = facts.almanac.nightOn(facts.from);
    const cue = facts.gestures.gestures[night.gesture ?? '']?.cue ?? 'no cue';
    expect(readAloud(instance?.renderWorking() ?? [])).toBe(`${night.name}: ${cue} Do it with the class, facing them.`);
  });
});

describe('the words for the drawing of a gesture', () => {
  it('tell each hand, and how it moves or where it ends', () => {
    const { gestures } = GESTURES.estuary;
    const tell = (key: string, labels = ENGLISH) => {
      const gesture = gestures[key];
      if (gesture === undefined) throw new Error(`The demonstration has no gesture ${key}.`);
      return describeGesture(gesture, labels);
    };
    expect(tell('cover')).toBe(
      'Both hands: flat, level with the face, palm to the body, fingers up. Closing, or coming together.',
    );
    expect(tell('stack-fists')).toBe(
      'Left hand: a fist, level with the waist, palm inwards, fingers to the front. Right hand: a fist, level with the chest, palm inwards, fingers to the front. Held still.',
    );
    expect(tell('float-down')).toBe(
      'Right hand: curved, level with the face, palm down, fingers to the front. At the end: Right hand: curved, level with the waist, palm down, fingers to the front.',
    );
    expect(tell('cover', FRENCH)).toMatch(/^Les deux mains\s: à plat, à hauteur du visage, paume vers le corps/);
  });
});
