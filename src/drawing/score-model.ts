import type { Gesture } from '../content/types.ts';
import type { FigureView } from './figure/figure.ts';
import type { MoonFace } from './moon.ts';

/** Words, or a name of the calendar, which is tagged with its language. */
export type ScoreText = string | { readonly name: string };

/** One night of the month as the score shows it. */
export interface ScoreNight {
  readonly name: string;
  /** 1-based; stands before the date, so that the month can be counted along. */
  readonly nightOfMonth: number;
  /** Short, such as "29 Jul". */
  readonly date: string;
  /** The Moon as it stands when highest that night. */
  readonly moon: MoonFace;
  /** True for the first night of a group: the strong beat. */
  readonly strong: boolean;
  /** Absent for a night without one: there is a rest in its place. */
  readonly gesture?: Gesture;
  /** True for a night of the week that is taught. */
  readonly inWeek: boolean;
}

/** The nights of a group, in order. */
interface ScoreGroup {
  readonly name: string;
  readonly nights: readonly ScoreNight[];
}

/** One sheet of the score: the same month, its figures seen from one side. */
export interface ScoreSheet {
  readonly view: FigureView;
  /** Says from which side, in plain words: one line. */
  readonly caption: string;
  /** What a screen reader says for the whole picture; the page gives the same nights as a list. */
  readonly pictureTitle: string;
}

/** All that stands on the score. Every word is handed in. */
export interface ScoreContent {
  /** The month's name. */
  readonly title: string;
  /** Calendar, dates, school: one line. */
  readonly subtitle: readonly ScoreText[];
  readonly footer: readonly ScoreText[];
  readonly legend: { readonly strong: string; readonly beat: string };
  readonly groups: readonly ScoreGroup[];
  readonly sheets: readonly ScoreSheet[];
  /** BCP 47 tag of the calendar's names. */
  readonly namesLanguage: string;
  /** Stands at the bracket round the week. */
  readonly weekLabel: string;
  /** Begins the ids in the pictures; different for each score on a page. */
  readonly idPrefix: string;
}
