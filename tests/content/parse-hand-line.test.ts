import { describe, expect, it } from 'vitest';
import { parseHandLine } from '../../src/content/parse-hand-line.ts';

const WHOLE = { shape: 'open', at: 'chest', palm: 'up', fingers: 'in' };

describe('parseHandLine', () => {
  it.each([
    'open at chest, palm up, fingers in',
    'open at chest palm up fingers in',
    'fingers in, palm up, at chest, open',
    'open hand at the chest, palm facing up, fingers pointing in',
    ' Palm up ;fingers  in;open,at\tchest,',
    'open hands, at chest, palms up, fingers in',
  ])('reads `%s`', (line) => {
    expect(parseHandLine(line)).toEqual({ words: expect.objectContaining(WHOLE), faults: [] });
  });

  it('joins the words of a place', () => {
    expect(parseHandLine('fist at above head').words).toEqual({ shape: 'fist', at: 'above-head' });
    expect(parseHandLine('fist out at the side').faults).toHaveLength(1);
  });

  it('leaves out what is not said', () => {
    expect(parseHandLine('palm up').words).toEqual({ palm: 'up' });
    expect(parseHandLine('fist').words).toEqual({ shape: 'fist' });
    expect(parseHandLine('at, palm').words).toEqual({});
  });

  it('takes pointing for a shape where it is one', () => {
    expect(parseHandLine('pointing at face, palm front, fingers pointing up').words).toEqual({
      shape: 'pointing',
      at: 'face',
      palm: 'front',
      fingers: 'up',
    });
  });

  it('says which part is not understood, and reads the others', () => {
    expect(parseHandLine('open wide, at chest, plam up, fingers in, slowly')).toEqual({
      words: WHOLE,
      faults: [
        '`open wide` is not understood, expected a line like `open at chest, palm up, fingers in`; change it or take it out.',
        '`plam up` is not understood, expected a line like `open at chest, palm up, fingers in`; did you mean `palm`?',
        '`slowly` is not understood, expected a line like `open at chest, palm up, fingers in`; change it or take it out.',
      ],
    });
  });

  it('finds what is said twice', () => {
    expect(parseHandLine('palm up, palm in').faults).toEqual([
      'found `palm` twice, expected it once; keep the one that is meant.',
    ]);
  });
});
