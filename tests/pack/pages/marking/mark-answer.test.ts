import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import source from '../../../../src/pack/pages/marking/mark-answer.js?raw';
import type { MarkingAnswer } from '../../../../src/pack/pages/marking-fields.ts';

interface Marked {
  readonly marks?: number;
  readonly fault?: string;
  readonly letter?: string;
  readonly isBlank?: boolean;
  readonly isUnlisted?: boolean;
  readonly wrong?: readonly string[];
  readonly places?: number;
  readonly slip?: number;
}

interface Settled {
  readonly marks: number;
  readonly isOwn: boolean;
}

interface Marking {
  markAnswer(answer: MarkingAnswer, entry: string): Marked | undefined;
  readMarks(text: string, most: number): number | undefined;
  writeMarks(marks: number): string;
  judgeMarks(marks: number, most: number): string;
  settleMarks(answer: MarkingAnswer, given: { entry: string; own: string }): Settled | undefined;
  addMarks(answers: readonly { answer: MarkingAnswer; settled: Settled | undefined }[]): object;
}

// As the page has it: without the words that only modules know. What comes out is what the file declares.
const names = 'markAnswer, readMarks, writeMarks, judgeMarks, settleMarks, addMarks';
const { markAnswer, readMarks, writeMarks, judgeMarks, settleMarks, addMarks } = new Function(
  `${source.replace(/^export /gm, '')}; return { ${names} };`,
)() as Marking;

const ALL = { case: true, accents: true };

const choice = (right: string, marks: number, letters = 'ABCD'): MarkingAnswer => ({
  number: 1,
  kind: 'options',
  letters,
  right,
  marks,
});
const row = (kind: 'order' | 'match', right: string, marks: number): MarkingAnswer => ({
  number: 1,
  kind,
  letters: [...right].sort().join(''),
  right,
  marks,
});
const line = (accepted: readonly string[], more: object = {}): MarkingAnswer => ({
  number: 1,
  kind: 'line',
  accepted,
  forgive: ALL,
  slips: [],
  marks: 1,
  ...more,
});

const marksOf = (answer: MarkingAnswer, entry: string) => markAnswer(answer, entry)?.marks;

describe('an answer that nothing is entered for', () => {
  it.each(['', '  '])('is not marked', (entry) => {
    expect(markAnswer(choice('B', 1), entry)).toBeUndefined();
  });

  it.each(['-', '–', '—', '_'])('is left blank with %s, whatever the question', (entry) => {
    const answers: MarkingAnswer[] = [
      choice('B', 1),
      row('order', 'CAB', 3),
      row('match', 'CAB', 3),
      line(['x']),
      { number: 1, kind: 'lines', rows: [2, 1], marks: 2 },
      { number: 1, kind: 'disc', marks: 2 },
    ];
    for (const answer of answers) expect(markAnswer(answer, entry)).toEqual({ marks: 0, isBlank: true });
  });
});

describe('a choice with one right option', () => {
  it.each([
    ['b', 2],
    ['B', 2],
    ['=', 2],
    ['A', 0],
    ['AB', 0],
  ])('is worth for %s: %s', (entry, marks) => {
    expect(marksOf(choice('B', 2), entry)).toBe(marks);
  });

  it('names what was wrong, and a letter that is not there', () => {
    expect(markAnswer(choice('B', 1), 'd')?.wrong).toEqual(['D']);
    expect(markAnswer(choice('B', 1), 'e')).toEqual({ fault: 'letter', letter: 'E' });
  });
});

describe('a choice with several right options', () => {
  // The rule of the key: a mark a right tick, less one a wrong tick, not under 0.
  it.each([
    ['AC', 2],
    ['ca', 2],
    ['A, C', 2],
    ['AA', 1],
    ['A', 1],
    ['AB', 0],
    ['ABC', 1],
    ['ABCD', 0],
    ['BD', 0],
    ['=', 2],
  ])('is worth for %s: %s of 2', (entry, marks) => {
    expect(marksOf(choice('AC', 2), entry)).toBe(marks);
  });

  it.each([
    [3, 'A', 1],
    [3, 'AB', 2],
    [1, 'AB', 0.5],
    [1, 'A', 0],
    [2, 'AB', 1],
    [6, 'AB', 4],
  ])('scales to %s marks, halves rounded down: %s is worth %s', (marks, entry, worth) => {
    expect(marksOf(choice('ABC', marks), entry)).toBe(worth);
  });
});

