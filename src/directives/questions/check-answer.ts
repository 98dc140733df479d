import type { ElementContent } from 'hast';
import { CHECK_WORDS } from '../../content/question-words.ts';
import { quote } from '../../content/wording.ts';
import { readText } from '../../quiz/fold-text.ts';
import type { WrittenSource } from '../../quiz/model.ts';
import type { ResolveContext } from '../definition.ts';
import { CALENDAR_CHECKS, type CalendarCheck } from './calendar-checks.ts';
import type { CalendarFact } from './calendar-fact.ts';
import type { ListFault } from './list-faults.ts';
import { type ReadCheck, readCheck } from './read-check.ts';
import { reportQuestion } from './report-question.ts';
import type { WrittenValue } from './written-value.ts';

/**
 * Holds the right answer of a question against what the calendar says in this week. An answer that contradicts it is
 * reported where the check is written, with both; so is a check that does not go with the question.
 */
export function checkAnswer(source: WrittenSource, written: WrittenValue, context: ResolveContext): void {
  const read = readCheck(written, context);
  const fault = read && findFault(source, read, context);
  if (fault === undefined) return;
  const { found, expected, advice = 'mend the answer, or ask about something else' } = fault;
  reportQuestion(context, written.place, `${found} beside ${written.called}`, expected, advice);
}

interface AnswerFault extends ListFault {
  readonly advice?: string;
}

function findFault(source: WrittenSource, read: ReadCheck, context: ResolveContext): AnswerFault | undefined {
  if (read.of === 'order' && source.kind === 'order') return read.check.findFault(source.items.map(readLine), context);
  if (read.of === 'match' && source.kind === 'match') {
    const pairs = source.pairs.map(({ left, right }) => ({ left: readLine(left), right: readLine(right) }));
    return read.check.findFault(pairs, context);
  }
  const isOne = source.kind === 'choice' || source.kind === 'short';
  if (!isOne || read.of !== 'answer') return describeUnfit(source.kind);
  const fact = tellFact(read, context);
  if (typeof fact === 'string') return describeAbsent(fact);
  return source.kind === 'choice' ? findOptionFault(source.options, fact) : findSpellingFault(source.answers, fact);
}

function tellFact(read: ReadCheck & { readonly of: 'answer' }, context: ResolveContext): CalendarFact | string {
  return 'record' in read ? read.check.tell(read.record, context) : read.check.tell(read.name, context);
}

type Options = (WrittenSource & { kind: 'choice' })['options'];

/** That no option is right at all is found with the other faults of the question. */
function findOptionFault(options: Options, fact: CalendarFact): AnswerFault | undefined {
  const stale = options.find(({ right, content }) => right && !fact.agrees(readLine(content)));
  if (stale !== undefined) {
    return { found: `the right option ${quote(readLine(stale.content))}`, expected: describeFact(fact) };
  }
  const other = options.find(({ right, content }) => !right && fact.agrees(readLine(content)));
  if (other === undefined) return undefined;
  const found = `the wrong option ${quote(readLine(other.content))}`;
  return { found, expected: `it among the right ones: ${describeFact(fact)}`, advice: 'change it, or take it out' };
}

function findSpellingFault([shown = '', ...accepted]: readonly string[], fact: CalendarFact): AnswerFault | undefined {
  if (!fact.agrees(shown)) return { found: `the answer ${quote(shown)}`, expected: describeFact(fact) };
  const stale = accepted.find((spelling) => fact.contradicts(spelling));
  if (stale === undefined) return undefined;
  return { found: `the accepted answer ${quote(stale)}`, expected: describeFact(fact), advice: 'take it out' };
}

function describeFact({ says, date }: CalendarFact): string {
  return `${quote(says)}, as the calendar says for \`${date}\``;
}

const FORM_WORDS = {
  choice: 'options',
  short: 'a short answer',
  order: 'things to put in order',
  match: 'pairs',
  open: 'an open answer',
  draw: 'a drawing',
} as const satisfies Readonly<Record<WrittenSource['kind'], string>>;

const COMPARED_AS: Readonly<Record<WrittenSource['kind'], CalendarCheck['of'] | undefined>> = {
  choice: 'answer',
  short: 'answer',
  order: 'order',
  match: 'match',
  open: undefined,
  draw: undefined,
};

function describeUnfit(kind: WrittenSource['kind']): AnswerFault {
  const fitting = CHECK_WORDS.filter((word) => CALENDAR_CHECKS[word].of === COMPARED_AS[kind]);
  const found = `a question with ${FORM_WORDS[kind]}`;
  if (fitting.length === 0)
    return { found, expected: 'no check, as nothing is there to compare', advice: 'take it out' };
  const expected = `one of the checks for it: ${fitting.map((word) => `\`${word}\``).join(', ')}`;
  return { found, expected, advice: 'use one of them, or take `check` out' };
}

function describeAbsent(found: string): AnswerFault {
  return { found, expected: 'a day or a night that has an answer', advice: 'name another, or take `check` out' };
}

/** The words of a tree on one line. */
function readLine(content: readonly ElementContent[]): string {
  return readText(content).replace(/\s+/gu, ' ').trim();
}
