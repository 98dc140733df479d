import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { createAlmanac } from '../../src/calendar/almanac.ts';
import type { Almanac } from '../../src/calendar/almanac-types.ts';
import type { Place } from '../../src/calendar/rules.ts';
import { createLabels } from '../../src/content/labels.ts';
import { parseCalendar } from '../../src/content/parse-calendar.ts';
import { parseLabelFile } from '../../src/content/parse-label-file.ts';
import type { Calendar } from '../../src/content/types.ts';
import { readText } from '../../src/quiz/fold-text.ts';
import type { QuizFacts, QuizSheet } from '../../src/quiz/model.ts';
import { computed, deal, only, optionTexts, pairUp, taggedNames } from './quiz-helpers.ts';

const SALTGRASS_POINT: Place = {
  latitudeDegrees: -41.1,
  longitudeDegrees: 174.2,
  elevationMetres: 10,
  timeZone: 'Pacific/Auckland',
};
const SOURCES = [computed('night-of-date'), computed('nights-until'), computed('next-in-run')];

function readContent(path: string): { path: string; text: string } {
  return { path, text: readFileSync(new URL(`../../content/${path}`, import.meta.url), 'utf8') };
}

function requireCalendar(id: string): Calendar {
  const { value, diagnostics } = parseCalendar(readContent(`calendars/${id}.yaml`));
  if (value === undefined) throw new Error(`The calendar ${id} is faulty: ${JSON.stringify(diagnostics)}`);
  return value;
}

const ESTUARY = requireCalendar('estuary');
const ALMANAC = createAlmanac(ESTUARY, SALTGRASS_POINT);

function makeRealFacts(today: string, from: string, to: string): QuizFacts {
  return { almanac: ALMANAC, calendar: ESTUARY, labels: createLabels('en-NZ'), today, from, to, toldDates: new Set() };
}

/** Checks each answer against the rows of the nights alone. */
function expectTrue(sheet: QuizSheet, almanac: Almanac, { today, labels }: QuizFacts, language: string): void {
  const nights = [...almanac.nights('2026-06-01', '2026-12-31')];
  const start = nights.findIndex(({ date }) => date === today);
  for (const { question, answer } of pairUp(sheet)) {
    const prompt = readText(question.prompt);
    const shown = readText(only(answer.answers));
    const names = taggedNames(question.prompt, language);
    if (question.number === 1) {
      const dates = nights.filter(({ date }) => prompt.includes(labels.date(date, 'day')));
      expect(shown).toBe(only(dates).night.name);
    } else if (question.number === 2) {
      const count = nights.slice(start).findIndex(({ night }) => night.name === names[1]);
      expect(shown.replace('\u00A0', ' ').split(' ')[0]).toBe(String(count));
    } else {
      const month = nights.filter((night) => night.month.firstDate === nights[start]?.month.firstDate);
      const last = only(month.filter(({ night }) => night.name === names[0]));
      expect(shown).toBe(nights[nights.indexOf(last) + 1]?.night.name);
    }
    if (question.space.kind === 'options') expect(new Set(optionTexts(question)).size).toBe(4);
  }
}

