import { describe, expect, it } from 'vitest';
import type { RunNight } from '../../../src/calendar/almanac-types.ts';
import { runLength } from '../../../src/quiz/questions/run-length.ts';
import { listAskedRuns } from '../../../src/quiz/questions/run-lengths.ts';
import { computeTimeline } from '../../../src/rhythm/compute-timeline.ts';
import { areAllDifferent, readAloud, requireLines } from './read-instance.ts';
import { FRENCH, makeSkyFacts } from './sky-facts.ts';
import { countSeconds, readSeconds } from './verify-run-length.ts';

const facts = makeSkyFacts({ today: '2026-07-22', before: 2, after: 7 });
const instances = requireLines(runLength.list(facts));

function findAsked(pattern: RegExp) {
  const found = instances.filter((instance) => pattern.test(readAloud(instance.renderPrompt())));
  const [instance] = found;
  if (instance === undefined || found.length !== 1) throw new Error(`${found.length} questions are like ${pattern}.`);
  return instance;
}

function buildRun(...lengths: number[]): RunNight[] {
  return lengths.flatMap((length, group) =>
    Array.from({ length }, (_, index) => ({
      name: `Night ${group + 1}.${index + 1}`,
      number: lengths.slice(0, group).reduce((sum, each) => sum + each, 0) + index + 1,
      group: `Group ${group + 1}`,
      groupNumber: group + 1,
      numberInGroup: index + 1,
    })),
  );
}

describe('how long a run takes', () => {
  // By hand: 4 nights of 2 beats are 8 beats; at 120 beats a minute a beat is half a second.
  it('counts the beats of a group', () => {
    const instance = findAsked(/of Open Channel on the beat, at 120 .*lasts 2 beats\. Nothing is counted in/);
    expect(readAloud(instance.renderPrompt())).toBe(
      'We do all the nights of Open Channel on the beat, at 120 beats a minute. Each night lasts 2 beats. Nothing is counted in. How many seconds does it take, until the last night is over?',
    );
    expect(instance).toMatchObject({ level: 1, unit: 'seconds', forgive: { case: true, accents: true } });
    expect(instance.listAnswers().map((answer) => readAloud(answer))).toEqual(['4']);
    expect(instance.listSlips().map(({ answer, means }) => `${answer}: ${readAloud(means)}`)).toEqual([
      '16: Divided the wrong way: beats × tempo ÷ 60.',
      '8: These are the beats, not the seconds.',
      '2: Each night was counted as one beat.',
    ]);
    expect(readAloud(instance.renderWorking())).toBe(
      'Nights: 4 × 2 = 8 beats. There are 120 beats in 60 seconds: 8 × 60 ÷ 120 = 4 seconds.',
    );
  });

  // By hand: 4 beats of count-in and 4 nights of 1 beat are 8 beats, at 60 a minute 8 seconds.
  it('counts the count-in', () => {
    const instance = findAsked(
      /of Open Channel on the beat, at 60 .*lasts 1 beat\. First we count in: one beat for each/,
    );
    expect(readAloud(instance.listAnswers()[0] ?? [])).toBe('8');
    expect(instance.listSlips().map(({ answer, means }) => `${answer}: ${readAloud(means)}`)).toEqual([
      '4: The count-in was forgotten.',
      '7: One beat short: measured to where the last beat begins, not to where it ends.',
    ]);
    expect(readAloud(instance.renderWorking())).toContain('Counted in: 4 beats, so 8 beats in all.');
  });

  // By hand: 30 nights of 2 beats and 30 beats of count-in are 90 beats; at 60 a minute 90 seconds.
  it('writes long runs in minutes and seconds', () => {
    const instance = findAsked(/group by group, at 60 .*lasts 2 beats/);
    expect(instance.level).toBe(3);
    expect(instance.unit).toBeUndefined();
    expect(instance.listAnswers().map((answer) => readAloud(answer))).toEqual([
      '1 minute 30 seconds',
      '1:30',
      '1 min 30 s',
      '1 min 30',
      '90 seconds',
      '90',
      '90 s',
    ]);
    // Without any count-in 60 beats; with the first group's, of 2 nights, 62; each night one beat, 60 again.
    expect(instance.listSlips().map(({ answer }) => answer)).toEqual([
      '1 minute',
      '1 minute 2 seconds',
      '1 minute 29 seconds',
    ]);
  });

  it('asks no two questions alike, and offers no slip that is accepted', () => {
    expect(areAllDifferent(instances.map(({ asks }) => asks))).toBe(true);
    expect(areAllDifferent(instances.map((instance) => readAloud(instance.renderPrompt())))).toBe(true);
    for (const instance of instances) {
      const accepted = instance.listAnswers().map((answer) => readSeconds(readAloud(answer)));
      expect(new Set(accepted).size).toBe(1);
      for (const { answer } of instance.listSlips()) expect(accepted).not.toContain(readSeconds(answer));
      expect(countSeconds(readAloud(instance.renderPrompt()), facts)).toBe(accepted[0]);
    }
  });

  it('asks about groups that have a night among the dates, and says which dates', () => {
    for (const { about } of instances.filter(({ level }) => level < 3)) {
      expect(about.dates.length).toBeGreaterThan(0);
      for (const date of about.dates) expect(about.nights).toContain(facts.almanac.nightOn(date).night.number);
    }
  });

  it('is as long as a gesture sequence of the same groups', () => {
    const runs = listAskedRuns(buildRun(2, 5, 4), new Set([1, 2, 3]));
    expect(new Set(runs.map(({ level }) => level))).toEqual(new Set([1, 2, 3]));
    for (const { groups, tempo, beats, countIn, seconds } of runs) {
      const rhythm = {
        tempoBeatsPerMinute: tempo,
        beatsPerItem: beats,
        countIn,
        restBeats: 0,
        passes: 1,
        slowFirst: false,
      };
      expect(computeTimeline(groups, rhythm).totalSeconds).toBe(seconds);
      expect(Number.isInteger(seconds)).toBe(true);
    }
  });

  it('asks about two groups that follow each other where both have a night among the dates', () => {
    const pairs = listAskedRuns(buildRun(9, 10, 11, 9), new Set([2, 3])).filter(({ groups }) => groups.length === 2);
    expect(pairs.length).toBeGreaterThan(0);
    for (const { groups } of pairs) expect(groups.map(({ name }) => name)).toEqual(['Group 2', 'Group 3']);
  });

  it('takes a calendar of one group as a group, and has nothing to ask without nights', () => {
    const runs = listAskedRuns(buildRun(30), new Set([1]));
    expect(runs.every(({ isWhole, groups }) => !isWhole && groups.length === 1)).toBe(true);
    expect(listAskedRuns(buildRun(2, 3), new Set()).filter(({ level }) => level < 3)).toEqual([]);
  });

  it('speaks French', () => {
    const [first] = requireLines(runLength.list({ ...facts, labels: FRENCH }));
    expect(readAloud(first?.renderPrompt() ?? [])).toMatch(
      /^On fait en mesure toutes les nuits de «\s.+\s», à 30\stemps/,
    );
    expect(first?.unit).toBe('secondes');
  });
});
