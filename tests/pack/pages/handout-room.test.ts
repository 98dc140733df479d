import type { Element } from 'hast';
import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { computeRoomMm, ROOMS_MM } from '../../../src/pack/pages/handout-room.ts';
import { pageStyles } from '../../../src/pack/pages/page-styles.ts';

const words = (letters: number) => h('p', 'x'.repeat(letters));
const table = (rows: number): Element =>
  h('table', [
    h('thead', [h('tr', [h('th', 'A'), h('th', 'B')])]),
    h(
      'tbody',
      Array.from({ length: rows }, () => h('tr', [h('td', 'a'), h('td')])),
    ),
  ]);

describe('computeRoomMm', () => {
  it('has nothing to say of a handout without a row to write in', () => {
    expect(computeRoomMm([words(40), h('table', [h('tr', [h('td', 'full')])])])).toBeUndefined();
  });

  it('gives few rows much room, many rows little, and never less than the least', () => {
    const rooms = [1, 5, 9, 14, 24].map((rows) => computeRoomMm([table(rows)]) ?? 0);
    expect(rooms[0]).toBe(ROOMS_MM.at(-1));
    expect(rooms).toEqual([...rooms].sort((a, b) => b - a));
    expect(rooms[4]).toBe(9);
  });

  it('gives less where more stands beside the rows', () => {
    const rooms = [0, 800, 1600, 2000].map((letters) => computeRoomMm([words(letters), table(4)]) ?? 0);
    expect(rooms).toEqual([...rooms].sort((a, b) => b - a));
    expect(rooms[0]).toBeGreaterThan(rooms[3] ?? 0);
  });

  it('gives a middle height where one sheet is not enough anyway', () => {
    expect(computeRoomMm([words(6000), table(4)])).toBe(16);
    expect(computeRoomMm([table(60)])).toBe(16);
  });

  it('counts what a cell with a name and how it is said takes', () => {
    const said = (rows: number) =>
      h(
        'table',
        Array.from({ length: rows }, () => h('tr', [h('td', ['Name', h('span.name-say', '(say: NAYM)')]), h('td')])),
      );
    expect(computeRoomMm([said(16)])).toBe(9);
    expect(computeRoomMm([table(16)])).toBeGreaterThan(9);
  });

  it('has a style for each room', () => {
    for (const room of ROOMS_MM)
      expect(pageStyles.handout).toContain(`.room-${room} tr:has(> td:empty) > td {\n    height: ${room}mm;`);
  });
});
