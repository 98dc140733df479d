import type { CivilDate } from '../calendar/rules.ts';
import { addDays, clampDate } from '../content/civil-date.ts';
import type { Report } from '../content/diagnostic.ts';
import { listAskable } from './list-askable.ts';
import type { ComputedSource, QuizFacts } from './model.ts';
import { listKnownNights } from './questions/neighbours.ts';
import type { Level } from './questions/question-instance.ts';

/** The dates a question asks about, for a message. */
export function describeDates({ within }: ComputedSource, facts: QuizFacts): string {
  const { from, to } = within ?? facts;
  return `from \`${from}\` to \`${to}\``;
}

/** The question as its author wrote it, as far as it narrows what is asked. */
function describeAsked({ ask, level, night, on }: ComputedSource, { almanac }: QuizFacts): string {
  const name = night === undefined ? undefined : almanac.run[night - 1]?.name;
  const parts = [
    `ask=${ask}`,
    ...(level === undefined ? [] : [`level=${level}`]),
    ...(name === undefined ? [] : [`night="${name}"`]),
    ...(on === undefined ? [] : [`on ${on}`]),
  ];
  return `\`${parts.join(' ')}\``;
}

/** Nothing can be asked but what the learners have on paper. */
export function reportTold(source: ComputedSource, dates: string, report: Report): void {
  report({
    rule: 'quiz-question',
    severity: 'warning',
    place: source.place,
    message: `\`ask=${source.ask}\` finds too little to ask ${dates} but nights that a handout or another question names, expected questions whose answers the learners do not have on paper; take nights out of the handouts or use another \`ask\`.`,
  });
}

/**
 * A question that no paper can have.
 * @param before How many questions of its kind the papers have already.
 * @param available How many different ones there are for it.
 */
export function reportNothing(
  source: ComputedSource,
  before: number,
  available: number,
  facts: QuizFacts,
  report: Report,
): void {
  const message = available === 0 ? sayNothing(source, facts) : sayUsedUp(source, before, available, facts);
  const expected = available === 0 ? '1' : String(before + 1);
  report({
    rule: 'quiz-question',
    severity: 'error',
    place: source.place,
    message,
    found: String(available),
    expected,
  });
}

function sayNothing(source: ComputedSource, facts: QuizFacts): string {
  const asked = describeAsked(source, facts);
  return `${asked} finds nothing to ask ${describeDates(source, facts)}, expected at least one question; ${adviseFor(source, facts)}.`;
}

/** What helps depends on which part of the question leaves nothing. */
function adviseFor(source: ComputedSource, facts: QuizFacts): string {
  const { level: _level, ...anyLevel } = source;
  const { night, on: _on, ...anywhere } = anyLevel;
  if (source.level !== undefined && countAskable(anyLevel, facts) > 0) return 'leave `level` out or give another one';
  if (night !== undefined && countAskable(anywhere, facts) > 0) return adviseForNight(night, source, facts);
  if (source.on !== undefined && countAskable(anywhere, facts) > 0) return 'give another day or leave `on` out';
  return 'use another `ask` or write the question by hand';
}

/** How far to look for the next time a night comes: over two months, whose other names may be left out. */
const DAYS_TO_LOOK = 92;

function adviseForNight(night: number, source: ComputedSource, { almanac, today, ...facts }: QuizFacts): string {
  const { from, to } = source.within ?? facts;
  const find = (first: CivilDate, last: CivilDate) =>
    listKnownNights(almanac, first, last).find((record) => record.night.number === night)?.date;
  if (find(from, to) !== undefined) {
    return 'this `ask` cannot be answered for that night on these dates, so give another night or leave `night` out';
  }
  const month = almanac.nightsOfMonth(today);
  const name = `\`${month[0]?.month.name}\``;
  const inMonth = month.find((record) => record.night.number === night)?.date;
  if (inMonth !== undefined) return `${name} has that night on \`${inMonth}\`, so give another one or \`within=month\``;
  const next = find(today, clampDate(addDays(today, DAYS_TO_LOOK)));
  const comes = next === undefined ? '' : ` and it next comes on \`${next}\``;
  return `${name} leaves that night out${comes}, so give another one or more time, as in \`within=year\``;
}

function countAskable(source: ComputedSource, facts: QuizFacts): number {
  return listAskable([source], facts).get(source)?.length ?? 0;
}

function sayUsedUp(source: ComputedSource, before: number, available: number, facts: QuizFacts): string {
  return `This quiz has \`ask=${source.ask}\` \`${before + 1}\` times up to here and \`${available}\` different questions for it ${describeDates(source, facts)}, expected one each time; take it out or use another \`ask\`.`;
}

/** How many different questions there are, and for how many groups. */
interface Shortage {
  readonly available: number;
  readonly groups: number;
}

/** Fewer different questions than groups. */
export function reportTooFew(source: ComputedSource, shortage: Shortage, facts: QuizFacts, report: Report): void {
  const help = `seat them apart, ask for fewer groups, ${adviseForMore(source)} or use another \`ask\``;
  const words = ['different questions', `some groups get the same, so ${help}`] as const;
  reportShortage(source, shortage, words, facts, report);
}

/**
 * Enough different questions, but of several levels.
 * @param levels Those that were dealt, from the easiest on.
 * @param shortage How many different ones of one level there are at most.
 */
export function reportMixed(
  source: ComputedSource,
  levels: readonly Level[],
  shortage: Shortage,
  facts: QuizFacts,
  report: Report,
): void {
  const help = `${adviseForMore(source)}, or give \`level\` and let some groups have the same`;
  const consequence = `groups get levels \`${levels[0]}\` to \`${levels.at(-1)}\`, so ${help}`;
  reportShortage(source, shortage, ['different questions of one level', consequence], facts, report);
}

function adviseForMore({ within }: ComputedSource): string {
  return within === undefined ? 'give it more time (`within=month`)' : 'give it more time';
}

function reportShortage(
  source: ComputedSource,
  { available, groups }: Shortage,
  [things, advice]: readonly [things: string, advice: string],
  facts: QuizFacts,
  report: Report,
): void {
  report({
    rule: 'quiz-question',
    severity: 'warning',
    place: source.place,
    message: `${describeAsked(source, facts)} has \`${available}\` ${things} ${describeDates(source, facts)}, expected \`${groups}\`, one a group; ${advice}.`,
    found: String(available),
    expected: String(groups),
  });
}
