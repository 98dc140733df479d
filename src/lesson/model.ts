import type { ElementContent } from 'hast';
import type { Almanac, NightRecord } from '../calendar/almanac-types.ts';
import type { CivilDate } from '../calendar/rules.ts';
import type { Labels } from '../content/labels.ts';
import type {
  Calendar,
  ContentPicture,
  ContentSound,
  GestureSet,
  LessonHead,
  School,
  WeekPlan,
} from '../content/types.ts';
import type { LessonStep } from '../directives/definition.ts';
import type { QuizSheet } from '../quiz/model.ts';
import type { Track } from '../rhythm/timeline-types.ts';

/** A picture that a lesson shows. */
export interface UsedPicture {
  /** Path from the week's folder, as the file is found. */
  readonly path: string;
  /** File name in the pack's `images` folder. */
  readonly name: string;
  /** Whether a learner's page shows it; others stay with the teacher. */
  readonly forLearners: boolean;
}

/** A page for learners made from a `:::handout`. Rendered in the learner's view: holds no teacher's text. */
export interface Handout {
  readonly title: string;
  /** File name in learners/, such as `3-wednesday-1-sky-slip.html`. */
  readonly page: string;
  readonly body: ElementContent[];
  /** Whether there is a run on the beat in it: its page then plays sound. */
  readonly hasRun: boolean;
}

/** What the pages of one reader show and play, beside the pictures of the week's own folder; nothing stands twice. */
export interface ReaderMedia {
  readonly tracks: readonly Track[];
  readonly sounds: readonly ContentSound[];
  readonly pictures: readonly ContentPicture[];
}

/** A lesson with every directive resolved. Trees are sanitised and trusted. */
export interface ResolvedLesson {
  /** The author's file, as messages show it. */
  readonly file: string;
  readonly head: LessonHead;
  /** Unique in the week: `wednesday`, or `wednesday-lesson-2` for a second lesson that day. Anchors and seeds go by it. */
  readonly slug: string;
  /** Unique in the week: `3-wednesday`, so that files sort by day. Its pages are named after it. */
  readonly stem: string;
  /** Which night the lesson's date is, and the night that class time still lies in. */
  readonly tonight: NightRecord;
  readonly atClassTime: NightRecord;
  readonly steps: readonly LessonStep[];
  /** The teacher's page. */
  readonly body: ElementContent[];
  /** Whether there is a run on the beat on the teacher's page: it then plays sound. */
  readonly hasRun: boolean;
  /** Whether anything in it, its handouts too, sends learners out to look at the sky. */
  readonly outdoors: boolean;
  readonly handouts: readonly Handout[];
  /** Dates whose night the handouts or the words of a quiz name. */
  readonly tells: readonly CivilDate[];
  readonly quizzes: readonly QuizSheet[];
  readonly pictures: readonly UsedPicture[];
}

/** All that a pack is made from. */
export interface ResolvedWeek {
  readonly plan: WeekPlan;
  readonly school: School;
  readonly calendar: Calendar;
  readonly gestures: GestureSet;
  readonly almanac: Almanac;
  readonly labels: Labels;
  /** In order of days; a day may have more than one. */
  readonly lessons: readonly ResolvedLesson[];
  readonly media: { readonly teacher: ReaderMedia; readonly learners: ReaderMedia };
}
