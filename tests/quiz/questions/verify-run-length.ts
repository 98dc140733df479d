import { expect } from 'vitest';
import type { QuizFacts } from '../../../src/quiz/model.ts';
import { runLength } from '../../../src/quiz/questions/run-length.ts';
import { readAloud, requireLines } from './read-instance.ts';
import { sampleSome } from './sky-weeks.ts';
import { requireDemo, WRITTEN_CALENDARS } from './verify-gesture.ts';

/** Groups of a prompt in English with the nights that the calendar file lists for each, in their order. */
function readGroups(prompt: string, facts: QuizFacts): { readonly nights: number }[] {
  const groups = WRITTEN_CALENDARS[requireDemo(facts.calendar.id)].groups.map(({ name, nights }) => ({
    name,
    nights: nights.length,
  }));
  if (prompt.startsWith('We do all the nights on the beat, group by group, at ')) return groups;
  const names = /^We do all the nights of (.+) on the beat, at /.exec(prompt)?.[1] ?? '';
  const found = groups.filter(({ name }) => names === name || names.split(' and then of ').includes(name));
  expect(found.map(({ name }) => name).join(' and then of ')).toBe(names);
  return found;
}

/** The length of the run of a prompt in English, in seconds, by plain counting: a beat after the other. */
export function countSeconds(prompt: string, facts: QuizFacts): number {
  const tempo = Number(/ at (\d+) beats a minute\./.exec(prompt)?.[1]);
  const beats = Number(/Each night lasts (\d+) beats?\./.exec(prompt)?.[1]);
  const fixed = /First we count in: (\d+) beats?\./.exec(prompt)?.[1];
  const isByGroup = /(one beat for each night of the group|one beat for each of its nights)\./.test(prompt);
  const isWithout = prompt.includes('Nothing is counted in.');
  expect([fixed !== undefined, isByGroup, isWithout].filter(Boolean)).toHaveLength(1);
  let counted = 0;
  for (const { nights } of readGroups(prompt, facts)) {
    counted += isByGroup ? nights : Number(fixed ?? 0);
    for (let night = 0; night < nights; night++) counted += beats;
  }
  const sixtieths = counted * 60;
  expect(sixtieths % tempo).toBe(0);
  return sixtieths / tempo;
}

/** Seconds that an answer in English means. */
export function readSeconds(answer: string): number {
  const clock = /^(\d+):(\d\d)$/.exec(answer);
  if (clock !== null) return Number(clock[1]) * 60 + Number(clock[2]);
  const minutes = Number(/(\d+)\s(?:minutes?|min)\b/.exec(answer)?.[1] ?? 0);
  const rest = /(\d+)(?:\s(?:seconds?|s))?$/.exec(answer.replace(/\d+\s(?:minutes?|min)\b/, ''));
  return minutes * 60 + Number(rest?.[1] ?? 0);
}

/**
 * Holds the lengths of a week's runs against plain counting of beats from the words of the prompt and the calendar file.
 * @returns the levels
 */
export function verifyRunLength(facts: QuizFacts, seed: number): number[] {
  return sampleSome(requireLines(runLength.list(facts)), 1, seed).map((instance) => {
    const seconds = countSeconds(readAloud(instance.renderPrompt()), facts);
    const answers = instance.listAnswers().map((answer) => readAloud(answer));
    expect(answers.length).toBeGreaterThan(0);
    for (const answer of answers) expect(readSeconds(answer), answer).toBe(seconds);
    for (const { answer } of instance.listSlips()) expect(readSeconds(answer)).not.toBe(seconds);
    return instance.level;
  });
}
