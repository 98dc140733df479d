import type { ElementContent } from 'hast';
import type { Report } from '../content/diagnostic.ts';
import { describeFound } from '../content/wording.ts';
import { copyContent } from './copy-content.ts';
import { foldText, readText, showsSomething } from './fold-text.ts';
import type { MatchedPair, QuestionSource, RubricRow, WrittenOption, WrittenSource } from './model.ts';

/** A choice has at least 2 options and at most as many as fit beside letters in a narrow column; our own choice. */
const FEWEST_OPTIONS = 2;
const MOST_OPTIONS = 8;

const HOW_TO_MARK = '`[x]` in a lesson, `right: true` in a questions file';

/**
 * Whether a question as the author gave it can be asked and marked. What is wrong is reported as an error
 * `quiz-question` at the question's place. Computed questions are judged where they are computed.
 */
export function checkQuestion(source: QuestionSource, report: Report): boolean {
  const faults = listFaults(source);
  for (const fault of faults) report({ rule: 'quiz-question', severity: 'error', place: source.place, ...fault });
  return faults.length === 0;
}

interface Fault {
  readonly message: string;
  readonly found?: string;
  readonly expected?: string;
}

function listFaults(source: QuestionSource): Fault[] {
  if (source.kind === 'computed') return [];
  const unasked = 'This question has no text, expected what is asked; write it before the answers.';
  return [...(source.prompt.some(showsSomething) ? [] : [{ message: unasked }]), ...listAnswerFaults(source)];
}

function listAnswerFaults(source: WrittenSource): Fault[] {
  switch (source.kind) {
    case 'choice':
      return listOptionFaults(source.options);
    case 'short':
      return foldText(source.answers[0] ?? '') === '' ? [{ message: NO_ANSWER }] : [];
    case 'order':
      return listItemFaults(source.items);
    case 'match':
      return listPairFaults(source.pairs);
    case 'open':
      return listRubricFaults(source.rubric, source.marks);
    case 'draw':
      return [];
  }
}

const NO_ANSWER =
  'This question has no answer, expected one for the key; write one (in square brackets, or under `answers` in a questions file).';

function listOptionFaults(options: readonly WrittenOption[]): Fault[] {
  const count = options.length;
  if (count < FEWEST_OPTIONS || count > MOST_OPTIONS) {
    const expected = `${FEWEST_OPTIONS} to ${MOST_OPTIONS} options`;
    const advice = count < FEWEST_OPTIONS ? 'add a wrong one, or make it a short answer' : 'leave some out';
    return [
      {
        message: `This choice has \`${count}\` options, expected ${expected}; ${advice}.`,
        found: `${count}`,
        expected,
      },
    ];
  }
  const right = options.filter((option) => option.right).length;
  const faults: Fault[] = [];
  if (right === 0) {
    faults.push({ message: `No option of this choice is right, expected at least one; mark it (${HOW_TO_MARK}).` });
  }
  if (right === count) {
    faults.push({
      message: `All \`${count}\` options of this choice are right, expected at least one wrong one; add one, or take marks away (${HOW_TO_MARK}).`,
    });
  }
  const contents = options.map(({ content }) => content);
  return [...faults, ...listIndistinct('Option', 'of this choice', contents)];
}

function listItemFaults(items: readonly (readonly ElementContent[])[]): Fault[] {
  const miscounted = listCountFaults('This question has', items.length, 'things to put in order');
  return miscounted.length > 0 ? miscounted : listIndistinct('Item', 'to put in order', items);
}

/** Equal ones on either side are ambiguous: what belongs to one belongs to both. */
function listPairFaults(pairs: readonly MatchedPair[]): Fault[] {
  const miscounted = listCountFaults('This table has', pairs.length, 'pairs to match');
  if (miscounted.length > 0) return miscounted;
  const lefts = pairs.map(({ left }) => left);
  const rights = pairs.map(({ right }) => right);
  return [...listIndistinct('Row', 'on the left', lefts), ...listIndistinct('Row', 'on the right', rights)];
}

function listCountFaults(subject: string, count: number, things: string): Fault[] {
  if (count >= FEWEST_OPTIONS && count <= MOST_OPTIONS) return [];
  const expected = `${FEWEST_OPTIONS} to ${MOST_OPTIONS}`;
  const advice = count < FEWEST_OPTIONS ? 'add more' : 'leave some out';
  const message = `${subject} \`${count}\` ${things}, expected ${expected}; ${advice}.`;
  return [{ message, found: `${count}`, expected }];
}

function listRubricFaults(rubric: readonly RubricRow[], marks: number | undefined): Fault[] {
  const [top] = rubric;
  if (top === undefined) {
    return [{ message: 'This rubric is empty, expected what earns the marks; write `rubric="2: …; 1: …"`.' }];
  }
  const faults: Fault[] = [];
  const risen = rubric.findIndex((row, place) => row.marks >= (rubric[place - 1]?.marks ?? Number.POSITIVE_INFINITY));
  if (risen > 0) {
    const found = `${rubric[risen]?.marks}`;
    faults.push({
      message: `This rubric gives \`${found}\` after \`${rubric[risen - 1]?.marks}\`, expected fewer marks from one part to the next; put the part with the most marks first.`,
      found,
    });
  }
  if (marks !== undefined && marks !== top.marks) {
    faults.push({
      message: `This question has \`marks=${marks}\` and a rubric that gives up to \`${top.marks}\`, expected the same; change one of them, or leave \`marks\` out.`,
      found: `${marks}`,
      expected: `${top.marks}`,
    });
  }
  return faults;
}

/** Things that cannot be told from others: those with nothing to read or see, else those that read alike. */
function listIndistinct(thing: string, where: string, contents: readonly (readonly ElementContent[])[]): Fault[] {
  const empty = contents.flatMap((content, place) => (content.some(showsSomething) ? [] : [place + 1]));
  if (empty.length === 0) return listEqual(`${thing}s`, where, contents);
  return empty.map((place) => ({
    message: `${thing} ${place} ${where} is empty, expected a text or a picture; write it, or take the line out.`,
  }));
}

/** Things that read alike, or show the same. */
function listEqual(things: string, where: string, contents: readonly (readonly ElementContent[])[]): Fault[] {
  const first = new Map<string, number>();
  return contents.flatMap((content, place) => {
    const text = readText(content);
    // Pictures without words are told apart by what is drawn.
    const folded = foldText(text) === '' ? JSON.stringify(copyContent(content)) : foldText(text);
    const earlier = first.get(folded);
    if (earlier === undefined) {
      first.set(folded, place + 1);
      return [];
    }
    const shown = text.replace(/\s+/gu, ' ').trim();
    const message = `${things} ${earlier} and ${place + 1} ${where} are both ${describeFound(shown)}, expected different texts; change one or take it out.`;
    return [{ message, found: shown }];
  });
}
