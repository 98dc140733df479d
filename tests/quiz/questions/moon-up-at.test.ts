import { describe, expect, it } from 'vitest';
import type { MoonWhereabouts } from '../../../src/calendar/moon-whereabouts.ts';
import { moonUpAt } from '../../../src/quiz/questions/moon-up-at.ts';
import { listWrongPlaces } from '../../../src/quiz/questions/wrong-places.ts';
import { areAllDifferent, type ChoiceInstance, readAloud, requireChoices } from './read-instance.ts';
import { FRENCH, makeSkyFacts, PLACES, placeAt } from './sky-facts.ts';

const facts = makeSkyFacts({ today: '2026-07-22', before: 2, after: 7 });
const instances = requireChoices(moonUpAt.list(facts));

function findAsked(pattern: RegExp, among: readonly ChoiceInstance[] = instances): ChoiceInstance[] {
  return among.filter((instance) => pattern.test(readAloud(instance.renderPrompt())));
}

describe('where the Moon is at a time', () => {
  it('has four answers, one of them right, that read differently and are about as long', () => {
    expect(instances.length).toBeGreaterThan(60);
    for (const instance of instances) {
      for (const set of instance.listWrongSets()) {
        const options = [readAloud(instance.renderRight()), ...set.map(({ content }) => readAloud(content))];
        expect(options).toHaveLength(4);
        expect(areAllDifferent(options)).toBe(true);
        const lengths = options.map(({ length }) => length);
        expect(Math.max(...lengths)).toBeLessThan(1.3 * Math.min(...lengths));
        for (const { means } of set) expect(readAloud(means)).not.toBe('');
      }
    }
  });

  // First quarter: 21 July 2026, 11:06 UT; full Moon: 29 July 2026, 14:36 UT (published phase tables, from memory). Plain
  // geometry: the growing half Moon is highest at sunset and sets about midnight; the full one rises at sunset.
  it('knows the half Moon and the full one', () => {
    const [half] = findAsked(/^Where is the Moon on Wednesday 22 July at 8:30 pm\?$/);
    expect(readAloud(half?.renderRight() ?? [])).toBe('It is up, in the western half of the sky.');
    const [morning] = findAsked(/^Where is the Moon on Saturday 25 July at 6:00 am\?$/);
    expect(readAloud(morning?.renderRight() ?? [])).toBe('It is down: it set in the 6 hours before.');
    const [full] = findAsked(/^Where is the Moon on Wednesday 29 July at 8:30 pm\?$/);
    expect(readAloud(full?.renderRight() ?? [])).toBe('It is up, in the eastern half of the sky.');
    const [afternoon] = findAsked(/^Where is the Moon on Wednesday 29 July at 3:00 pm\?$/);
    expect(readAloud(afternoon?.renderRight() ?? [])).toBe('It is down: it rises in the 6 hours after.');
  });

  it('asks on three levels: rise and set told, shape told, date and time alone', () => {
    for (const instance of instances) {
      const prompt = readAloud(instance.renderPrompt());
      expect(/ rises .+ and sets .+\. Where is it /.test(prompt)).toBe(instance.level === 1);
      expect(/^The Moon is a?/.test(prompt)).toBe(instance.level === 2);
      expect(prompt.startsWith('Where is the Moon ')).toBe(instance.level === 3);
    }
    expect(areAllDifferent(instances.map(({ asks, level }) => `${asks} ${level}`))).toBe(true);
  });

  it('names midnight with both its days, and never 12 pm or 12 am', () => {
    expect(findAsked(/at midnight between Saturday 25 July and Sunday 26 July/).length).toBeGreaterThan(0);
    expect(findAsked(/(?:^|[^\d])12:00/)).toEqual([]);
  });

  it('asks at the school’s own times', () => {
    const school = { classBegins: '08:10', classEnds: '14:20', bedtime: '19:40' };
    const own = requireChoices(moonUpAt.list(makeSkyFacts({ today: '2026-07-25', school })));
    for (const time of [/ at 8:10 am/, / at 2:20 pm/, / at 7:40 pm/])
      expect(findAsked(time, own).length).toBeGreaterThan(0);
    expect(findAsked(/ at 8:30 pm\?| at 9:00 am\?/, own)).toEqual([]);
  });

  it('never sends anybody out, and asks nothing by day of a Moon near the Sun', () => {
    for (const instance of instances) expect(readAloud(instance.renderPrompt())).not.toMatch(/look|go out|see/i);
    // New Moon: 12 August 2026, 17:37 UT (the eclipse of that day; published tables, from memory).
    const near = requireChoices(moonUpAt.list(makeSkyFacts({ today: '2026-08-12', before: 2, after: 2 })));
    expect(findAsked(/midday|9:00 am|3:00 pm/, near)).toEqual([]);
    expect(near.length).toBeGreaterThan(0);
    // The rise or the set of such a Moon is by day: no child is told when.
    expect(near.filter(({ level }) => level === 1)).toEqual([]);
  });

  it('asks about dates of the quiz alone, midnight as the end of its day', () => {
    for (const { about } of instances) {
      expect(about.dates).toHaveLength(1);
      expect((about.dates[0] ?? '') >= facts.from && (about.dates[0] ?? '') <= facts.to).toBe(true);
      expect(about.nights).toHaveLength(1);
    }
  });

  it('says what a wrong answer means by night and by day', () => {
    const reasonsOf = (right: MoonWhereabouts, isLight: boolean) =>
      Object.fromEntries(listWrongPlaces(right, isLight).map(({ place, reason }) => [place, reason]));
    expect(reasonsOf('has-set', false)).toEqual({
      'up-east': 'all-night',
      'up-west': 'sets-late',
      'will-rise': 'sides',
    });
    expect(reasonsOf('will-rise', false)).toEqual({
      'up-east': 'rises-early',
      'up-west': 'all-night',
      'has-set': 'sides',
    });
    expect(reasonsOf('up-east', true)).toEqual({
      'up-west': 'sides',
      'has-set': 'never-by-day',
      'will-rise': 'rises-late',
    });
    expect(reasonsOf('up-west', false)).toEqual({ 'up-east': 'sides', 'has-set': 'sets-early', 'will-rise': 'across' });
  });

  it('passes over a date that the place left out', () => {
    const apia = makeSkyFacts({
      today: '2011-12-29',
      before: 1,
      after: 3,
      place: placeAt(-13.8, -171.8, 'Pacific/Apia'),
    });
    const asked = moonUpAt.list(apia);
    expect(asked.length).toBeGreaterThan(0);
    expect(asked.filter(({ about }) => about.dates.includes('2011-12-30'))).toEqual([]);
    expect(asked.map((instance) => readAloud(instance.renderPrompt())).join()).not.toContain('30 December');
  });

  it('asks nothing about east and west at a pole, and works where the calendar cannot tell the night', () => {
    const pole = makeSkyFacts({ today: '2026-12-24', place: placeAt(89.9, 0, 'Europe/Oslo'), calendar: 'moulin' });
    expect(moonUpAt.list(pole)).toEqual([]);
    const polar = makeSkyFacts({ today: '2030-12-26', place: PLACES.north, calendar: 'crescent' });
    expect(moonUpAt.list(polar).length).toBeGreaterThan(0);
  });

  it('says the year of a date that is not in the year of the lesson', () => {
    const facts = makeSkyFacts({ today: '2026-12-30', before: 3, after: 3 });
    const prompts = requireChoices(moonUpAt.list(facts)).map((instance) => readAloud(instance.renderPrompt()));
    const january = prompts.filter((prompt) => prompt.includes('January'));
    expect(january.length).toBeGreaterThan(0);
    for (const prompt of january) expect(prompt).toMatch(/January 2027\b/);
    expect(prompts.join(' ')).not.toContain('2026');
  });

  it('speaks French', () => {
    const [first] = requireChoices(moonUpAt.list({ ...facts, labels: FRENCH })).filter(({ level }) => level === 3);
    expect(readAloud(first?.renderPrompt() ?? [])).toMatch(/^Où est la Lune (le|à)\s.+\s\?$/);
    expect(readAloud(first?.renderRight() ?? [])).toMatch(/^Elle (est|n’est pas) levée/);
  });
});
