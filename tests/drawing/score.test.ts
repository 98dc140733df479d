import fc from 'fast-check';
import type { Element } from 'hast';
import { describe, expect, it } from 'vitest';
import { estimateWidthEms } from '../../src/drawing/fit-label.ts';
import { renderScore } from '../../src/drawing/score.ts';
import type { ScoreContent, ScoreNight } from '../../src/drawing/score-model.ts';
import { attribute, findByClass, listElements, textOf, toHtml } from './find-elements.ts';

const buildNight = (index: number, name: string, first: boolean): ScoreNight => {
  const turn = (index * 2 * Math.PI) / 29.5;
  return {
    name,
    nightOfMonth: index + 1,
    date: `${(index % 31) + 1} Jul`,
    view: {
      litFraction: (1 - Math.cos(turn)) / 2,
      brightLimbDegrees: turn < Math.PI ? 100 : 260,
      northPoleDegrees: 170,
    },
    strong: first,
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
    namesLanguage: 'cy',
    weekLabel: 'this week',
    pictureTitle: 'Frost Month as a score',
  };
};

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

const expectNoClash = (score: Element): void => {
  const boxes = [...listTextBoxes(score), ...moonBoxes(score)];
  const outside = boxes.filter((box) => box.left < 10 || box.right > 410 || box.top < 5 || box.bottom > 292);
  const clashes = boxes.flatMap((box, index) =>
    boxes
      .slice(index + 1)
      .filter(
        (other) => box.right > other.left && other.right > box.left && box.bottom > other.top && other.bottom > box.top,
      )
      .map((other) => `${box.text} and ${other.text}`),
  );
  expect(outside.map((box) => box.text)).toEqual([]);
  expect(clashes).toEqual([]);
};

describe('renderScore', () => {
  const score = renderScore(month);

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
    expect(xs).toHaveLength(8);
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
    expect(html.match(/ id="/g)).toEqual([' id="']);
    expect(html.match(/<use href="#score-seas">/g)).toHaveLength(30);
    expect(html).not.toMatch(/ style=|NaN|undefined/);
    expect(toHtml(renderScore({ ...month, idPrefix: 'second' }))).toContain('id="second-seas"');
  });

  it('brackets the week on each line that it touches, and labels each bracket', () => {
    const brackets = findByClass(score, 'score-bracket');
    expect(brackets).toHaveLength(2);
    expect(listTextBoxes(score).filter((box) => box.text === 'this week')).toHaveLength(2);
    const none = month.groups.map((group) => ({
      ...group,
      nights: group.nights.map((night) => ({ ...night, inWeek: false })),
    }));
    expect(findByClass(renderScore({ ...month, groups: none }), 'score-bracket')).toHaveLength(0);
  });

  it('keeps the frame of the week off the beats, the bars and the texts', () => {
    const inWeek = month.groups.map((group) => ({
      ...group,
      nights: group.nights.map((night) => ({ ...night, inWeek: true })),
    }));
    const framed = renderScore({ ...month, groups: inWeek });
    const frames = frameBoxes(framed, 'score-week');
    expect(frames).toHaveLength(4);
    const rings = listElements(framed).filter(
      ({ tagName, properties }) =>
        tagName === 'circle' && properties['cy'] !== undefined && Number(properties['cy']) > 49,
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
        expect(Number(attribute(ring, 'cy')) - Number(attribute(ring, 'r')) - frame.top).toBeGreaterThan(0.8);
      }
      for (const bar of bars.filter((x) => Math.abs(x - frame.left) < 3 || Math.abs(x - frame.right) < 3)) {
        expect(Math.min(Math.abs(bar - frame.left), Math.abs(bar - frame.right))).toBeGreaterThan(1);
      }
      for (const { text, left, right, top, bottom } of listTextBoxes(framed)) {
        if (bottom < frame.top || top > frame.bottom) continue;
        expect([text, left >= frame.left && right <= frame.right]).toEqual([text, true]);
      }
    }
  });

  it('lets one very long name be cut, and all other texts keep their size', () => {
    const sizeOf = (score: Element, wanted: string) =>
      listElements(score)
        .filter((element) => element.tagName === 'text' && textOf(element) === wanted)
        .map((element) => attribute(element, 'fontSize'));
    const lengthen = (name: string) =>
      renderScore({
        ...month,
        groups: month.groups.map((group, at) =>
          at === 1
            ? { ...group, nights: group.nights.map((night, place) => (place === 1 ? { ...night, name } : night)) }
            : group,
        ),
      });
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

  it('frames a marked night and writes its word', () => {
    const groups = month.groups.map((group, index) => ({
      ...group,
      nights: group.nights.map((night, place) => (index === 4 && place === 0 ? { ...night, mark: 'tonight' } : night)),
    }));
    const marked = renderScore({ ...month, groups });
    expect(findByClass(marked, 'score-mark')).toHaveLength(1);
    expect(listTextBoxes(marked).map((box) => box.text)).toContain('tonight');
    expectNoClash(marked);
  });

  it('shows short cues where there is room, and leaves out what is too long for a wall page', () => {
    const withCue = (cue: string) =>
      toHtml(
        renderScore({
          ...month,
          groups: month.groups.map((group) => ({ ...group, nights: group.nights.map((night) => ({ ...night, cue })) })),
        }),
      );
    expect(withCue('cover').match(/>cover</g)).toHaveLength(30);
    expect(withCue(`cover ${'slowly '.repeat(12)}`)).not.toContain('slowly');
  });

  it('keeps words apart in the text of a name on two lines', () => {
    const long = renderScore(buildContent({ One: Array.from({ length: 29 }, () => 'Night of the seventeen herons') }));
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
        expectNoClash(renderScore(content));
        const withCues = content.groups.map((group) => ({
          ...group,
          nights: group.nights.map((night) => ({
            ...night,
            cue: `Show ${night.name} with both hands`,
            mark: 'tonight',
          })),
        }));
        expectNoClash(renderScore({ ...content, groups: withCues }));
      }),
      { numRuns: 25 },
    );
  });

  it('has room for one night and for forty, and refuses none', () => {
    expectNoClash(renderScore(buildContent({ One: ['Only'] })));
    expectNoClash(renderScore(buildContent({ A: names(12), B: names(12, 'B'), C: names(12, 'C'), D: names(4, 'D') })));
    expectNoClash(
      renderScore(buildContent(Object.fromEntries(names(30, 'Group').map((group) => [group, ['Solitary night']])))),
    );
    expect(() => renderScore(buildContent({}))).toThrow(RangeError);
  });
});
