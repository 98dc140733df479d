import type { ElementContent } from 'hast';
import type { Report } from '../content/diagnostic.ts';
import { describeFound } from '../content/wording.ts';
import { foldText, readText } from './fold-text.ts';
import type { QuestionSource } from './model.ts';

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
  const faults: Fault[] = [];
  if (!source.prompt.some(showsSomething)) {
    faults.push({ message: 'This question has no text, expected what is asked; write it before the answers.' });
  }
  if (source.kind === 'choice') return [...faults, ...listOptionFaults(source.options)];
  if (foldText(source.answers[0] ?? '') === '') {
    faults.push({
      message:
        'This question has no answer, expected one for the key; write one (in square brackets, or under `answers` in a questions file).',
    });
  }
  return faults;
}

/** A picture without a text alternative can still be a question. */
function showsSomething(node: ElementContent): boolean {
  return node.type === 'element' || (node.type === 'text' && node.value.trim() !== '');
}

function listOptionFaults(options: (QuestionSource & { kind: 'choice' })['options']): Fault[] {
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
  return [...faults, ...listEqualOptions(options.map((option) => readText(option.content)))];
}

function listEqualOptions(texts: readonly string[]): Fault[] {
  const first = new Map<string, number>();
  return texts.flatMap((text, place) => {
    const earlier = first.get(foldText(text));
    if (earlier === undefined) {
      first.set(foldText(text), place + 1);
      return [];
    }
    const shown = text.replace(/\s+/gu, ' ').trim();
    const message = `Options ${earlier} and ${place + 1} of this choice are both ${describeFound(shown)}, expected different texts; change one or take it out.`;
    return [{ message, found: shown }];
  });
}
