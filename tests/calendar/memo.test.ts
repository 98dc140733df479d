import { describe, expect, it } from 'vitest';
import { createMemo } from '../../src/calendar/memo.ts';

describe('createMemo', () => {
  it('asks once for an answer that it keeps', () => {
    let asked = 0;
    const double = createMemo(2, (value: number) => {
      asked += 1;
      return value * 2;
    });
    expect([double(4), double(4), double(5), double(4)]).toEqual([8, 8, 10, 8]);
    expect(asked).toBe(2);
  });

  it('lets the oldest answer go when it is full', () => {
    const asked: number[] = [];
    const same = createMemo(2, (value: number) => {
      asked.push(value);
      return value;
    });
    for (const value of [1, 2, 3, 3, 2, 1]) same(value);
    expect(asked).toEqual([1, 2, 3, 1]);
  });

  it('keeps null', () => {
    let asked = 0;
    const nothing = createMemo(1, (_: string) => {
      asked += 1;
      return null;
    });
    expect([nothing('a'), nothing('a'), asked]).toEqual([null, null, 1]);
  });
});
