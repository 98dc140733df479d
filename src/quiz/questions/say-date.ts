import type { NightRecord } from '../../calendar/almanac-types.ts';
import type { CivilDate } from '../../calendar/rules.ts';
import type { QuizFacts } from '../model.ts';

/** A date in words; its year is said where it is not the year of the lesson. */
export function sayDate({ labels, today }: QuizFacts, date: CivilDate): string {
  return labels.date(date, date.slice(0, 4) === today.slice(0, 4) ? 'day' : 'long');
}

const FROM_LABELS = { sunset: 'quiz-date-from-sunset', sunrise: 'quiz-date-from-sunrise' } as const;

/** The date of a night in words, with when it begins: a civil date touches two nights, unless they begin at midnight. */
export function sayNightDate(facts: QuizFacts, { date, beginsWith }: NightRecord): string {
  const said = sayDate(facts, date);
  return beginsWith === 'midnight' ? said : facts.labels.text(FROM_LABELS[beginsWith], { date: said });
}
