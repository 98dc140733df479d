import type { CalendarRules, CivilDate, Observation, Place } from '../calendar/rules.ts';
import type { Diagnostic } from './diagnostic.ts';
import type { ForgiveWord } from './question-words.ts';

/** A text file as read: `path` is what messages show, relative to where the author stands, with forward slashes. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
  /** What kept the file from being read as text; `text` is empty then, and nothing else is to be said of the file. */
  readonly fault?: Diagnostic;
}

/** A calendar file, checked. */
export interface Calendar extends CalendarRules {
  /** File name without its ending. */
  readonly id: string;
  readonly title: string;
  /** BCP 47 tag of the names. */
  readonly language: string;
  /** BCP 47 tag of what the names mean and of the note; absent: those are in the language of the school. */
  readonly explainedIn?: string;
  /** Whose knowledge this is. */
  readonly keeper: string;
  /** `school` keeps packs that carry it from being bundled. */
  readonly sharing: 'open' | 'school';
  /** Shown wherever the calendar is introduced, such as "made for demonstration". */
  readonly note?: string;
  /** With `{night}` and `{month}`. */
  readonly sentence: string;
  /** Spoken names, by the number of the night in the calendar's list. */
  readonly spokenNames: ReadonlyMap<number, Recording>;
}

/** A school term; dates are both included. */
export interface Term {
  readonly name: string;
  readonly from: string;
  readonly to: string;
}

/** A school file, checked. */
export interface School {
  readonly id: string;
  readonly name: string;
  /** BCP 47 tag of what the kit writes for this school; the calendar's language when the file does not say. */
  readonly language: string;
  readonly place: Place;
  /** Ids of a calendar and a gestures file. */
  readonly calendar: string;
  readonly gestures: string;
  /** Local time, `HH:MM`. */
  readonly classBegins: string;
  /** Local time, `HH:MM`, not before `classBegins`; 15:00 when the file does not say. */
  readonly classEnds: string;
  /** Local time, `HH:MM`, until which learners may be up to look at the sky; 20:30 when the file does not say. */
  readonly bedtime: string;
  readonly terms: readonly Term[];
  /** Names of quiz groups. */
  readonly groups: readonly string[];
  /** What was seen, and months as announced, when the file has them; they outrank those of the calendar. */
  readonly observations?: readonly Observation[];
  readonly announcedMonths?: readonly CivilDate[];
  /** True for the school that a command means when it names none. */
  readonly home: boolean;
  readonly note?: string;
}

export type HandShape = 'open' | 'fist' | 'curved' | 'pointing' | 'spread' | 'pinch';
export type HandPlace = 'above-head' | 'brow' | 'face' | 'chest' | 'waist' | 'side' | 'low';
export type Direction = 'up' | 'down' | 'in' | 'out' | 'front' | 'back';
export type Move = 'hold' | 'open' | 'close' | 'rise' | 'fall' | 'cross' | 'turn' | 'ripple';

/** What one hand does. */
export interface HandPose {
  readonly shape: HandShape;
  readonly at: HandPlace;
  readonly palm: Direction;
  readonly fingers: Direction;
}

/** What the hands do at one moment. `both` stands for the same pose, mirrored, in each hand; a hand left out rests. */
export interface Hands {
  readonly left?: HandPose;
  readonly right?: HandPose;
  readonly both?: HandPose;
}

/** A gesture: a pose in words, and how it moves. Without hands it has a picture. */
export interface Gesture extends Hands {
  /** The pose in which the move ends, when it is written out, a hand that stays included; absent, the move itself says it. */
  readonly then?: Hands;
  readonly move: Move;
  /** What to do, in plain words a child can follow. */
  readonly cue: string;
  /** The same, sitting down. */
  readonly seated: string;
  /** The author's own picture, which stands in for the drawing. */
  readonly picture?: ContentPicture;
}

/** A picture file of the content folder, read and checked. */
export interface ContentPicture {
  /** Path from the content folder's `images`. */
  readonly file: string;
  /** File name in the `images` folder of a pack; tells nothing of what the picture shows. */
  readonly packName: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly bytes: Uint8Array;
  /** Who made it, and on what terms it may be used. */
  readonly credit?: string;
}

