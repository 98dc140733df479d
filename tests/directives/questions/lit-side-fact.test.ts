import { describe, expect, it } from 'vitest';
import type { MoonView } from '../../../src/calendar/almanac-types.ts';
import { createLabels } from '../../../src/content/labels.ts';
import { listTellingWords, makeLitSideFact } from '../../../src/directives/questions/lit-side-fact.ts';
import { openContent } from '../build-week.ts';

const { library } = openContent();
const ENGLISH = createLabels('en');

function makeView(litFraction: number, brightLimbDegrees: number): MoonView {
  const place = { atMs: 0, altitudeDegrees: 30, azimuthDegrees: 0, northPoleDegrees: 0 };
  return { ...place, litFraction, brightLimbDegrees, waxing: true, up: true };
}

/** @param degrees Counter-clockwise from straight up. */
function makeFact(degrees: number, labels = ENGLISH) {
  const fact = makeLitSideFact('2026-07-21', makeView(0.5, degrees), labels);
  if (fact === undefined) throw new Error('A half Moon has a lit side.');
  return fact;
}

describe('the words that tell sides apart', () => {
  it('are those that stand in the label of one edge only', () => {
    expect([...listTellingWords(ENGLISH)]).toEqual([
      ['top', ['top']],
      ['left', ['left']],
      ['bottom', ['bottom']],
      ['right', ['right']],
    ]);
  });

  it('are there in French too', () => {
    const labels = library.openSchool('ormevire')?.value?.labels;
    if (labels === undefined) throw new Error('The French school is not there.');
    expect([...listTellingWords(labels)].map(([, words]) => words)).toEqual([
      ['haut'],
      ['gauche'],
      ['bas'],
      ['droite'],
    ]);
  });
});

describe('a lit side', () => {
  it.each([
    [90, 'the left side', true],
    [90, 'On the LEFT', true],
    [90, 'the right side', false],
    [90, 'left or right', false],
    [90, 'at the top left', false],
    [45, 'the left side', true],
    [45, 'top', true],
    [45, 'at the top left', true],
    [45, 'bottom left', false],
    [270, 'right', true],
    [180, 'bottom', true],
    [-90, 'right', true],
  ])('at %d degrees: %j is %s', (degrees, text, agrees) => {
    expect(makeFact(degrees).agrees(text)).toBe(agrees);
    expect(makeFact(degrees).contradicts(text)).toBe(!agrees);
  });

  it.each(['neither side', 'leftover', ''])('has nothing to say of %j', (text) => {
    expect(makeFact(90).agrees(text)).toBe(false);
    expect(makeFact(90).contradicts(text)).toBe(false);
  });

  it('is known by its word in another form', () => {
    const labels = library.openSchool('ormevire')?.value?.labels;
    expect(makeFact(270, labels).agrees('du côté droit')).toBe(true);
    expect(makeFact(270, labels).agrees('le côté GAUCHE')).toBe(false);
    expect(makeFact(180, labels).agrees('la partie basse')).toBe(true);
  });

  it('is told in the words of the pack', () => {
    expect(makeFact(45).says).toBe('at the top left');
  });

  it('is none of a dark or a full Moon', () => {
    expect(makeLitSideFact('2026-07-29', makeView(0.999, 90), ENGLISH)).toBeUndefined();
    expect(makeLitSideFact('2026-07-14', makeView(0.001, 90), ENGLISH)).toBeUndefined();
  });
});
