import fc from 'fast-check';
import type { Element } from 'hast';
import { describe, expect, it } from 'vitest';
import type { Gesture } from '../../src/content/types.ts';
import { figureBox } from '../../src/drawing/figure/figure.ts';
import { estimateWidthEms } from '../../src/drawing/fit-label.ts';
import { renderScore } from '../../src/drawing/score.ts';
import { scorePage } from '../../src/drawing/score-layout.ts';
import type { ScoreContent, ScoreNight } from '../../src/drawing/score-model.ts';
import { attribute, findByClass, listElements, textOf, toHtml } from './find-elements.ts';

/** A picture of the author's own: it fills the whole box, so that nothing may come nearer to it than to any drawing. */
const gesture: Gesture = {
  move: 'hold',
  cue: 'Wave.',
  seated: 'Wave.',
  picture: { file: 'wave.png', packName: 'picture-1.png', widthPx: 10, heightPx: 10, bytes: new Uint8Array() },
};

const buildNight = (index: number, name: string, first: boolean): ScoreNight => {
  const turn = (index * 2 * Math.PI) / 29.5;
  return {
    name,
    nightOfMonth: index + 1,
    date: `${(index % 31) + 1} Jul`,
    moon: {
      litFraction: (1 - Math.cos(turn)) / 2,
      brightLimbDegrees: turn < Math.PI ? 100 : 260,
      northPoleDegrees: 170,
    },
    strong: first,
    gesture,
    inWeek: index >= 6 && index < 11,
  };
};

const buildContent = (groups: Readonly<Record<string, readonly string[]>>): ScoreContent => {
  let index = -1;
  return {
    title: 'Frost Month',
    subtitle: [{ name: 'Estuary Nights' }, ' · 14 July to 12 August 2026'],
    footer: ['The Moon as it stands when highest.'],
    legend: { strong: 'strong beat', beat: 'beat' },
    groups: Object.entries(groups).map(([name, nights]) => ({
      name,
      nights: nights.map((night, place) => {
        index++;
        return buildNight(index, night, place === 0);
      }),
    })),
    sheets: [
      { view: 'facing', caption: 'They face you.', pictureTitle: 'Frost Month as a score' },
      { view: 'own', caption: 'As you see yourself.', pictureTitle: 'The same from your side' },
    ],
    namesLanguage: 'cy',
    weekLabel: 'this week',
    idPrefix: 'score',
  };
};

/** The first sheet, on which all stands that the others use again. */
const renderFirst = (content: ScoreContent): Element => {
  const [first] = renderScore(content);
  if (first === undefined) throw new Error('no sheet was drawn');
  return first;
};

const changeNights = (
  content: ScoreContent,
  change: (night: ScoreNight, place: number, group: number) => ScoreNight,
): ScoreContent => ({
  ...content,
  groups: content.groups.map((group, at) => ({
    ...group,
    nights: group.nights.map((night, place) => change(night, place, at)),
  })),
});

const frameBoxes = (score: Element, name: string) =>
  findByClass(score, name).map((frame) => {
    const [x, y] = [Number(attribute(frame, 'x')), Number(attribute(frame, 'y'))];
    return {
      left: x,
      right: x + Number(attribute(frame, 'width')),
      top: y,
      bottom: y + Number(attribute(frame, 'height')),
    };
  });

const names = (count: number, word = 'Night'): string[] => Array.from({ length: count }, (_, i) => `${word} ${i + 1}`);

const month = buildContent({
  'Dark Water': names(2, 'Dark'),
  'Thin Light': names(5, 'Thin'),
  'Turning Tide': names(4, 'Tide'),
  'Bright Sand': names(4, 'Sand'),
  'High Water': names(3, 'High'),
  'Slow Ebb': names(5, 'Slow'),
  Ember: names(4, 'Ember'),
  Closing: names(3, 'Last'),
});

