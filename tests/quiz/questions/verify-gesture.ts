import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { parse } from 'yaml';
import { listAlikeGestures } from '../../../src/drawing/figure/figure.ts';
import type { QuizFacts } from '../../../src/quiz/model.ts';
import { gestureOfNight } from '../../../src/quiz/questions/gesture-of-night.ts';
import { areAllDifferent, readAloud, requireChoices } from './read-instance.ts';
import { sampleSome } from './sky-weeks.ts';

interface CalendarText {
  readonly groups: readonly {
    readonly name: string;
    readonly nights: readonly { readonly name: string; readonly gesture?: string }[];
  }[];
}

interface GesturesText {
  readonly gestures: Readonly<Record<string, { readonly cue: string }>>;
}

function readYaml<Shape>(path: string): Shape {
  // The shape of our own demonstration files, which other tests check against their schemas.
  return parse(readFileSync(new URL(`../../../content/${path}`, import.meta.url), 'utf8')) as Shape;
}

/** The demonstration files as written, by the id of the calendar. */
export const WRITTEN_CALENDARS = {
  estuary: readYaml<CalendarText>('calendars/estuary.yaml'),
  moulin: readYaml<CalendarText>('calendars/moulin.yaml'),
} as const;
const WRITTEN_GESTURES = {
  estuary: readYaml<GesturesText>('gestures/estuary.yaml'),
  moulin: readYaml<GesturesText>('gestures/moulin.yaml'),
} as const;

/** The id of one of the demonstration calendars. */
export function requireDemo(id: string): 'estuary' | 'moulin' {
  if (id === 'estuary' || id === 'moulin') return id;
  throw new Error(`There is no calendar ${id} in the demonstration.`);
}

/**
 * Holds the right gestures of a week against the files as written: the night that the prompt names has the gesture whose
 * cue the key gives; each wrong one is of the night that its meaning names, at the distance it names; none is like another.
 * @returns the levels
 */
export function verifyGesture(facts: QuizFacts, seed: number): number[] {
  const id = requireDemo(facts.calendar.id);
  const nights = WRITTEN_CALENDARS[id].groups.flatMap((group) => group.nights);
  const { gestures } = WRITTEN_GESTURES[id];
  const alike = listAlikeGestures(facts.gestures);
  return sampleSome(requireChoices(gestureOfNight.list(facts)), 1, seed).map((instance) => {
    const prompt = readAloud(instance.renderPrompt());
    const right = nights.filter(({ name }) => prompt === `Which gesture belongs to ${name}?`);
    expect(right).toHaveLength(1);
    const [night] = right;
    const cue = gestures[night?.gesture ?? '']?.cue ?? 'no cue';
    expect(readAloud(instance.renderWorking())).toContain(cue);
    for (const set of sampleSome(instance.listWrongSets(), 1, seed)) {
      const keys = [night?.gesture];
      for (const { means } of set) {
        const told = readAloud(means);
        const named = nights.filter(({ name }) => told.startsWith(`It belongs to ${name},`));
        expect(named).toHaveLength(1);
        keys.push(named[0]?.gesture);
        const ahead =
          nights.findIndex(({ name }) => name === named[0]?.name) -
          nights.findIndex(({ name }) => name === night?.name);
        const counted = /(\d+) nights? (earlier|later)/.exec(told);
        if (counted !== null) {
          const way = counted[2] === 'later' ? Number(counted[1]) : -Number(counted[1]);
          expect(Math.abs((ahead - way) % nights.length)).toBe(0);
        }
      }
      expect(new Set(keys).size).toBe(set.length + 1);
      expect(alike.some(({ first, second }) => keys.includes(first) && keys.includes(second))).toBe(false);
      expect(areAllDifferent([instance.renderRight(), ...set.map(({ content }) => content)].map(readAloud))).toBe(true);
    }
    return instance.level;
  });
}
