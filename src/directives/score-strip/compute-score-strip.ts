import type { Almanac, MoonView, NightRecord } from '../../calendar/almanac-types.ts';
import { groupNights } from '../../calendar/group-nights.ts';
import type { CivilDate } from '../../calendar/rules.ts';
import type { GestureSet } from '../../content/types.ts';
import type { FigureView } from '../../drawing/figure/figure.ts';
import type { ScoreSign } from '../../drawing/score-sign.ts';
import { type SharedFigure, shareFigure } from '../gestures/shared-figures.ts';

/** A month, or part of it, as a score within a lesson. */
export interface ScoreStrip {
  readonly groups: readonly StripGroup[];
  readonly view: FigureView;
  /** Id of the path of the lunar seas, unique on a page. */
  readonly seasId: string;
}

/** Nights of a group; not all of them where only some were asked for. */
export interface StripGroup {
  readonly name: string;
  readonly nights: readonly StripNight[];
}

/** A night of the score. */
export interface StripNight {
  readonly name: string;
  readonly sign: ScoreSign & { readonly moon: MoonView };
  /** Absent where the calendar gives the night no gesture. */
  readonly figure?: SharedFigure;
  /** Absent for learners, who may be asked for it. */
  readonly when?: { readonly date: CivilDate; readonly nightOfMonth: number; readonly isTonight: boolean };
}

/** What is asked for. */
export interface StripOrder {
  /** The date whose night is tonight. */
  readonly date: CivilDate;
  readonly view: FigureView;
  /** 1-based among the scores of the lesson. */
  readonly number: number;
}

/** Puts nights into their groups, each with its beat in the whole group of its month. @param records In order of dates. */
export function computeScoreStrip(
  records: readonly NightRecord[],
  { date, view, number }: StripOrder,
  { almanac, gestures }: { readonly almanac: Almanac; readonly gestures: GestureSet },
): ScoreStrip {
  const beats = countBeats(records, almanac);
  const describe = (record: NightRecord): StripNight => {
    const { gesture: key, name } = record.night;
    const { count, of } = beats.get(record.date) ?? { count: 1, of: 1 };
    const gesture = key === undefined ? undefined : gestures.gestures[key];
    return {
      name,
      sign: { moon: almanac.moonHighest(record), count, strong: count === 1, last: count === of },
      ...(key === undefined || gesture === undefined ? {} : { figure: shareFigure(key, gesture, view, gestures) }),
      when: { date: record.date, nightOfMonth: record.nightOfMonth, isTonight: record.date === date },
    };
  };
  return {
    groups: groupNights(records).map((group) => ({ name: group.name, nights: group.nights.map(describe) })),
    view,
    seasId: `score-${number}-seas`,
  };
}

/** The same score with nothing in it that tells which night a date has. */
export function withoutDates(strip: ScoreStrip): ScoreStrip {
  const forget = ({ when: _when, ...night }: StripNight): StripNight => night;
  return { ...strip, groups: strip.groups.map((group) => ({ ...group, nights: group.nights.map(forget) })) };
}

/** Place of each night within its group, and how many that has in its month. */
function countBeats(records: readonly NightRecord[], almanac: Almanac) {
  const months = new Map(records.map((record) => [record.month.firstDate, record.date]));
  const groups = [...months.values()].flatMap((date) => groupNights(almanac.nightsOfMonth(date)));
  return new Map(
    groups.flatMap(({ nights }) => nights.map(({ date }, index) => [date, { count: index + 1, of: nights.length }])),
  );
}
