import { describe, expect, it } from 'vitest';
import { buildWeek, makeWeek, openContent, writeLesson } from './build-week.ts';

const setting = openContent();

const listTold = (sequence: string): readonly string[] | undefined => {
  const files = makeWeek(
    {
      'monday.md': writeLesson('Monday.', { day: 'monday' }),
      'wednesday.md': writeLesson(`:::handout[Sheet]\n${sequence}\n:::`),
    },
    { days: ['monday', 'wednesday'] },
  );
  const { week, diagnostics } = buildWeek(files, setting);
  if (week === undefined) throw new Error(diagnostics.map(({ message }) => message).join('\n'));
  return week.lessons[1]?.tells;
};

describe('::gesture-sequence', () => {
  it('tells a quiz which dates a handout gives away: those of the week, or the lesson’s own', () => {
    expect(listTold('::gesture-sequence{nights=this-week}')).toEqual(['2026-07-27', '2026-07-29']);
    expect(listTold('::gesture-sequence{nights=up-to-tonight}')).toEqual(['2026-07-29']);
    expect(listTold('::gesture-sequence{nights=months-then-nights}')).toEqual(['2026-07-29']);
    expect(listTold('::gesture-sequence{nights=months}')).toEqual([]);
    expect(listTold('::gesture-sequence')).toEqual([]);
  });
});