/** A recording of a name or of a whole run: a file of the content folder, an address, or both. */
export interface Recording {
  readonly sound?: ContentSound;
  /** Where it can be heard; shown as words and as a code to scan. */
  readonly link?: string;
  /** Who is heard. */
  readonly credit: string;
  /** On what terms it may be used. */
  readonly permission: string;
}

/** A sound file of the content folder, read and checked. */
export interface ContentSound {
  /** Path from the content folder's `sounds`. */
  readonly file: string;
  /** File name in the `sound` folder of a pack; tells nothing of what is said. */
  readonly packName: string;
  readonly mediaType: string;
  readonly bytes: Uint8Array;
}

/** A recording of a run, with its own beat. */
export interface RunRecording extends Recording {
  /** Beats a minute that it keeps. */
  readonly tempoBeatsPerMinute: number;
  /** Seconds from its beginning to the first beat of the run. */
  readonly firstBeatSeconds: number;
}

/** A gestures file, checked. */
export interface GestureSet {
  readonly id: string;
  readonly title: string;
  readonly note?: string;
  readonly gestures: Readonly<Record<string, Gesture>>;
  /** Recordings of runs, by the names that a lesson calls them by. */
  readonly recordings: Readonly<Record<string, RunRecording>>;
}

/** A handwritten question kept for use in any week. */
export type BankQuestion = {
  readonly ask: string;
  readonly marks?: number;
  /** For the teacher, shown in the key. */
  readonly working?: string;
  readonly hint?: string;
  /** What its right answer is compared with in the week that uses it, such as `night-on wednesday`. */
  readonly check?: string;
} & BankForm;

/** How a question of a questions file is answered. */
export type BankForm =
  | { readonly kind: 'choice' /** One or more are right. */; readonly options: readonly BankOption[] }
  | {
      readonly kind: 'short';
      /** Accepted spellings; the first is shown in the key. */
      readonly answers: readonly string[];
      readonly forgive?: ForgiveWord;
    }
  | { readonly kind: 'order' /** In the right order. */; readonly order: readonly string[] }
  | { readonly kind: 'match'; readonly headings: BankPair; readonly pairs: readonly BankPair[] }
  | {
      readonly kind: 'open';
      /** From the most marks to the fewest. */
      readonly rubric: readonly { readonly marks: number; readonly words: string }[];
      readonly lines?: number;
    }
  | { readonly kind: 'draw' /** A day of the week, or the name of a night. */; readonly draw: string };

export interface BankOption {
  readonly text: string;
  readonly right: boolean;
  /** Of a wrong one: what it means to choose it; key only. */
  readonly means?: string;
}

export interface BankPair {
  readonly left: string;
  readonly right: string;
}

/** A questions file, checked. */
export interface QuestionBank {
  readonly id: string;
  readonly title: string;
  readonly language: string;
  readonly questions: Readonly<Record<string, BankQuestion>>;
}

/** A week.yaml file, checked. */
export interface WeekPlan {
  /** Name of the week's folder. */
  readonly id: string;
  readonly title: string;
  /** The Monday it begins on; worked out from the school's terms when the file gives `term` and `week`. */
  readonly begins: string;
  /** The days taught, in order. */
  readonly days: readonly WeekDay[];
  /** Id of a school. */
  readonly school: string;
  /** Whom it is for, such as "Years 3-4". */
  readonly for: string;
  /** Short notes for a relief teacher: who, where, what if something fails. */
  readonly reliefNotes: readonly ReliefNote[];
}

/** What may fail. The kit has words of its own for each where the author has none. */
export type ReliefCase = 'no-sound' | 'no-projector' | 'no-copies' | 'rain';

/** A note for a relief teacher, in the author's words. */
export interface ReliefNote {
  readonly text: string;
  /** When it counts; absent: all week. */
  readonly when?: ReliefCase;
}

export type WeekDay = 'monday' | 'tuesday' | 'wednesday' | 'thursday' | 'friday' | 'saturday' | 'sunday';

/** A lesson's front matter, checked. */
export interface LessonHead {
  readonly title: string;
  readonly day: WeekDay;
  readonly minutes: number;
  readonly intentions: readonly string[];
  readonly success: readonly string[];
  readonly materials: readonly string[];
  /** Local time `HH:MM` at which the lesson begins, when it is not the school's `class-begins`. */
  readonly begins?: string;
}
