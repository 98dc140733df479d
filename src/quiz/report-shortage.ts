import type { Report } from '../content/diagnostic.ts';
import { listAskable } from './list-askable.ts';
import type { ComputedSource, QuizFacts } from './model.ts';

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

function adviseForNight(night: number, source: ComputedSource, { almanac, ...facts }: QuizFacts): string {
  const { from, to } = source.within ?? facts;
  const comes = Array.from(almanac.nights(from, to)).some((record) => record.night.number === night);
  if (comes) return 'this `ask` cannot be answered for that night, so give another one or leave `night` out';
  return 'that night does not come on these dates, so give another one or more time, as in `within=month`';
}

function countAskable(source: ComputedSource, facts: QuizFacts): number {
  return listAskable([source], facts).get(source)?.length ?? 0;
}

function sayUsedUp(source: ComputedSource, before: number, available: number, facts: QuizFacts): string {
  return `This quiz has \`ask=${source.ask}\` \`${before + 1}\` times up to here and \`${available}\` different questions for it ${describeDates(source, facts)}, expected one each time; take it out or use another \`ask\`.`;
}

/** Fewer different questions than groups. */
export function reportTooFew(
  source: ComputedSource,
  available: number,
  groups: number,
  facts: QuizFacts,
  report: Report,
): void {
  report({
    rule: 'quiz-question',
    severity: 'warning',
    place: source.place,
    message: `${describeAsked(source, facts)} has \`${available}\` different questions ${describeDates(source, facts)}, expected \`${groups}\`, one a group; some groups get the same, so seat them apart, ask for fewer groups or use another \`ask\`.`,
    found: String(available),
    expected: String(groups),
  });
}
