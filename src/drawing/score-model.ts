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
  readonly view: MoonFace;
  /** True for the first night of a group: the strong beat. */
  readonly strong: boolean;
  /** What to do, in few words; more than 64 letters are not shown, and none are when they would make the month small. */
  readonly cue?: string;
  /** True for a night of the week that is taught. */
  readonly inWeek: boolean;
  /** A word such as "tonight": frames the night and stands on the frame. */
  readonly mark?: string;
}

/** The nights of a group, in order. */
interface ScoreGroup {
  readonly name: string;
  readonly nights: readonly ScoreNight[];
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
  /** BCP 47 tag of the calendar's names. */
  readonly namesLanguage: string;
  /** Stands at the bracket round the week, with its dates. */
  readonly weekLabel: string;
  /** What a screen reader says for the whole picture; the page gives the same nights as a list. */
  readonly pictureTitle: string;
  /** Begins the ids in the picture; different for each score on a page. `score` when absent. */
  readonly idPrefix?: string;
}
