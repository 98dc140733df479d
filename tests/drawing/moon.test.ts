import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type MoonFace, renderMoon, renderMoonParts } from '../../src/drawing/moon.ts';
import { attribute, findByClass, listElements, toHtml } from './find-elements.ts';
import { applyTransform, areaOf, centroidOf, flattenPath } from './flatten-path.ts';

const face = (litFraction: number, brightLimbDegrees = 0, northPoleDegrees = 0): MoonFace => ({
  litFraction,
  brightLimbDegrees,
  northPoleDegrees,
});

const shadeOf = (view: MoonFace, radius: number) => {
  const [shade] = findByClass(renderMoon(view, { radius }), 'moon-shade');
  const polygon = flattenPath(attribute(shade, 'd'))[0] ?? [];
  return applyTransform(polygon, attribute(shade, 'transform'));
};

const rimOf = (view: MoonFace, radius: number) => {
  const [rim] = findByClass(renderMoon(view, { radius }), 'moon-rim');
  return { radius: Number(attribute(rim, 'r')), width: Number(attribute(rim, 'strokeWidth')) };
};

const limbRadius = (radius: number): number => rimOf(face(0.5), radius).radius;

/** Middles of the seas in the units of the disc's radius: x to the right, y down, in the order of the table. */
const seaMiddles = (northPoleDegrees: number, radius = 60) => {
  const [seas] = findByClass(renderMoon(face(1, 0, northPoleDegrees), { radius }), 'moon-seas');
  const path = seas?.children[0];
  if (path?.type !== 'element') throw new Error('no path of seas');
  return flattenPath(attribute(path, 'd')).map((polygon) => {
    const [x, y] = centroidOf(applyTransform(polygon, attribute(seas, 'transform')));
    return [x / radius, y / radius] as const;
  });
};

describe('renderMoon: light', () => {
  it('lights the share of the disc that the lit fraction says', () => {
    const wide = fc.double({ min: 0.02, max: 0.98, noNaN: true });
    fc.assert(
      fc.property(wide, fc.double({ min: -720, max: 720, noNaN: true }), (lit, bright) => {
        const disc = Math.PI * rimOf(face(lit, bright), 100).radius ** 2;
        const dark = Math.abs(areaOf(shadeOf(face(lit, bright), 100)));
        expect(Math.abs(1 - dark / disc - lit)).toBeLessThan(0.0005);
      }),
    );
  });

  it('points the middle of the bright limb counter-clockwise from straight up', () => {
    for (const bright of [0, 37, 90, 180, 270, 285.3, -90, 450]) {
      for (const lit of [0.1, 0.5, 0.9]) {
        const [x, y] = centroidOf(shadeOf(face(lit, bright), 100));
        const angle = (bright * Math.PI) / 180;
        const along = -x * -Math.sin(angle) + -y * -Math.cos(angle);
        expect(along).toBeCloseTo(Math.hypot(x, y), 2);
        expect(along).toBeGreaterThan(1);
      }
    }
  });

  it('has a straight terminator at the half and a dark side that reaches the limb', () => {
    const xs = shadeOf(face(0.5, 270), 100).map(([x]) => x);
    expect(Math.max(...xs)).toBeCloseTo(0, 6);
    expect(Math.min(...xs)).toBeCloseTo(-limbRadius(100), 6);
  });

  it('draws the new Moon as a dark disc with a rim, the full Moon without shade', () => {
    const dark = renderMoon(face(0), { radius: 40 });
    expect(findByClass(dark, 'moon-shade').map((shade) => shade.tagName)).toEqual(['circle']);
    expect(findByClass(dark, 'moon-rim')).toHaveLength(1);
    const full = renderMoon(face(1), { radius: 40 });
    expect(findByClass(full, 'moon-shade')).toHaveLength(0);
    expect(findByClass(full, 'moon-rim')).toHaveLength(1);
  });

  it('leaves four fifths of a thin crescent clear of the rim, and keeps the size of the whole', () => {
    for (const radius of [16, 28, 60, 100]) {
      const usual = rimOf(face(0.5), radius);
      for (const lit of [0.03, 0.04]) {
        const rim = rimOf(face(lit), radius);
        const crescent = 2 * radius * lit;
        expect(rim.width / 2 / crescent).toBeLessThan(0.2);
        expect(rim.width).toBeGreaterThanOrEqual(0.3);
        expect(rim.width).toBeLessThanOrEqual(usual.width);
        expect(rim.radius + rim.width / 2).toBeCloseTo(usual.radius + usual.width / 2, 1);
      }
      expect(rimOf(face(0.2), radius)).toEqual(usual);
      expect(rimOf(face(0), radius)).toEqual(usual);
    }
  });

  it('gives a full Moon a heavier rim, and keeps the size of the whole', () => {
    for (const radius of [6.5, 16, 28, 60]) {
      const usual = rimOf(face(0.5), radius);
      const full = rimOf(face(1), radius);
      expect(full.width / usual.width).toBeGreaterThan(1.4);
      expect(full.radius + full.width / 2).toBeCloseTo(usual.radius + usual.width / 2, 1);
      expect(rimOf(face(0.95), radius)).toEqual(usual);
    }
  });

  it('leaves a sliver out only where the rim would hide it', () => {
    expect(findByClass(renderMoon(face(0.999), { radius: 40 }), 'moon-shade')).toHaveLength(0);
    expect(findByClass(renderMoon(face(0.98), { radius: 40 }), 'moon-shade')).toHaveLength(1);
    expect(findByClass(renderMoon(face(0.02), { radius: 40 }), 'moon-shade')[0]?.tagName).toBe('path');
  });
});

