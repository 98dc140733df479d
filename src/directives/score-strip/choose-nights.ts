import type { NightRecord } from '../../calendar/almanac-types.ts';
import type { CivilDate } from '../../calendar/rules.ts';
import { selectNights } from '../../rhythm/select-nights.ts';
import type { ResolveContext, WrittenDirective } from '../definition.ts';
import { reportNights } from '../report-nights.ts';

/** What the `nights` of a score knows beside names. */
export const NIGHT_WORDS = ['all', 'up-to-tonight', 'this-week'];

/** Nights of a score, and the dates whose night one can tell from the choice. */
export interface ChosenNights {
  /** In the order of their dates; never empty. */
  readonly records: readonly NightRecord[];
  readonly tells: readonly CivilDate[];
}

/**
 * Finds the nights of a date's month that a `nights` attribute asks for; `this-week` alone may go beyond the month.
 * What is wrong with it is reported, and nothing comes back.
 */
export function chooseNights(
  written: WrittenDirective,
  nights: string,
  date: CivilDate,
  context: ResolveContext,
): ChosenNights | undefined {
  const { almanac } = context;
  const week = [...context.dates.values()];
  const tonight = almanac.nightOn(date);
  const selection = selectNights(almanac.run, nights, {
    tonight: tonight.night.number,
    week: week.map((day) => almanac.nightOn(day).night.number),
  });
  if (!('nights' in selection)) {
    reportNights(written, nights, selection, NIGHT_WORDS, context);
    return undefined;
  }
  const month = almanac.nightsOfMonth(date);
  switch (selection.kind) {
    case 'this-week':
      return { records: week.map((day) => almanac.nightOn(day)), tells: week };
    case 'up-to-tonight':
      return { records: month.filter(({ nightOfMonth }) => nightOfMonth <= tonight.nightOfMonth), tells: [date] };
    default: {
      const numbers = new Set(selection.nights.map(({ number }) => number));
      const records = month.filter(({ night }) => numbers.has(night.number));
      if (records.length > 0) return { records, tells: [] };
      reportAbsent(written, nights, tonight, context);
      return undefined;
    }
  }
}

/** Flexible nights are not in every month. */
function reportAbsent(
  written: WrittenDirective,
  nights: string,
  { month }: NightRecord,
  { report }: ResolveContext,
): void {
  const expected = `nights that \`${month.name}\` has this time`;
  report({
    rule: 'attribute-value',
    severity: 'error',
    place: written.attributePlace('nights'),
    message: `\`${nights}\` does not come in \`${month.name}\`, which has ${month.length} nights this time; expected ${expected}; choose others`,
    found: nights,
    expected,
  });
}
