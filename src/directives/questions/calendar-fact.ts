import type { CivilDate } from '../../calendar/rules.ts';
import { foldText } from '../../quiz/fold-text.ts';

/** What the calendar says where a question asks, and how an answer is held against it. */
export interface CalendarFact {
  /** As an author would write it. */
  readonly says: string;
  /** The date it says it of. */
  readonly date: CivilDate;
  /** Whether a text says the same. */
  agrees(text: string): boolean;
  /** Whether a text says something else of the same kind, such as the name of another night. */
  contradicts(text: string): boolean;
}

/** A name. Capitals, encoding and white space make no difference. @param names All names of the kind. */
export function makeNameFact(date: CivilDate, says: string, names: readonly string[]): CalendarFact {
  const right = foldText(says);
  const known = new Set(names.map(foldText));
  return {
    says,
    date,
    agrees: (text) => foldText(text) === right,
    contradicts: (text) => foldText(text) !== right && known.has(foldText(text)),
  };
}

/** A number, written in figures, alone or among words, as in "3 nights". */
export function makeNumberFact(date: CivilDate, says: number): CalendarFact {
  return {
    says: String(says),
    date,
    agrees: (text) => readOnlyNumber(text) === says,
    contradicts: (text) => ![says, undefined].includes(readOnlyNumber(text)),
  };
}

function readOnlyNumber(text: string): number | undefined {
  const [number, second] = text.match(/\d+/gu) ?? [];
  return number === undefined || second !== undefined ? undefined : Number(number);
}