describe('renderMoon: seas', () => {
  const crisium = 0;

  it('puts Mare Crisium upper right for the north and lower left for the south', () => {
    const [northX, northY] = seaMiddles(0)[crisium] ?? [0, 0];
    expect([northX > 0.7, northY < -0.2]).toEqual([true, true]);
    const [southX, southY] = seaMiddles(180)[crisium] ?? [0, 0];
    expect([southX < -0.7, southY > 0.2]).toEqual([true, true]);
  });

  it('turns counter-clockwise with the north pole', () => {
    // The pole to the left: what was at the right, Crisium, is then at the top.
    const [x, y] = seaMiddles(90)[crisium] ?? [0, 0];
    expect(y).toBeLessThan(-0.7);
    expect(Math.abs(x)).toBeLessThan(0.4);
  });

  it('projects as a globe seen from far away: Crisium where the formula puts its middle', () => {
    // x = cos(latitude) sin(longitude), y = -sin(latitude); IAU Gazetteer: 16.2 N, 59.1 E (from memory).
    const [x, y] = seaMiddles(0)[crisium] ?? [0, 0];
    expect(x).toBeCloseTo(Math.cos((16.2 * Math.PI) / 180) * Math.sin((59.1 * Math.PI) / 180), 1);
    expect(y).toBeCloseTo(-Math.sin((16.2 * Math.PI) / 180), 1);
  });

  it('keeps all seas within the disc', () => {
    const [seas] = findByClass(renderMoon(face(1), { radius: 100 }), 'moon-seas');
    const path = seas?.children[0];
    if (path?.type !== 'element') throw new Error('no path of seas');
    const points = flattenPath(attribute(path, 'd')).flat();
    expect(Math.max(...points.map(([x, y]) => Math.hypot(x, y)))).toBeLessThan(200);
  });

  it('draws seas from 28 px and young craters from 60 px', () => {
    const count = (radius: number) => {
      const [seas] = findByClass(renderMoon(face(1), { radius }), 'moon-seas');
      return seas?.children.length ?? 0;
    };
    expect([count(16), count(27.9), count(28), count(59), count(60), count(300)]).toEqual([0, 0, 1, 1, 3, 3]);
  });
});

describe('renderMoon: picture', () => {
  it('is named when a title is given and hidden when not', () => {
    const named = renderMoon(face(0.3), { radius: 30, title: 'Thin Moon', titleLanguage: 'en', className: 'wide' });
    expect(named.properties).toMatchObject({ role: 'img', className: ['moon', 'wide'], viewBox: '-30 -30 60 60' });
    expect(toHtml(named)).toContain('<title lang="en">Thin Moon</title>');
    const hidden = renderMoon(face(0.3), { radius: 30 });
    expect(hidden.properties).toMatchObject({ ariaHidden: 'true' });
    expect(hidden.properties['role']).toBeUndefined();
    expect(listElements(hidden).some((element) => element.tagName === 'title')).toBe(false);
  });

  it('stays small, and uses no ids and no style attributes', () => {
    const html = toHtml(renderMoon(face(0.654, 285.33, 11.17), { radius: 59 }));
    expect(html.length).toBeLessThan(1500);
    expect(html).not.toMatch(/ style=| id=/);
  });

  it('gives the same bytes as ever', () => {
    const html = toHtml(renderMoon(face(0.654321, 285.3333, 11.1777), { radius: 60, title: 'Moon' }));
    expect(createHash('sha256').update(html).digest('hex').slice(0, 16)).toMatchInlineSnapshot(`"e33a5c09223c1dea"`);
  });

  it('holds only finite numbers whatever it is given', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ noNaN: true, noDefaultInfinity: true }),
        fc.double({ noNaN: true, noDefaultInfinity: true }),
        fc.double({ min: 1e-3, max: 2000, noNaN: true }),
        (lit, bright, north, radius) => {
          const html = toHtml(renderMoon(face(lit, bright, north), { radius }));
          expect(html).not.toMatch(/NaN|Infinity|undefined|-0[ "),]|\de[+-]?\d/);
        },
      ),
    );
  });

  it.each([
    [face(Number.NaN), 30],
    [face(-0.1), 30],
    [face(1.1), 30],
    [face(0.5, Number.NaN), 30],
    [face(0.5, 0, Number.POSITIVE_INFINITY), 30],
    [face(0.5), 0],
    [face(0.5), Number.NaN],
    [face(0.5), 2001],
  ])('refuses %o at radius %d', (view, radius) => {
    expect(() => renderMoon(view, { radius })).toThrow(RangeError);
  });

  it('forgives the last digits of a computed fraction', () => {
    expect(findByClass(renderMoon(face(1.0000001), { radius: 30 }), 'moon-shade')).toHaveLength(0);
  });

  it('uses a path drawn once when told its id', () => {
    const parts = renderMoonParts(face(0.5), { radius: 10, rimWidth: 0.5, detail: 'seas', seasId: 'month-seas' });
    expect(toHtml(...parts)).toContain('<use href="#month-seas"></use>');
  });
});
