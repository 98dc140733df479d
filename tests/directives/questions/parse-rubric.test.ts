import { describe, expect, it } from 'vitest';
import { parseRubric } from '../../../src/directives/questions/parse-rubric.ts';

describe('parseRubric', () => {
  it.each([
    ['one line', '1: names the Sun', [[1, 'names the Sun']]],
    [
      'lines down to nothing',
      '2: says why; 1: says what ;0: neither',
      [
        [2, 'says why'],
        [1, 'says what'],
        [0, 'neither'],
      ],
    ],
    [
      'semicolons and colons in the words',
      '3: says why; and how: by light; 1: says what',
      [
        [3, 'says why; and how: by light'],
        [1, 'says what'],
      ],
    ],
    [
      'French spaces, and a semicolon at the end',
      '2 : dit pourquoi ; 1\u00A0: dit quoi ;',
      [
        [2, 'dit pourquoi'],
        [1, 'dit quoi'],
      ],
    ],
    [
      'no spaces',
      '20:all;1:some',
      [
        [20, 'all'],
        [1, 'some'],
      ],
    ],
  ])('reads %s', (_title, text, rows) => {
    expect(parseRubric(text)).toEqual(rows.map(([marks, words]) => ({ marks, words })));
  });

  it.each([
    ['words alone', 'says why', /^`says why` in a rubric$/],
    ['no words', '2: says why; 1:', /^`1:` in a rubric$/],
    ['half marks', '1.5: says why', /^`1.5: says why` in a rubric$/],
    ['a number of marks below nothing', '-1: says why', /^`-1: says why`/],
    ['three digits', '100: says why', /^`100: says why`/],
    ['nothing between semicolons', ' ; ;', /^`;` in a rubric/],
    ['the fewest first', '1: says what; 2: says why', /^`2:` where it stands/],
    ['a number twice', '2: one; 2: other', /^`2:` where it stands/],
    ['too many marks', '21: all', /begins with `21` marks/],
    ['no marks at all', '0: nothing', /begins with `0` marks/],
  ])('refuses %s', (_title, text, found) => {
    expect(parseRubric(text)).toMatchObject({ found: expect.stringMatching(found) });
  });

  it('is quick with a long text that never comes to an end', () => {
    expect(parseRubric(`1: ${' ;'.repeat(50_000)}x`)).toHaveLength(1);
  });
});
