import type { CrescentReport, MonthEnding, NightExplanation } from '../calendar/explanation.ts';
import type { CivilDate, CrescentVisibility, MonthOpening, Observation } from '../calendar/rules.ts';
import type { Labels } from '../content/labels.ts';
import type { Sentence, Voice } from './voice.ts';

/** Decimals of Yallop's q: his limits are given to three. */
const Q_DECIMALS = 3;

/** The rule by which months of a calendar begin, in a sentence or two. */
export function sayMonthRule({ at, offset }: MonthOpening, labels: Labels): string {
  const rule = labels.text(`month-begins-${at}`);
  if (offset === 0) return rule;
  return `${rule} ${labels.count(offset > 0 ? 'nights-later' : 'nights-earlier', Math.abs(offset))}`;
}

/** From the phase, or the crescent, to the month's first night, what was seen or announced instead, and what ends it. */
export function sayMonthBeginning(explanation: NightExplanation, voice: Voice): Sentence[] {
  const { month } = explanation;
  return [
    [sayMonthRule(month.opening, voice.labels)],
    sayOpeningPhase(explanation, voice),
    ...month.crescents.map((crescent) => sayCrescent(crescent, month.visibility ?? 'B', voice)),
    ...sayFirstNight(explanation, voice),
    ...sayEnding(explanation, voice),
  ];
}

function sayOpeningPhase({ month }: NightExplanation, voice: Voice): Sentence {
  const { openingPhase, openingDate, openingBoundaryMs, openingMarginMinutes } = month;
  const side = openingPhase.atMs < openingBoundaryMs ? 'before' : 'after';
  return voice.say(`explain-opening-${side}`, {
    phase: voice.labels.phase(openingPhase.name),
    instant: voice.instant(openingPhase.atMs),
    date: voice.date(openingDate),
    margin: voice.duration(openingMarginMinutes),
    boundary: voice.clock(openingBoundaryMs, openingDate),
  });
}

function sayCrescent(crescent: CrescentReport, wanted: CrescentVisibility, voice: Voice): Sentence {
  const { date } = crescent;
  if (crescent.untested !== null) return voice.say(`explain-crescent-${crescent.untested}`, { date: voice.date(date) });
  return voice.say(crescent.seen ? 'explain-crescent-seen' : 'explain-crescent-unseen', {
    date: voice.date(date),
    class: crescent.class,
    q: voice.labels.number(crescent.q, Q_DECIMALS),
    time: voice.clock(crescent.bestMs, date),
    wanted,
  });
}

function sayFirstNight({ month }: NightExplanation, voice: Voice): Sentence[] {
  const { basis, firstDate, computedFirstDate } = month;
  const values = { month: { name: month.name }, date: voice.date(firstDate) };
  const first = voice.say('explain-first-night', values);
  if (basis.kind === 'rule') return [first];
  return [sayRecord(basis, voice), sayRuleAlone(firstDate, computedFirstDate, voice), first];
}

function sayEnding({ month: { ending, length } }: NightExplanation, voice: Voice): Sentence[] {
  if (ending === null) return [];
  const lengths = { length: String(length), foreseen: String(ending.foreseenLength) };
  return [sayRecord(ending.basis, voice), voice.say('explain-ending', lengths)];
}

function sayRecord(basis: MonthEnding['basis'], voice: Voice): Sentence {
  return basis.kind === 'observation'
    ? sayObservation(basis.observation, voice)
    : voice.say('explain-announced', { date: voice.date(basis.date) });
}

function sayRuleAlone(firstDate: CivilDate, computedFirstDate: CivilDate | null, voice: Voice): Sentence {
  if (computedFirstDate === null) return voice.say('explain-rule-silent', {});
  if (computedFirstDate === firstDate) return voice.say('explain-rule-agrees', {});
  return voice.say('explain-rule-moved', { date: voice.date(computedFirstDate) });
}

/** What was seen, when, and by whom. */
export function sayObservation({ night, date, by, place }: Observation, voice: Voice): Sentence {
  const seen = { night: { name: night }, date: voice.date(date) };
  const who = [by, place].filter((part) => part !== undefined).join('; ');
  return who === '' ? voice.say('explain-observed', seen) : voice.say('explain-observed-by', { ...seen, by: who });
}