describe('questions on real nights at Saltgrass Point', () => {
  /*
   * The Moon passed before the Sun on 12 August 2026 at about 17:37 UT (the total solar eclipse of that day; published
   * eclipse tables, from memory): 05:37 on 13 August at this place, in the night of 12 August. The conjunction before
   * it, 14 July at about 09:44 UT, is 21:44 on 14 July. So the month of 14 July has 29 nights, counted on a calendar.
   */
  it('ends the month of 14 July 2026 after 29 nights', () => {
    const names = ESTUARY.groups.flatMap(({ nights }) => nights.map(({ name }) => name));
    const facts = makeRealFacts('2026-08-11', '2026-08-10', '2026-08-14');
    let found = 0;
    for (let seed = 0; seed < 120; seed++) {
      // The last night is no question for one group among others, so one group is asked alone.
      const { sheet } = deal({ sources: SOURCES, facts, seed: `${seed}`, groups: ['Heron'] });
      const lasts = pairUp(sheet).filter(({ question }) =>
        readText(question.prompt).includes('last night of this month'),
      );
      found += lasts.length;
      for (const { question, answer } of lasts) {
        expect(taggedNames(question.prompt, 'en')).toEqual([names[28]]);
        expect(readText(only(answer.answers))).toBe(names[0]);
        expect(optionTexts(question)).toContain(names[29]);
      }
      for (const { question, answer } of pairUp(sheet).filter((pair) => pair.question.number === 2)) {
        // Tonight is the 29th, so the nth name comes in n nights.
        const asked = names.indexOf(taggedNames(question.prompt, 'en')[1] ?? '') + 1;
        expect(readText(only(answer.answers))).toBe(`${asked} nights`);
      }
    }
    expect(found).toBeGreaterThan(0);
  });

  it('names Friday 31 July 2026 by counting from the new Moon', () => {
    const names = ESTUARY.groups.flatMap(({ nights }) => nights.map(({ name }) => name));
    const facts = makeRealFacts('2026-07-29', '2026-07-31', '2026-07-31');
    const { sheet, diagnostics } = deal({ sources: [computed('night-of-date')], facts, groups: ['Heron'] });
    expect(diagnostics).toEqual([]);
    expect(readText(only(only(pairUp(sheet)).answer.answers))).toBe(names[17]);
  });

  it('has true answers on every school day from July to October 2026', () => {
    const days = [...ALMANAC.nights('2026-07-20', '2026-10-02')].map(({ date }) => date);
    for (let week = 0; week + 5 <= days.length; week += 7) {
      const [from = '', , , , to = ''] = days.slice(week, week + 5);
      for (const today of days.slice(week, week + 5)) {
        const facts = makeRealFacts(today, from, to);
        const { sheet, diagnostics } = deal({ sources: SOURCES, facts, seed: today });
        expect(diagnostics).toEqual([]);
        expectTrue(sheet, ALMANAC, facts, 'en');
      }
    }
  });

  it('passes over the date that Apia left out', () => {
    const place: Place = {
      latitudeDegrees: -13.8,
      longitudeDegrees: -171.8,
      elevationMetres: 0,
      timeZone: 'Pacific/Apia',
    };
    const almanac = createAlmanac(ESTUARY, place);
    const facts = { ...makeRealFacts('2011-12-28', '2011-12-28', '2012-01-01'), almanac };
    const { sheet, diagnostics } = deal({ sources: SOURCES, facts, groups: ['Heron', 'Oyster', 'Kelp'] });
    expect(diagnostics).toEqual([]);
    expect(JSON.stringify(sheet)).not.toContain('30 December');
    const nights = [...almanac.nights('2011-12-28', '2012-01-31')];
    for (const { question, answer } of pairUp(sheet).filter((pair) => pair.question.number === 2)) {
      const asked = taggedNames(question.prompt, 'en')[1];
      const count = nights.findIndex(({ night }) => night.name === asked);
      expect(readText(only(answer.answers))).toBe(`${count} nights`);
    }
  });
});

describe('questions in French', () => {
  it('are true, and keep the names tagged in the order of the French words', () => {
    const calendar = requireCalendar('moulin');
    const { value: file, diagnostics } = parseLabelFile(readContent('labels/fr.yaml'));
    if (file === undefined) throw new Error(`The French labels are faulty: ${JSON.stringify(diagnostics)}`);
    const place: Place = {
      latitudeDegrees: 47.4,
      longitudeDegrees: 1.2,
      elevationMetres: 90,
      timeZone: 'Europe/Paris',
    };
    const almanac = createAlmanac(calendar, place);
    const labels = createLabels('fr', file);
    const facts: QuizFacts = {
      almanac,
      calendar,
      labels,
      today: '2026-10-06',
      from: '2026-10-05',
      to: '2026-10-09',
      toldDates: new Set(),
    };
    const dealt = deal({ sources: SOURCES, facts });
    expect(dealt.diagnostics).toEqual([]);
    expectTrue(dealt.sheet, almanac, facts, 'fr');
    const [first, second] = dealt.sheet.papers[0]?.questions ?? [];
    expect(readText(first?.prompt ?? [])).toMatch(
      /^Quelle est la nuit du \S+ \d+\u00A0octobre, à partir du lever du Soleil\u00A0\?$/,
    );
    expect(readText(second?.prompt ?? [])).toMatch(/^Cette nuit, c’est .*\. Dans combien de nuits vient .*\u00A0\?$/);
    expect(second?.space).toEqual({ kind: 'line', unit: 'nuits' });
  });
});
