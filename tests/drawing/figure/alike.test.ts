import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseGestureSet } from '../../../src/content/parse-gesture-set.ts';
import type { Gesture, GestureSet } from '../../../src/content/types.ts';
import { listAlikeGestures } from '../../../src/drawing/figure/figure.ts';
import { anyGesture, makeGesture, pose, swapGesture } from './any-gesture.ts';

const makeSet = (gestures: Record<string, Gesture>): GestureSet => ({ id: 'a', title: 'A', gestures, recordings: {} });

const readSet = (name: string): GestureSet => {
  const path = `content/gestures/${name}.yaml`;
  const { value } = parseGestureSet({ path, text: readFileSync(path, 'utf8') });
  if (value === undefined) throw new Error(`${path} has faults`);
  return value;
};

const requireGesture = (set: GestureSet, key: string): Gesture => {
  const gesture = set.gestures[key];
  if (gesture === undefined) throw new Error(`no ${key}`);
  return gesture;
};

describe('listAlikeGestures', () => {
  it('finds two gestures with the same notation, whatever it is, and names both', () => {
    fc.assert(
      fc.property(anyGesture, (gesture) => {
        const set = makeSet({ first: gesture, second: { ...gesture, cue: 'Another cue.' } });
        expect(listAlikeGestures(set)).toEqual([{ first: 'first', second: 'second' }]);
      }),
    );
  });

  it('tells left from right', () => {
    fc.assert(
      fc.property(anyGesture, (gesture) => {
        fc.pre(gesture.both === undefined && (gesture.left === undefined || gesture.right === undefined));
        fc.pre(gesture.then === undefined);
        expect(listAlikeGestures(makeSet({ one: gesture, other: swapGesture(gesture) }))).toEqual([]);
      }),
    );
  });

  it.each(['estuary', 'moulin'])('finds none in the demonstration set %s', (name) => {
    expect(listAlikeGestures(readSet(name))).toEqual([]);
  });

  it('finds the twin that two demonstration sets have between them', () => {
    const [estuary, moulin] = [readSet('estuary'), readSet('moulin')];
    const cover = requireGesture(estuary, 'cover');
    const shutters = requireGesture(moulin, 'fermer-les-volets');
    expect(listAlikeGestures(makeSet({ ...estuary.gestures, shutters }))).toEqual([
      { first: 'cover', second: 'shutters' },
    ]);
    expect(listAlikeGestures(makeSet({ cover, shutters }))).toHaveLength(1);
  });

  it.each([
    ['shape', pose('open', 'chest', 'front', 'up'), pose('spread', 'chest', 'front', 'up'), true],
    ['shape', pose('open', 'chest', 'front', 'up'), pose('fist', 'chest', 'front', 'up'), false],
    ['palm', pose('open', 'chest', 'front', 'up'), pose('open', 'chest', 'back', 'up'), false],
    ['fingers', pose('open', 'chest', 'front', 'up'), pose('open', 'chest', 'front', 'in'), false],
    ['place', pose('open', 'chest', 'front', 'up'), pose('open', 'waist', 'front', 'up'), false],
  ])('compares by what is seen: another %s', (_, one, other, alike) => {
    const set = makeSet({ one: makeGesture({ both: one }), other: makeGesture({ both: other }) });
    expect(listAlikeGestures(set)).toHaveLength(alike ? 1 : 0);
  });

  it('goes by the file for gestures with pictures', () => {
    const withPicture = (packName: string) =>
      makeGesture({}, { picture: { file: packName, packName, widthPx: 9, heightPx: 9, bytes: new Uint8Array() } });
    const set = makeSet({
      a: withPicture('1.png'),
      b: withPicture('2.png'),
      c: withPicture('1.png'),
      d: makeGesture({}),
    });
    expect(listAlikeGestures(set)).toEqual([{ first: 'a', second: 'c' }]);
  });

  it('gives every pair in the order of the file', () => {
    const gesture = () => makeGesture({ left: pose('fist', 'low', 'in', 'down') });
    expect(listAlikeGestures(makeSet({ c: gesture(), a: gesture(), b: gesture() }))).toEqual([
      { first: 'c', second: 'a' },
      { first: 'c', second: 'b' },
      { first: 'a', second: 'b' },
    ]);
  });
});