describe('a row in order', () => {
  it('is right as a whole, or not, for one mark', () => {
    expect(marksOf(row('order', 'CADB', 1), 'cadb')).toBe(1);
    expect(marksOf(row('order', 'CADB', 1), 'cabd')).toBe(0);
  });

  it.each([
    ['CADB', 4],
    ['C A > D, B', 4],
    ['CABD', 2],
    ['ACBD', 0],
    ['CA', 2],
    ['C-DB', 3],
    ['=', 4],
  ])('earns a mark a right place for more: %s is worth %s', (entry, marks) => {
    expect(marksOf(row('order', 'CADB', 4), entry)).toBe(marks);
  });

  it('scales to other marks, halves rounded down', () => {
    expect(marksOf(row('order', 'CADB', 2), 'CABD')).toBe(1);
    expect(marksOf(row('order', 'ECADB', 2), 'ECABD')).toBe(1);
    expect(marksOf(row('order', 'ECADB', 3), 'ECABD')).toBe(1.5);
  });

  it('refuses letters that are too many or not there', () => {
    expect(markAnswer(row('order', 'CAB', 3), 'CABA')).toEqual({ fault: 'many' });
    expect(markAnswer(row('order', 'CAB', 3), 'CAF')).toEqual({ fault: 'letter', letter: 'F' });
  });
});

describe('pairs', () => {
  it.each([
    ['BAC', 3, 3],
    ['bca', 1, 3],
    ['B-C', 2, 3],
    ['B', 1, 3],
    ['BCA', 0, 1],
    ['BAA', 0.5, 1],
  ])('earn a mark each, scaled: %s is worth %s of %s', (entry, worth, marks) => {
    expect(marksOf(row('match', 'BAC', marks), entry)).toBe(worth);
  });

  it('are never all worth their marks while one is wrong', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 10 }), fc.integer({ min: 1, max: 20 }), (pairs, marks) => {
        const right = 'ABCDEFGHIJ'.slice(0, pairs);
        const worth = marksOf(row('match', right, marks), `${right.slice(0, -1)}A`) ?? marks;
        expect(worth).toBeLessThan(marks);
        expect(worth * 2).toBe(Math.floor((2 * marks * (pairs - 1)) / pairs));
      }),
    );
  });
});

describe('a written word', () => {
  it.each([
    ['Whānau Moon', 'whanau  moon'],
    ['l’Ombre', "L'ombre."],
    ['Demi-Lune', 'demi–lune'],
    ['Straße', 'STRASSE'],
    ['Lune cachée', 'lune cache\u0301e'],
    ['4', '4,0'],
    ['4', '04'],
    ['2.5', '2,5'],
  ])('is taken as the same: %s and %s', (accepted, entry) => {
    expect(marksOf(line(['other', accepted]), entry)).toBe(1);
  });

  it('is held to what its question does not forgive', () => {
    const strict = (forgive: object) => line(['Lune Cachée'], { forgive: { case: false, accents: false, ...forgive } });
    expect(marksOf(strict({ case: true }), 'LUNE CACHÉE')).toBe(1);
    expect(marksOf(strict({ case: true }), 'lune cachee')).toBe(0);
    expect(marksOf(strict({ accents: true }), 'Lune Cachee')).toBe(1);
    expect(marksOf(strict({ accents: true }), 'lune cachee')).toBe(0);
    expect(marksOf(strict({}), 'Lune Cachée')).toBe(1);
  });

  it('may carry its unit', () => {
    const nights = line(['4'], { unit: 'nights' });
    for (const entry of ['4', '4 nights', '4nights', '4 night', '4 Nights.']) expect(marksOf(nights, entry)).toBe(1);
    for (const entry of ['4 weeks', 'nights', '14 nights']) expect(marksOf(nights, entry)).toBe(0);
  });

  it('is one of the slips that were foreseen, or of none', () => {
    const slips = line(['4'], { slips: ['5', '3'] });
    expect(markAnswer(slips, '3')).toEqual({ marks: 0, slip: 1 });
    expect(markAnswer(slips, '7')).toEqual({ marks: 0, isUnlisted: true });
  });

  it('may itself be what stands for another entry', () => {
    expect(marksOf(line(['=']), '=')).toBe(1);
    expect(markAnswer(line(['-']), '-')).toEqual({ marks: 1 });
    expect(marksOf(line(['Round Moon']), '=')).toBe(1);
  });
});

