import { describe, expect, it } from 'vitest';
import { makeNameFact, makeNumberFact } from '../../../src/directives/questions/calendar-fact.ts';

const DATE = '2026-07-29';

describe('a name', () => {
  const fact = makeNameFact(DATE, 'Māra Moon', ['Māra Moon', 'Brim Moon', 'Mara Moon']);

  it.each(['Māra Moon', ' māra  MOON\u00A0', 'Ma\u0304ra Moon'])('agrees with %j', (text) => {
    expect(fact.agrees(text)).toBe(true);
    expect(fact.contradicts(text)).toBe(false);
  });

  it.each(['brim moon', 'Mara Moon'])('is contradicted by another name: %j', (text) => {
    expect(fact.agrees(text)).toBe(false);
    expect(fact.contradicts(text)).toBe(true);
  });

  it.each(['the Brim Moon', 'Moon', ''])('has nothing to say of %j', (text) => {
    expect(fact.agrees(text)).toBe(false);
    expect(fact.contradicts(text)).toBe(false);
  });
});

describe('a number', () => {
  const fact = makeNumberFact(DATE, 7);

  it.each(['7', '07', '7 nights', 'in 7 nights.', '7th'])('agrees with %j', (text) => {
    expect(fact.agrees(text)).toBe(true);
    expect(fact.contradicts(text)).toBe(false);
  });

  it.each(['8', 'night 17', '70'])('is contradicted by %j', (text) => {
    expect(fact.agrees(text)).toBe(false);
    expect(fact.contradicts(text)).toBe(true);
  });

  it.each(['seven', '7 or 8', ''])('has nothing to say of %j', (text) => {
    expect(fact.agrees(text)).toBe(false);
    expect(fact.contradicts(text)).toBe(false);
  });
});
