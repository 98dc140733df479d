import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Gesture } from '../../../src/content/types.ts';
import { table } from '../../../src/drawing/figure/body.ts';
import { type FigureView, figureBox, renderFigure, renderFigureParts } from '../../../src/drawing/figure/figure.ts';
import { seeGesture } from '../../../src/drawing/figure/see-gesture.ts';
import { roundTo } from '../../../src/drawing/round.ts';
import { attribute, findByClass, listElements, toHtml } from '../find-elements.ts';
import { anyGesture, type DIRECTIONS, makeGesture, makeGoingOn, PLACES, pose, SHAPES } from './any-gesture.ts';
import { measureDark, paint } from './paint.ts';
import { listPenStrokes } from './pen-strokes.ts';

const VIEWS: readonly FigureView[] = ['facing', 'own', 'mirror'];

const wave = makeGesture({ right: pose('open', 'face', 'front', 'up') });

describe('renderFigure', () => {
  it('is a picture of the box, hidden from screen readers', () => {
    const figure = renderFigure(wave, 'facing');
    expect(figure.tagName).toBe('svg');
    expect(attribute(figure, 'viewBox')).toBe(`0 0 ${figureBox.width} ${figureBox.height}`);
    expect(attribute(figure, 'ariaHidden')).toBe('true');
    expect(figure.properties['className']).toEqual(['figure']);
  });

  it('has no inline style, no id and no words', () => {
    const elements = listElements(renderFigure(makeGesture(wave, { move: 'rise' }), 'facing'));
    expect(elements.filter(({ properties }) => 'style' in properties || 'id' in properties)).toEqual([]);
    expect(elements.flatMap(({ children }) => children).filter(({ type }) => type !== 'element')).toEqual([]);
  });

  it('gives the same bytes again, and numbers without long tails', () => {
    fc.assert(
      fc.property(anyGesture, fc.constantFrom(...VIEWS), (gesture, view) => {
        const html = toHtml(renderFigure(gesture, view));
        expect(toHtml(renderFigure({ ...gesture }, view))).toBe(html);
        expect(html).not.toMatch(/\d\.\d\d|NaN|Infinity|e-\d/);
      }),
    );
  });

  it('draws a gesture object once', () => {
    const first = renderFigureParts(wave, 'facing')[0];
    const second = renderFigureParts(wave, 'facing')[0];
    const mirrored = renderFigureParts(wave, 'mirror')[0];
    if (first?.type !== 'element' || second?.type !== 'element' || mirrored?.type !== 'element')
      throw new Error('no drawing');
    expect(second.children[0]).toBe(first.children[0]);
    expect(mirrored.children[0]).toBe(first.children[0]);
  });

  it('draws the two arms of a gesture of both hands alike, one of them flipped', () => {
    const [drawing] = renderFigureParts(makeGesture({ both: pose('open', 'face', 'front', 'up') }), 'facing');
    const arms = drawing?.type === 'element' ? drawing.children.slice(1) : [];
    const flipped = arms.flatMap((arm) =>
      arm.type === 'element' && arm.properties['transform'] !== undefined ? arm.children : [],
    );
    const straight = arms.filter((arm) => arm.type === 'element' && arm.properties['transform'] === undefined);
    expect(flipped).toHaveLength(1);
    expect(flipped.map((arm) => toHtml(arm))).toEqual(straight.map((arm) => toHtml(arm)));
  });

  it('shows a picture of the author instead, in the same box and the same in every view', () => {
    const picture = { file: 'a.png', packName: 'picture-1.png', widthPx: 9, heightPx: 9, bytes: new Uint8Array() };
    for (const view of VIEWS) {
      const [image, ...others] = renderFigureParts(makeGesture({}, { picture }), view, { imageFolder: '../images/' });
      expect(others).toEqual([]);
      expect(image).toMatchObject({
        tagName: 'image',
        properties: { href: '../images/picture-1.png', width: '300', height: '324' },
      });
    }
  });

  it('draws a gesture without hands as a figure that rests', () => {
    expect(toHtml(renderFigure(makeGesture({}), 'facing'))).toContain('<path');
  });
});

