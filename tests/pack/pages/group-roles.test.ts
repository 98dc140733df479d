import { describe, expect, it } from 'vitest';
import { listRoles } from '../../../src/pack/pages/group-roles.ts';

describe('listRoles', () => {
  it('gives every seat every role once in four quizzes, and starts again', () => {
    const quizzes = [1, 2, 3, 4].map(listRoles);
    for (const seat of [0, 1, 2, 3]) expect(new Set(quizzes.map((roles) => roles[seat])).size).toBe(4);
    for (const roles of quizzes) expect(new Set(roles).size).toBe(4);
    expect(listRoles(5)).toEqual(quizzes[0]);
  });
});
