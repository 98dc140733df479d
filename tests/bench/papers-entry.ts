import { createAlmanac } from '../../src/calendar/almanac.ts';
import { addDays, computeMonday } from '../../src/content/civil-date.ts';
import { openLibrary } from '../../src/content/open-library.ts';
import { stringifyHast } from '../../src/lesson/stringify-hast.ts';
import { readContent } from '../../src/node/read-content.ts';
import { sha256 } from '../../src/node/sha256.ts';
import { renderKeyAnswer } from '../../src/pack/pages/key-answer.ts';
import { renderPaperPage } from '../../src/pack/pages/paper-page.ts';
import { dealPapers } from '../../src/quiz/deal-papers.ts';
import type { QuestionSource } from '../../src/quiz/model.ts';

const PLACE = { file: 'quiz.md', line: 1, column: 1 };
const text = (value: string) => [{ type: 'text' as const, value }];

/** A quiz as a class has it: written questions and computed ones, a picture among them. */
const SOURCES: readonly QuestionSource[] = [
  {
    kind: 'choice',
    place: PLACE,
    prompt: text('Where does the light of the Moon come from?'),
    options: ['the Sun', 'the sea', 'the stars', 'itself'].map((words, place) => ({
      content: text(words),
      right: place === 0,
    })),
  },
  { kind: 'order', place: PLACE, prompt: text('Put in order.'), items: ['new', 'half', 'full'].map(text) },
  ...(['night-of-date', 'nights-until', 'next-in-run', 'date-of-night', 'match-moons', 'lit-side'] as const).map(
    (ask) => ({ kind: 'computed', place: PLACE, ask }) as const,
  ),
];

/**
 * Makes a function that deals a quiz of the week of a date to so many groups, and writes its papers and its key. Each
 * call works the week out anew, as a build does.
 * @returns Bytes written.
 */
export function openPapers(contentFolder: string, schoolId: string): (date: string, groups: number) => number {
  const opened = openLibrary(readContent(contentFolder)).openSchool(schoolId)?.value;
  if (opened === undefined) throw new Error(`There is no school ${schoolId}.`);
  const { calendar, gestures, labels, school } = opened;
  return (date, groups) => {
    const almanac = createAlmanac(calendar, school.place);
    const span = { from: computeMonday(date), to: addDays(date, 7) };
    const sheet = dealPapers({
      title: 'Quiz',
      number: 1,
      sources: SOURCES,
      groups: Array.from({ length: groups }, (_, place) => `Group ${place + 1}`),
      seed: date,
      facts: { almanac, calendar, gestures, labels, school, today: date, ...span, toldDates: new Set() },
      report: () => undefined,
    });
    const frame = {
      labels,
      language: labels.language,
      authorsLanguage: labels.language,
      schoolName: school.name,
      date,
      digest: sha256.base64,
    };
    const papers = stringifyHast(renderPaperPage(sheet.papers, 1, frame));
    const answers = sheet.key.flatMap((paper, group) =>
      paper.answers.map((answer) => renderKeyAnswer(answer, `g${group + 1}-q${answer.number}`, labels)),
    );
    return papers.length + stringifyHast({ type: 'root', children: answers }).length;
  };
}