describe('marks by hand', () => {
  const open: MarkingAnswer = { number: 1, kind: 'lines', rows: [3, 1], marks: 3 };

  it('are what is entered', () => {
    expect(markAnswer(open, '1')).toEqual({ marks: 1 });
    expect(markAnswer(open, '2½')).toEqual({ marks: 2.5 });
    expect(markAnswer(open, '=')).toEqual({ marks: 3 });
    expect(markAnswer(open, '4')).toEqual({ fault: 'marks' });
    expect(markAnswer({ number: 1, kind: 'disc', marks: 2 }, '1,5')).toEqual({ marks: 1.5 });
  });

  it.each([
    ['1.5', 1.5],
    ['1,5', 1.5],
    ['1½', 1.5],
    ['½', 0.5],
    ['.5', 0.5],
    ['1.', 1],
    ['1.50', 1.5],
    [' 2 ', 2],
    ['0', 0],
  ])('are read from %s', (text, marks) => {
    expect(readMarks(text, 2)).toBe(marks);
  });

  it.each(['', '.', ',', '2.5', '3', '1.25', '-1', 'x', '1 / 2', '1e0'])('are not read from "%s"', (text) => {
    expect(readMarks(text, 2)).toBeUndefined();
  });

  it('are written so that they are read again', () => {
    for (let marks = 0; marks <= 20; marks += 0.5) expect(readMarks(writeMarks(marks), 20)).toBe(marks);
  });
});

describe('what counts in the end', () => {
  it('is the teacher’s own marks before those of the entry', () => {
    expect(settleMarks(choice('B', 2), { entry: 'A', own: '1½' })).toEqual({ marks: 1.5, isOwn: true });
    expect(settleMarks(choice('B', 2), { entry: 'A', own: '' })).toEqual({ marks: 0, isOwn: false });
    expect(settleMarks(choice('B', 2), { entry: '', own: '2' })).toEqual({ marks: 2, isOwn: true });
    expect(settleMarks(choice('B', 2), { entry: 'B', own: '2' })).toEqual({ marks: 2, isOwn: false });
    expect(settleMarks(choice('B', 2), { entry: 'B', own: 'many' })).toEqual({ marks: 2, isOwn: false });
    expect(settleMarks(choice('B', 2), { entry: '', own: '' })).toBeUndefined();
    expect(settleMarks(choice('B', 2), { entry: 'Z', own: '' })).toBeUndefined();
  });

  it('is judged in words', () => {
    expect([2, 1.5, 0.5, 0].map((marks) => judgeMarks(marks, 2))).toEqual(['right', 'partly', 'partly', 'wrong']);
  });

  it('adds up over those that are marked', () => {
    const given = [
      { answer: choice('B', 2), settled: { marks: 1.5, isOwn: true } },
      { answer: choice('B', 1), settled: { marks: 0, isOwn: false } },
      { answer: choice('B', 4), settled: undefined },
    ];
    expect(addMarks(given)).toEqual({ marks: 1.5, most: 3, marked: 2, open: 1 });
    expect(addMarks([])).toEqual({ marks: 0, most: 0, marked: 0, open: 0 });
  });
});
