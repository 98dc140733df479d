import { describe, expect, it } from 'vitest';
import { createLabels, findLabelFileId, isEnglish, type LabelFile } from '../../src/content/labels.ts';

const FRENCH: LabelFile = {
  id: 'fr',
  language: 'fr',
  labels: {
    'date-long': '{weekday} {day} {month} {year}',
    'date-first-of-month': '1er',
    'weekday-wednesday': 'mercredi',
    'month-7': 'juillet',
    clock: '{h24} h {mm}',
    'decimal-mark': ',',
    'list-last': '{before} et {last}',
    minutes: { one: '{n} minute', other: '{n} minutes' },
  },
};

describe('English labels', () => {
  const labels = createLabels('en-NZ');

  it('fills placeholders', () => {
    expect(labels.language).toBe('en-NZ');
    expect(labels.text('tonight')).toBe('Tonight');
    expect(labels.text('night-of-month', { n: 16, length: 29 })).toBe('night 16 of 29');
    expect(labels.parts('say-name', { say: { lang: 'en' } })).toEqual(['say: ', { lang: 'en' }]);
  });

  it('chooses the form for a number', () => {
    expect([0, 1, 2].map((n) => labels.count('minutes', n))).toEqual(['0 minutes', '1 minute', '2 minutes']);
  });

  it('says dates', () => {
    expect(labels.date('2026-07-29', 'long')).toBe('Wednesday 29 July 2026');
    expect(labels.date('2026-07-29', 'day')).toBe('Wednesday 29 July');
    expect(labels.date('2026-07-29', 'short')).toBe('Wed 29 Jul');
    expect(labels.date('2026-03-01', 'day')).toBe('Sunday 1 March');
    expect(() => labels.date('2026-02-30', 'long')).toThrow(RangeError);
  });

  it('says times of day', () => {
    const times = ['00:00', '00:05', '09:05', '11:59', '12:00', '13:00', '17:25', '23:59'];
    const said = ['12:00 am', '12:05 am', '9:05 am', '11:59 am', '12:00 pm', '1:00 pm', '5:25 pm', '11:59 pm'];
    expect(times.map((time) => labels.clock(time))).toEqual(said);
    expect(() => labels.clock('24:00')).toThrow(RangeError);
    expect(() => labels.clock('9:05')).toThrow(RangeError);
  });

  it('joins lists', () => {
    expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map((items) => labels.list(items))).toEqual([
      '',
      'a',
      'a and b',
      'a, b and c',
    ]);
    expect(labels.list(['{last}', '$&'])).toBe('{last} and $&');
  });

  it('writes numbers, days and phases', () => {
    expect(labels.number(14.816, 1)).toBe('14.8');
    expect(labels.number(-3, 0)).toBe('-3');
    expect(labels.weekday('sunday')).toBe('Sunday');
    expect(labels.phase('full-moon')).toBe('full Moon');
  });

  it('run from left to right', () => {
    expect(labels.direction).toBe('ltr');
  });

  it('does not compile without the values a label needs, nor with others', () => {
    // @ts-expect-error -- the label has placeholders
    expect(() => labels.text('night-of-month')).toThrow('{n}');
    // @ts-expect-error -- one placeholder is missing
    expect(() => labels.text('night-of-month', { n: 1 })).toThrow('{length}');
    // @ts-expect-error -- a label with forms for a number goes with count()
    expect(() => labels.text('minutes')).toThrow('count()');
    // @ts-expect-error -- there is no such label
    expect(() => labels.text('no-such-label')).toThrow();
  });
});

describe('labels in letters that run from right to left', () => {
  it('say so, also where numbers and a foreign word are among them', () => {
    const texts = { tonight: 'אבג', month: 'GPS', minutes: { one: '{n} דה', other: '{n} דהו' } };
    expect(createLabels('x-made-up', { id: 'x-made-up', language: 'x-made-up', labels: texts }).direction).toBe('rtl');
    expect(createLabels('he', { id: 'he', language: 'he', labels: { tonight: 'abg' } }).direction).toBe('ltr');
  });
});

describe('labels of a file', () => {
  const labels = createLabels('fr-CA', FRENCH);

  it('uses the words of the file', () => {
    expect(labels.language).toBe('fr-CA');
    expect(labels.date('2026-07-29', 'long')).toBe('mercredi 29 juillet 2026');
    expect(labels.date('2026-07-01', 'long')).toBe('mercredi 1er juillet 2026');
    expect(labels.clock('17:25')).toBe('17 h 25');
    expect(labels.clock('09:05')).toBe('9 h 05');
    expect(labels.number(14.8, 1)).toBe('14,8');
    expect(labels.list(['a', 'b', 'c'])).toBe('a, b et c');
  });

  it('chooses forms by the rules of its language', () => {
    expect([0, 1, 2, 1_000_000].map((n) => labels.count('minutes', n))).toEqual([
      '0 minute',
      '1 minute',
      '2 minutes',
      '1000000 minutes',
    ]);
  });

  it('falls back to English for a label it lacks', () => {
    expect(labels.text('tonight')).toBe('Tonight');
  });

  it('says that the words are English where there is no file', () => {
    expect(createLabels('sv').language).toBe('en');
    expect(createLabels('sv').text('tonight')).toBe('Tonight');
  });
});

describe('finding the file of a language', () => {
  it('cuts the tag from the right', () => {
    expect(findLabelFileId('fr-CA', ['en', 'fr'])).toBe('fr');
    expect(findLabelFileId('fr-CA', ['fr', 'fr-ca'])).toBe('fr-ca');
    expect(findLabelFileId('fr', ['fr-CA'])).toBeUndefined();
    expect(findLabelFileId('f', ['fr'])).toBeUndefined();
  });
  it('knows English', () => {
    expect(['en', 'en-NZ', 'EN-gb', 'enm', 'fr'].map(isEnglish)).toEqual([true, true, true, false, false]);
  });
});