interface TextBox {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Boxes of all lines of text, from estimated widths. */
const listTextBoxes = (score: Element): TextBox[] =>
  listElements(score)
    .filter((element) => element.tagName === 'text')
    .flatMap((text) => {
      const spans = listElements(text).filter((element) => element.properties['x'] !== undefined);
      return spans.map((line) => {
        const size = Number(attribute(text, 'fontSize'));
        const words = textOf(line);
        const width = size * estimateWidthEms(words, text.properties['fontWeight'] === '700');
        const x = Number(attribute(line, 'x'));
        const anchor = attribute(text, 'textAnchor');
        const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
        const y = Number(attribute(line, 'y'));
        return { text: words, left, right: left + width, top: y - 0.74 * size, bottom: y + 0.2 * size };
      });
    });

const moonBoxes = (score: Element) =>
  listElements(score).flatMap((element) => {
    const place = /^translate\(([\d.]+) ([\d.]+)\)$/.exec(String(element.properties['transform'] ?? ''));
    const rim = findByClass(element, 'moon-rim')[0];
    if (place === null || rim === undefined) return [];
    const [x, y, r] = [Number(place[1]), Number(place[2]), Number(attribute(rim, 'r'))];
    return [{ text: 'Moon', left: x - r, right: x + r, top: y - r, bottom: y + r }];
  });

const figureBoxes = (score: Element) =>
  findByClass(score, 'score-figures')
    .flatMap((figures) => listElements(figures))
    .flatMap((element) => {
      const found = /^translate\(([\d.]+) ([\d.]+)\) scale\(([\d.]+)\)$/.exec(
        String(element.properties['transform'] ?? ''),
      );
      if (found === null) return [];
      const [left, top, scale] = [Number(found[1]), Number(found[2]), Number(found[3])];
      const [right, bottom] = [left + scale * figureBox.width, top + scale * figureBox.height];
      return [{ text: 'figure', left, right, top, bottom }];
    });

/** Widths are estimated on the safe side, and a figure's box may meet its neighbour's by the last hundredth. */
const hair = 0.02;

const expectNoClash = (score: Element): void => {
  const boxes = [...listTextBoxes(score), ...moonBoxes(score), ...figureBoxes(score)];
  const outside = boxes.filter((box) => box.left < 10 || box.right > 410 || box.top < 5 || box.bottom > 292);
  const clashes = boxes.flatMap((box, index) =>
    boxes
      .slice(index + 1)
      .filter(
        (other) =>
          box.right > other.left + hair &&
          other.right > box.left + hair &&
          box.bottom > other.top + hair &&
          other.bottom > box.top + hair,
      )
      .map((other) => `${box.text} and ${other.text}`),
  );
  expect(outside.map((box) => box.text)).toEqual([]);
  expect(clashes).toEqual([]);
};

describe('renderScore', () => {
  const score = renderFirst(month);

  it('shows each night once: a Moon, a beat, a name, a date', () => {
    expect(moonBoxes(score)).toHaveLength(30);
    expect(findByClass(score, 'score-strong')).toHaveLength(8 + 1);
    expect(findByClass(score, 'score-beat')).toHaveLength(22 + 1);
    const texts = listTextBoxes(score).map((box) => box.text);
    for (const night of month.groups.flatMap((group) => group.nights)) {
      expect(texts.filter((text) => text === night.name)).toHaveLength(1);
      expect(texts).toContain(`${night.nightOfMonth} · ${night.date}`);
    }
  });

  it('numbers the beats within each group', () => {
    const counts = [...findByClass(score, 'score-strong'), ...findByClass(score, 'score-beat')].map(textOf);
    expect(counts.filter((count) => count === '1')).toHaveLength(9);
    expect(counts.filter((count) => count === '5')).toHaveLength(2);
  });

  it('spaces nights evenly in straight columns', () => {
    const xs = [...new Set(moonBoxes(score).map((box) => (box.left + box.right) / 2))].sort((a, b) => a - b);
    const steps = xs.slice(1).map((x, index) => x - (xs[index] ?? 0));
    expect(xs).toHaveLength(12);
    for (const step of steps) expect(step).toBeCloseTo(steps[0] ?? 0, 1);
  });

  it('tags every name with its language', () => {
    const tagged = listElements(score)
      .filter((element) => element.properties['lang'] === 'cy')
      .map(textOf);
    const wanted = ['Frost Month', 'Estuary Nights', ...month.groups.map((group) => group.name)];
    expect(tagged).toEqual(expect.arrayContaining(wanted));
    for (const night of month.groups.flatMap((group) => group.nights)) expect(tagged).toContain(night.name);
  });

  it('is a picture with a name, draws the seas once and has no style attributes', () => {
    expect(score.properties).toMatchObject({ role: 'img', viewBox: '0 0 420 297' });
    const html = toHtml(score);
    expect(html).toContain('<title>Frost Month as a score</title>');
    expect(html.match(/ id="[^"]*"/g)).toEqual([' id="score-seas"', ' id="score-shared"']);
    expect(html.match(/<use href="#score-seas">/g)).toHaveLength(30);
    expect(html).not.toMatch(/ style=|NaN|undefined/);
    expect(toHtml(renderFirst({ ...month, idPrefix: 'second' }))).toContain('id="second-seas"');
  });

  it('brackets the week on each line that it touches, and labels each bracket', () => {
    const brackets = findByClass(score, 'score-bracket');
    expect(brackets).toHaveLength(1);
    expect(listTextBoxes(score).filter((box) => box.text === 'this week')).toHaveLength(1);
    expect(toHtml(...brackets)).toMatch(/V[\d.]+.*V[\d.]+/);
    const none = changeNights(month, (night) => ({ ...night, inWeek: false }));
    expect(findByClass(renderFirst(none), 'score-bracket')).toHaveLength(0);
  });

  it('leaves the bracket open where the week goes on in another row', () => {
    const over = changeNights(month, (night) => ({
      ...night,
      inWeek: night.nightOfMonth >= 10 && night.nightOfMonth <= 13,
    }));
    const brackets = findByClass(renderFirst(over), 'score-bracket').map((each) => attribute(each, 'd'));
    expect(brackets).toHaveLength(2);
    // One side each: one line up or down.
    for (const path of brackets) expect(path.match(/V/g)).toHaveLength(1);
  });

  it('keeps the frame of the week off the beats, the bars and the texts', () => {
    const framed = renderFirst(month);
    const frames = frameBoxes(framed, 'score-week');
    expect(frames).toHaveLength(1);
    const rings = listElements(framed).filter(
      ({ tagName, properties }) =>
        tagName === 'circle' && properties['cy'] !== undefined && Number(properties['cy']) > scorePage.top,
    );
    const bars = [...toHtml(...findByClass(framed, 'score-line')).matchAll(/M([\d.]+) [\d.]+V[\d.]+/g)].map(([, x]) =>
      Number(x),
    );
    for (const frame of frames) {
      const below = rings.filter(
        (ring) => Number(attribute(ring, 'cy')) > frame.top && Number(attribute(ring, 'cy')) < frame.bottom,
      );
      expect(below.length).toBeGreaterThan(0);
      for (const ring of below) {
        expect(Number(attribute(ring, 'cy')) - Number(attribute(ring, 'r')) - frame.top).toBeGreaterThan(0.5);
      }
      for (const bar of bars.filter((x) => Math.abs(x - frame.left) < 3 || Math.abs(x - frame.right) < 3)) {
        expect(Math.min(Math.abs(bar - frame.left), Math.abs(bar - frame.right))).toBeGreaterThan(1);
      }
      for (const { text, left, right, top, bottom } of listTextBoxes(framed)) {
        if (bottom < frame.top || top > frame.bottom || text === 'this week') continue;
        const beside = right <= frame.left || left >= frame.right;
        expect([text, beside || (left >= frame.left && right <= frame.right)]).toEqual([text, true]);
      }
    }
  });

  it('lets one very long name be cut, and all other texts keep their size', () => {
    const sizeOf = (score: Element, wanted: string) =>
      listElements(score)
        .filter((element) => element.tagName === 'text' && textOf(element) === wanted)
        .map((element) => attribute(element, 'fontSize'));
    const lengthen = (name: string) =>
      renderFirst(
        changeNights(month, (night, place, group) => (group === 1 && place === 1 ? { ...night, name } : night)),
      );
    for (const name of ['the night of many herons '.repeat(6).trim(), 'm'.repeat(150)]) {
      const long = lengthen(name);
      const size = Number(sizeOf(long, 'Dark 1')[0]);
      expect(size).toBeGreaterThan(0.85 * Number(sizeOf(score, 'Dark 1')[0]));
      const [text] = listElements(long).filter(
        (element) => element.tagName === 'text' && toHtml(element).includes(`<title>${name}</title>`),
      );
      if (text === undefined) throw new Error('no text has the whole name as its title');
      expect(textOf(text).endsWith('…')).toBe(true);
      expect(Number(attribute(text, 'fontSize'))).toBeGreaterThan(0.59 * size);
      expectNoClash(long);
    }
  });

  it('draws the figures of each sheet from its own side, and all else once', () => {
    const drawn: Gesture = {
      right: { shape: 'open', at: 'side', palm: 'front', fingers: 'up' },
      move: 'hold',
      cue: 'Wave.',
      seated: 'Wave.',
    };
    const sheets = renderScore(changeNights(month, (night) => ({ ...night, gesture: drawn })));
    expect(sheets).toHaveLength(2);
    const [facing, own] = sheets.map((sheet) => toHtml(...findByClass(sheet, 'score-figures')));
    expect(facing).not.toBe(own);
    expect(facing?.match(/<g transform="translate\([\d.]+ [\d.]+\) scale/g)).toHaveLength(30);
    const second = toHtml(...sheets.slice(1));
    expect(second).toContain('<use href="#score-shared">');
    expect(second).toContain('As you see yourself.');
    expect(second).toContain('<title>The same from your side</title>');
    expect(second).not.toContain('Dark Water');
  });

  it('has a rest for a night without a gesture, and larger Moons where none has one', () => {
    const some = renderFirst(
      changeNights(month, ({ gesture: own, ...night }, place) =>
        place === 0 || own === undefined ? night : { ...night, gesture: own },
      ),
    );
    expect(findByClass(some, 'score-rest')).toHaveLength(8);
    expectNoClash(some);
    const bare = renderFirst(changeNights(month, ({ gesture: _own, ...night }) => night));
    expect(findByClass(bare, 'score-rest')).toHaveLength(0);
    expect(figureBoxes(bare)).toEqual([]);
    const radius = (sheet: Element) => Number(attribute(findByClass(sheet, 'moon-rim')[0] ?? sheet, 'r'));
    expect(radius(bare)).toBeGreaterThan(radius(score));
    expectNoClash(bare);
  });

  it('can be read from three metres: names of 18 points, figures of 30 millimetres, in a month of usual names', () => {
    const words = ['Hidden', 'Silver', 'Heron', 'Dry', 'Lopsided', 'Filling', 'Late'];
    const usual = (count: number) =>
      Array.from({ length: count }, (_, index) => `${words[(index + count) % words.length]} Moon`);
    const sizes = [2, 5, 4, 4, 3, 4, 5, 2];
    const real = renderFirst(
      buildContent(Object.fromEntries(sizes.map((size, index) => [`Group ${index}`, usual(size)]))),
    );
    const names = listElements(real).filter(
      ({ tagName, properties }) => tagName === 'text' && properties['lang'] === 'cy',
    );
    const points = names
      .filter((element) => textOf(element) === 'Dry Moon')
      .map((element) => (Number(attribute(element, 'fontSize')) * 72) / 25.4);
    expect(points.length).toBeGreaterThan(2);
    expect(Math.min(...points)).toBeGreaterThan(18);
    const [figure] = figureBoxes(real);
    expect((figure?.bottom ?? 0) - (figure?.top ?? 0)).toBeGreaterThan(30);
  });

  it('keeps words apart in the text of a name on two lines', () => {
    const long = renderFirst(buildContent({ One: Array.from({ length: 29 }, () => 'Night of the seventeen herons') }));
    const lines = listElements(long).filter(
      (element) => element.tagName === 'text' && textOf(element).includes('herons'),
    );
    expect(lines).toHaveLength(29);
    for (const line of lines) expect(textOf(line)).toBe('Night of the seventeen herons');
    expectNoClash(long);
  });

  it('lets nothing touch in months of any make', () => {
    const word = fc.stringMatching(/^[A-Za-zéü]{1,14}( [A-Za-z]{1,12}){0,3}$/);
    const group = fc.record({ name: word, nights: fc.array(word, { minLength: 1, maxLength: 12 }) });
    const groups = fc.array(group, { minLength: 3, maxLength: 10 });
    fc.assert(
      fc.property(groups, (given) => {
        const entries = given.map(({ name, nights }, index) => [`${name} ${index}`, nights] as const);
        const content = buildContent(Object.fromEntries(entries));
        expectNoClash(renderFirst(content));
        expectNoClash(
          renderFirst(changeNights(content, ({ gesture: _own, ...night }) => ({ ...night, inWeek: true }))),
        );
      }),
      { numRuns: 25 },
    );
  });

  it('has room for one night and for forty, and refuses none', () => {
    expectNoClash(renderFirst(buildContent({ One: ['Only'] })));
    expectNoClash(renderFirst(buildContent({ A: names(12), B: names(12, 'B'), C: names(12, 'C'), D: names(4, 'D') })));
    expectNoClash(
      renderFirst(buildContent(Object.fromEntries(names(30, 'Group').map((group) => [group, ['Solitary night']])))),
    );
    expect(() => renderScore(buildContent({}))).toThrow(RangeError);
  });
});
