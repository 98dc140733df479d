import { describe, expect, it } from 'vitest';
import { listSpellings } from '../../../src/pack/qti/list-spellings.ts';

const ALL = { case: true, accents: true };
const NOTHING = { case: false, accents: false };

describe('the spellings a machine must know', () => {
  it.each([
    ['Half Shell', ['Half Shell']],
    ['  Half \n Shell ', ['Half Shell']],
    ['Tāne', ['Tāne', 'Tane']],
    ['Ta\u0304ne', ['Tāne', 'Tane']],
    ['Rāā', ['Rāā', 'Raā', 'Rāa', 'Raa']],
    ['l’été', ['l’été', "l'été", 'l’eté', "l'eté", 'l’éte', "l'éte", 'l’ete', "l'ete"]],
    ['āēīōū', ['āēīōū', 'aeiou']],
    ['Ẉ̈', ['Ẉ̈', 'W']],
    ['🌒 Ā', ['🌒 Ā', '🌒 A']],
    ['', ['']],
    ['Hawaiʻi – moana', ['Hawaiʻi – moana', "Hawai'i - moana"]],
  ])('of %j are %j', (accepted, spellings) => {
    expect(listSpellings(accepted, ALL)).toEqual(spellings.map((each) => each.normalize('NFC')));
  });

  it('are the one where nothing is overlooked, but for how an apostrophe is typed', () => {
    expect(listSpellings('l’Été', NOTHING)).toEqual(['l’Été', "l'Été"]);
  });

  it('are never many', () => {
    expect(listSpellings('ā’é’ī’ō', ALL).length).toBeLessThanOrEqual(32);
    expect(listSpellings('āāāāāāāāāā’', ALL)).toHaveLength(4);
  });
});