describe('the frame', () => {
  it('holds all that is drawn, whatever is written', () => {
    fc.assert(
      fc.property(anyGesture, fc.constantFrom(...VIEWS), fc.boolean(), (gesture, view, seated) => {
        const space = listPenStrokes(renderFigureParts(gesture, view, { seated })).flatMap(
          ({ lines, stroke, width }) => {
            // Halos and other paper may touch the edge: they are not seen there.
            const reach = stroke === undefined || stroke === '#fff' ? 0 : width / 2;
            return lines
              .flat()
              .flatMap(([x, y]) => [x - reach, y - reach, figureBox.width - x - reach, figureBox.height - y - reach]);
          },
        );
        expect(Math.min(...space)).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 500 },
    );
  });
});

const jointsOf = (gesture: Gesture, view: 'front' | 'behind') => {
  const joints = seeGesture(gesture, view, 'standing').arms.map(({ placed, upper, fore }) => ({
    side: placed.arm.side,
    points: [upper.from, upper.to, fore.to],
  }));
  return joints.sort((one, other) => one.side.localeCompare(other.side));
};

/** To a millionth of a unit, beyond which doubles differ by their way. */
const roundPoint = ([x, y]: readonly [number, number]) => [roundTo(x, 6), roundTo(y, 6)];
const mirrorX = ([x, y]: readonly [number, number]) => roundPoint([figureBox.width - x, y]);

describe('own', () => {
  it('is the exact mirror of facing in handedness', () => {
    fc.assert(
      fc.property(anyGesture, (gesture) => {
        const [facing, own] = [jointsOf(gesture, 'front'), jointsOf(gesture, 'behind')];
        expect(own.map(({ side }) => side)).toEqual(['left', 'right']);
        expect(own.map(({ points }) => points.map(roundPoint))).toEqual(
          facing.map(({ points }) => points.map(mirrorX)),
        );
      }),
    );
  });

  it('has the right hand at the right, where facing has it at the left', () => {
    const right = (view: 'front' | 'behind') =>
      seeGesture(wave, view, 'standing').arms.find(({ placed }) => placed.arm.side === 'right');
    expect(right('front')?.hand.middle[0]).toBeLessThan(figureBox.width / 2);
    expect(right('behind')?.hand.middle[0]).toBeGreaterThan(figureBox.width / 2);
  });

  it.each([
    ['front', 'palm', 'back'],
    ['back', 'back', 'palm'],
  ] as const)('shows the other side of a hand with its palm to the %s', (palm, facing, own) => {
    for (const at of PLACES) {
      const gesture = makeGesture({ both: pose('open', at, palm, 'up') });
      expect(seeGesture(gesture, 'front', 'standing').arms.map(({ hand }) => hand.face)).toEqual([facing, facing]);
      expect(seeGesture(gesture, 'behind', 'standing').arms.map(({ hand }) => hand.face)).toEqual([own, own]);
    }
  });

  it('has a light body without a face', () => {
    expect(findByClass(renderFigure(wave, 'own'), 'figure-light')).toHaveLength(1);
    expect(findByClass(renderFigure(wave, 'facing'), 'figure-light')).toHaveLength(0);
    const strokes = (view: FigureView) => listPenStrokes(renderFigureParts(makeGesture({}), view)).length;
    expect(strokes('own')).toBe(strokes('facing') - 2);
  });
});

describe('mirror', () => {
  it('is facing, flipped left to right', () => {
    fc.assert(
      fc.property(anyGesture, (gesture) => {
        const facing = listPenStrokes(renderFigureParts(gesture, 'facing')).flatMap(({ lines }) => lines.flat());
        const mirror = listPenStrokes(renderFigureParts(gesture, 'mirror')).flatMap(({ lines }) => lines.flat());
        const off = facing.map(([x, y], index) => {
          const [flippedX, flippedY] = mirror[index] ?? [0, 0];
          return Math.hypot(figureBox.width - x - flippedX, y - flippedY);
        });
        expect(mirror).toHaveLength(facing.length);
        expect(Math.max(...off)).toBeLessThan(1e-9);
      }),
      { numRuns: 30 },
    );
  });
});

describe('a seated figure', () => {
  it('keeps its hands above the table, whatever is written', () => {
    fc.assert(
      fc.property(anyGesture, fc.constantFrom('front', 'behind'), (gesture, from) => {
        const { arms, seconds } = seeGesture(gesture, from, 'seated');
        const points = [...arms, ...seconds].flatMap(({ hand }) => [
          ...hand.flat,
          ...hand.digits.flatMap((digit) => digit.points),
        ]);
        expect(Math.max(...points.map(([, y]) => y))).toBeLessThanOrEqual(table.top);
      }),
      { numRuns: 400 },
    );
  });

  it.each([
    ['open', 'up'],
    ['open', 'front'],
    ['curved', 'in'],
  ] as const)('does not reach over its head: %s, fingers %s', (shape, fingers) => {
    const gesture = makeGesture({ both: pose(shape, 'above-head', 'down', fingers) });
    for (const { hand } of seeGesture(gesture, 'front', 'seated').arms) expect(hand.middle[1]).toBeGreaterThan(90);
    for (const { hand } of seeGesture(gesture, 'front', 'standing').arms) expect(hand.middle[1]).toBeLessThan(60);
  });

  it('has a table, and differs from a standing one in bytes', () => {
    const bytes = (seated: boolean) => toHtml(renderFigure(wave, 'facing', { seated }));
    expect(bytes(true)).not.toBe(bytes(false));
    expect(bytes(false)).toBe(toHtml(renderFigure(wave, 'facing')));
  });
});

describe('a hand that goes on to another pose', () => {
  const start = pose('open', 'chest', 'down', 'front');

  it('is drawn light where it comes to, with an arrow', () => {
    const { seconds, marks } = seeGesture(
      makeGoingOn({ right: start }, { right: { ...start, at: 'side' } }),
      'front',
      'standing',
    );
    expect(seconds.map(({ placed }) => placed.arm.side)).toEqual(['right']);
    expect(marks).toHaveLength(1);
    const tip = marks[0]?.heads[0]?.tip ?? [0, 0];
    expect(
      Math.hypot(tip[0] - (seconds[0]?.hand.middle[0] ?? 0), tip[1] - (seconds[0]?.hand.middle[1] ?? 0)),
    ).toBeLessThan(60);
  });

  it('that only turns is shown beside itself', () => {
    const turned = makeGoingOn({ both: start }, { both: { ...start, palm: 'up' } }, 'turn');
    const { arms, seconds } = seeGesture(turned, 'front', 'standing');
    const outOf = ({ hand }: (typeof arms)[number]) => Math.abs(hand.middle[0] - figureBox.width / 2);
    expect(seconds.map(({ hand }) => hand.face)).toEqual(['palm', 'palm']);
    expect(Math.min(...seconds.map(outOf)) - Math.max(...arms.map(outOf))).toBeGreaterThan(25);
  });

  it('is left out when it stays', () => {
    const both = { left: start, right: { ...start, shape: 'fist' } } as const;
    const { seconds } = seeGesture(makeGoingOn(both, { ...both, left: { ...start, at: 'face' } }), 'front', 'standing');
    expect(seconds.map(({ placed }) => placed.arm.side)).toEqual(['left']);
  });
});

describe('a move without a second pose in writing', () => {
  const middle = (gesture: Gesture) => {
    const { arms, seconds, marks } = seeGesture(gesture, 'front', 'standing');
    const first = arms.find(({ placed }) => placed.shape !== 'resting')?.hand.middle ?? [0, 0];
    return { first, second: seconds[0]?.hand.middle ?? [0, 0], seconds: seconds.length, marks };
  };

  it.each([
    ['rise', 'waist', -1, false],
    ['rise', 'face', 1, true],
    ['fall', 'face', 1, false],
    ['fall', 'low', -1, true],
  ] as const)('%s at %s has its other end above or below', (move, at, direction, arrives) => {
    const { first, second, marks } = middle(makeGesture({ left: pose('open', at, 'in', 'up') }, { move }));
    expect(Math.sign(second[1] - first[1])).toBe(direction);
    const [line] = marks[0]?.lines ?? [];
    const [start, end] = [line?.[0]?.[1] ?? 0, line?.at(-1)?.[1] ?? 0];
    // The arrow runs the way the hand goes: up for a rise, down for a fall, to the written pose where it arrives.
    expect(Math.sign(end - start)).toBe(move === 'rise' ? -1 : 1);
    expect(Math.abs(end - first[1]) < Math.abs(start - first[1])).toBe(arrives);
  });

  it.each([
    ['open', 'chest', 1],
    ['close', 'chest', 1],
    ['close', 'side', -1],
  ] as const)('%s at %s has its other end farther out or in', (move, at, direction) => {
    const { first, second } = middle(makeGesture({ both: pose('open', at, 'front', 'up') }, { move }));
    expect(Math.sign(Math.abs(second[0] - 150) - Math.abs(first[0] - 150))).toBe(direction);
  });

  it('crosses the middle', () => {
    const { first, second } = middle(makeGesture({ left: pose('open', 'chest', 'front', 'up') }, { move: 'cross' }));
    expect(Math.sign(second[0] - 150)).toBe(-Math.sign(first[0] - 150));
  });

  it.each(['turn', 'ripple'] as const)('%s is a sign beside the hand', (move) => {
    const { seconds, marks } = middle(makeGesture({ both: pose('open', 'chest', 'front', 'up') }, { move }));
    expect([seconds, marks.length]).toEqual([0, 2]);
  });

  it.each(['close', 'open'] as const)('%s of one pinching hand is done by its fingers', (move) => {
    const { seconds, marks } = middle(makeGesture({ left: pose('pinch', 'side', 'front', 'up') }, { move }));
    expect([seconds, marks[0]?.heads.length]).toEqual([0, 2]);
  });

  it.each([
    ['an open hand under the other', pose('open', 'waist', 'up', 'in'), pose('open', 'chest', 'down', 'in'), 'rise'],
    [
      'a fist beside a hand that works',
      pose('fist', 'waist', 'in', 'front'),
      pose('open', 'side', 'front', 'out'),
      'turn',
    ],
  ] as const)('leaves %s still', (_, left, right, move) => {
    const { marks } = middle(makeGesture({ left, right }, { move }));
    expect(marks).toHaveLength(1);
  });

  it('hold has none', () => {
    expect(middle(wave).marks).toEqual([]);
  });
});

describe('in black and white', () => {
  const darkOf = (gesture: Gesture) => {
    const arm = seeGesture(gesture, 'front', 'standing').arms.find(({ placed }) => placed.shape !== 'resting');
    if (arm === undefined) throw new Error('no hand');
    return measureDark(paint(renderFigureParts(gesture, 'facing')), arm.hand.middle, 14);
  };

  it.each(SHAPES)('palm and back of a hand are told apart: %s', (shape) => {
    for (const at of PLACES) {
      for (const fingers of ['up', 'in', 'out'] as const) {
        const [palm, back] = (['front', 'back'] as const).map((side) =>
          darkOf(makeGesture({ right: pose(shape, at, side, fingers) })),
        );
        expect(palm ?? 1).toBeLessThan(0.62);
        expect((back ?? 0) - (palm ?? 1)).toBeGreaterThan(0.2);
      }
    }
  });

  it('two hands side by side do not merge: paper runs down between them', () => {
    const gesture = makeGesture({ both: pose('open', 'face', 'back', 'up') });
    const picture = paint(renderFigureParts(gesture, 'facing'));
    for (let y = 85; y < 125; y++) {
      const row = picture.slice(y * figureBox.width + 110, y * figureBox.width + 190);
      const dark = [...row].map((lightness) => lightness < 96);
      const [first, last] = [dark.indexOf(true), dark.lastIndexOf(true)];
      // Two stretches of ink or more, parted by paper near the middle.
      expect(first).toBeGreaterThanOrEqual(0);
      expect(dark.slice(Math.max(first, 30), Math.min(last, 50)).includes(false)).toBe(true);
    }
  });

  it('every direction of the palm looks different from its opposite', () => {
    for (const [palm, other, fingers] of [
      ['up', 'down', 'in'],
      ['in', 'out', 'up'],
      ['front', 'back', 'up'],
    ] as const) {
      const draw = (direction: (typeof DIRECTIONS)[number]) =>
        toHtml(renderFigure(makeGesture({ right: pose('open', 'chest', direction, fingers) }), 'facing'));
      expect(draw(palm)).not.toBe(draw(other));
    }
  });
});
