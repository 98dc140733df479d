import { describe, expect, it } from 'vitest';
import type { ReliefNote } from '../../../src/content/types.ts';
import { buildFakeWeek, type FakeLessonOptions } from '../fake-week.ts';
import { findAll, readText, renderPages } from '../render-pages.ts';

const BARE: FakeLessonOptions = { quizzes: [], handouts: [] };

function readCases(lesson: FakeLessonOptions, reliefNotes: readonly ReliefNote[] = []): string[] {
  const page = renderPages(buildFakeWeek({ plan: { reliefNotes }, lessons: [lesson] })).get('index.html');
  if (page === undefined) throw new Error('No start page.');
  return findAll(page, '.relief-cases').flatMap((list) =>
    list.children.flatMap((item) => (item.type === 'element' ? [readText(item)] : [])),
  );
}

describe('what to do when something fails', () => {
  it('says nothing of what a lesson does not use', () => {
    expect(readCases(BARE)).toEqual([
      'No projector: Nothing has to be shown. Hold the page up, or copy the night’s name and its sentence onto the board.',
    ]);
  });

  it('has words of the kit for sound, copies and weather where a lesson uses them', () => {
    const leads = readCases({ hasRun: true, outdoors: true }).map((words) => words.slice(0, words.indexOf(':') + 1));
    expect(leads).toEqual(['No sound:', 'No projector:', 'No copies:', 'Bad weather:']);
  });

  it('does not say again for a later lesson of a day what it said for the first', () => {
    const lessons = [
      { ...BARE, hasRun: true },
      { ...BARE, hasRun: true, outdoors: true, slug: 'monday-2' },
      { ...BARE, hasRun: true, slug: 'monday-3' },
    ];
    const page = renderPages(buildFakeWeek({ lessons })).get('index.html');
    const lists = page === undefined ? [] : findAll(page, '.relief-cases').map(readText);
    expect(lists).toEqual([expect.stringMatching(/^No sound:.*No projector:/), expect.stringMatching(/^Bad weather:/)]);
  });

  it('takes the author’s words in place of its own, all of them', () => {
    const notes = [
      { text: 'Clap.', when: 'no-sound' },
      { text: 'Or tap.', when: 'no-sound' },
      { text: 'Stay in.', when: 'rain' },
      { text: 'For the whole week.' },
    ] as const;
    expect(readCases({ ...BARE, hasRun: true }, notes)).toEqual([
      'No sound: Clap. Or tap.',
      'No projector: Nothing has to be shown. Hold the page up, or copy the night’s name and its sentence onto the board.',
      'Bad weather: Stay in.',
    ]);
    expect(readCases(BARE, notes).join()).not.toContain('Clap.');
  });
});
