import type { RunNight } from '../calendar/almanac-types.ts';
import type { NamedMonth } from '../calendar/rules.ts';
import { type NightSelectionFault, type SelectionMoment, selectNights, tidyName } from './select-nights.ts';
import type { RunGroup, RunItem } from './timeline-types.ts';

/** The names that a run is chosen from. */
export interface RunCalendar {
  /** All named nights, in order. */
  readonly run: readonly RunNight[];
  /** The calendar's list of months, in order. A thirteenth month that stands apart from the list is in no run. */
  readonly months: readonly NamedMonth[];
  /** What the months are called as a group, such as "Months". */
  readonly monthsName: string;
}

/** What a selection stands for, in the order in which it is beaten, or what is wrong with it. */
export type RunSelection =
  | {
      readonly kind:
        | 'all'
        | 'up-to-tonight'
        | 'this-week'
        | 'group'
        | 'night'
        | 'range'
        | 'months'
        | 'months-then-nights';
      readonly groups: readonly RunGroup[];
      /** True when the nights run past the end of the list and go on from its beginning. */
      readonly wraps: boolean;
      /** True when the run is done to say tonight's sentence after it. */
      readonly endsTonight: boolean;
    }
  | NightSelectionFault;

/**
 * Reads which nights and months a run is of: what `selectNights` reads, and besides `months`, the calendar's months as
 * one group, and `months-then-nights`, that group and then every night. These words come before names that are spelt
 * the same.
 *
 * Nights are chosen from the calendar's list, so that flexible nights are there even where this month leaves them out;
 * `this-week` alone goes by the nights that there are, with a name left out or said twice. Neighbours of one group make
 * a group of the run; a run that wraps around may come to a group twice.
 * @throws RangeError when `moment` holds a number that is not in the list
 */
export function selectRun(calendar: RunCalendar, written: string, moment: SelectionMoment): RunSelection {
  const text = tidyName(written);
  const endsTonight = moment.tonight !== undefined;
  if (text === 'months') return { kind: text, groups: gatherMonths(calendar), wraps: false, endsTonight: false };
  if (text === 'months-then-nights') {
    const groups = [...gatherMonths(calendar), ...gatherNights(calendar.run, calendar.run)];
    return { kind: text, groups, wraps: false, endsTonight };
  }
  const selection = selectNights(calendar.run, written, moment);
  if (!('nights' in selection)) return hintAtMonths(selection, text, calendar.months);
  const { kind, nights, wraps } = selection;
  return {
    kind,
    groups: gatherNights(nights, calendar.run),
    wraps,
    endsTonight: endsTonight && kind === 'up-to-tonight',
  };
}

function gatherMonths({ months, monthsName }: RunCalendar): RunGroup[] {
  if (months.length === 0) return [];
  const items = months.map(({ name }, index) => ({ kind: 'month', name, number: index + 1 }) as const);
  return [{ kind: 'months', name: monthsName, items, wholeLength: items.length, firstInGroup: 1 }];
}

function gatherNights(nights: readonly RunNight[], run: readonly RunNight[]): RunGroup[] {
  const groups: (RunGroup & { readonly items: RunItem[] })[] = [];
  nights.forEach((night, index) => {
    const before = nights[index - 1];
    const open = groups.at(-1);
    // A name said twice in a row stays in its group; one that is further back begins the group anew.
    const goesOn = before?.groupNumber === night.groupNumber && before.number <= night.number;
    if (goesOn && open !== undefined) open.items.push(toItem(night));
    else {
      const wholeLength = run.filter(({ groupNumber }) => groupNumber === night.groupNumber).length;
      const [name, firstInGroup] = [night.group, night.numberInGroup];
      groups.push({ kind: 'nights', name, items: [toItem(night)], wholeLength, firstInGroup });
    }
  });
  return groups;
}

function toItem({ name, number, gesture }: RunNight): RunItem {
  return { kind: 'night', name, number, ...(gesture === undefined ? {} : { gesture }) };
}

/** The name of a single month is no selection: what there is, is all of them. */
function hintAtMonths(fault: NightSelectionFault, text: string, months: readonly NamedMonth[]): NightSelectionFault {
  if (fault.kind !== 'unknown-name' || fault.name !== text) return fault;
  return months.some(({ name }) => tidyName(name) === text) ? { ...fault, hint: 'months' } : fault;
}
