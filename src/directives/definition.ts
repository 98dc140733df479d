import type { ElementContent } from 'hast';
import type { RootContent } from 'mdast';
import type { Almanac } from '../calendar/almanac-types.ts';
import type { CivilDate } from '../calendar/rules.ts';
import type { Diagnostic, SourcePlace } from '../content/diagnostic.ts';
import type { Labels } from '../content/labels.ts';
import type {
  Calendar,
  ContentPicture,
  ContentSound,
  GestureSet,
  LessonHead,
  QuestionBank,
  School,
  WeekDay,
} from '../content/types.ts';
import type { QuizSheet } from '../quiz/model.ts';
import type { Timeline, TrackCut } from '../rhythm/timeline-types.ts';
import type { SharedFigure } from './gestures/shared-figures.ts';

/**
 * The three written forms: `:name{…}` in a line, `::name{…}` on a line of its own,
 * `:::name` … `:::` around other text.
 */
export type DirectiveForm = 'text' | 'leaf' | 'container';

/** What one attribute of a directive may hold. Read by the one checker and by the authors' reference. */
export type AttributeSchema = {
  /** One line for the authors' reference. */
  readonly about: string;
  readonly required?: boolean;
} & (
  | { readonly type: 'text' }
  /** A whole number, `min` and `max` included. */
  | { readonly type: 'integer'; readonly min: number; readonly max: number }
  | { readonly type: 'choice'; readonly values: readonly string[] }
  /** A day of the week that is taught in this week. */
  | { readonly type: 'day' }
  /** The name of a night of the calendar. */
  | { readonly type: 'night' }
);

/** The values of one directive's attributes after the check; an attribute the author left out is absent. */
export type AttributeValues<Schemas extends Readonly<Record<string, AttributeSchema>>> = {
  readonly [Name in keyof Schemas]?: Schemas[Name] extends { type: 'integer' }
    ? number
    : Schemas[Name] extends { type: 'day' }
      ? WeekDay
      : string;
};

/** A directive as written, after parsing and before resolving. */
export interface WrittenDirective {
  readonly name: string;
  readonly form: DirectiveForm;
  /** Plain text of the label in square brackets; empty when there is none. */
  readonly label: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly place: SourcePlace;
  /** The text between the fences of a container; empty for the other forms. */
  readonly children: readonly RootContent[];
  /** 1-based count among the directives of this name in the lesson. */
  readonly number: number;
  /** Sum of the `minutes` of the directives of this name before it in the lesson. */
  readonly minutesBefore: number;
  /** Place of an attribute's name and value, for messages. */
  attributePlace(name: string): SourcePlace;
}

/** What a directive may look at while it is resolved. Read only. */
export interface ResolveContext {
  readonly almanac: Almanac;
  readonly calendar: Calendar;
  readonly school: School;
  readonly gestures: GestureSet;
  /** Question banks by id. */
  readonly banks: ReadonlyMap<string, QuestionBank>;
  readonly labels: Labels;
  /** Id of the week, part of the default seed of a quiz. */
  readonly weekId: string;
  /** Civil date of each taught day of the week. */
  readonly dates: ReadonlyMap<WeekDay, CivilDate>;
  readonly lesson: {
    readonly head: LessonHead;
    readonly date: CivilDate;
    readonly file: string;
    /** Unique in the week; anchors and seeds go by it. */
    readonly slug: string;
    /** Unique in the week; the lesson's pages are named after it, as in `3-wednesday.html`. */
    readonly stem: string;
  };
  /** Dates whose night learners have on paper, from this lesson or an earlier one of the week. Complete for a group quiz only. */
  readonly toldDates: ReadonlySet<CivilDate>;
  /** Renders Markdown nodes for both readers alike: sanitised, task lists unticked, directives left out. */
  renderPlain(nodes: readonly RootContent[]): ElementContent[];
  /** Checks and returns a directive that stands among `children`; reports what is wrong with it. Undefined for other nodes. */
  readDirective(node: RootContent): { readonly written: WrittenDirective; readonly values: CheckedValues } | undefined;
  /** Place of a Markdown node, for messages. */
  placeOf(node: RootContent): SourcePlace;
  report(diagnostic: Diagnostic): void;
}

/** A timed step of the lesson, for the plan of the day. */
export interface LessonStep {
  readonly number: number;
  readonly title: string;
  readonly minutes: number;
  /** Local time `HH:MM`. */
  readonly beginsAt: string;
}

/** What `resolve` gives: a model for each reader, and what goes to other pages of the pack. */
export interface Resolved<Learner, Teacher> {
  readonly learner: Learner;
  readonly teacher: Teacher;
  readonly step?: LessonStep;
  /** Dates whose night it names beside the date: a quiz need not ask for them once they stand on a handout. */
  readonly tells?: readonly CivilDate[];
  readonly quiz?: QuizSheet;
  /** The learner's page that the text between the fences becomes; `page` is its file name in the learners' folder. */
  readonly handout?: { readonly title: string; readonly page: string };
  /** A run on the beat. Unless it is recorded, a drum track is planned for it, which its views ask for. */
  readonly run?: { readonly timeline: Timeline; readonly recorded: boolean };
  /** Whether it sends anyone out to look at the sky: a lesson with it says what to do in bad weather. */
  readonly outdoors?: boolean;
  /** Drawings that the views show with `renderSharedFigure`. */
  readonly figures?: readonly SharedFigure[];
  /** Pictures of the content folder that the views, papers and key show, as `images/<packName>`. */
  readonly pictures?: readonly ContentPicture[];
  /** Sounds of the content folder that the views play, as `sound/<packName>`. */
  readonly sounds?: readonly ContentSound[];
}

/** What words on a page are made with. */
export interface ViewContext {
  readonly labels: Labels;
  /** BCP 47 tag of the calendar's names; every name is tagged with it. */
  readonly namesLanguage: string;
  /** BCP 47 tag of what the calendar says that names mean; absent: the language of the school. */
  readonly explainedIn?: string;
}

/** What the views of directives need beside their model. */
export interface LessonView extends ViewContext {
  /**
   * Where a run is heard: known once all runs of the week are, since runs share tracks. The file is `sound/<name>.wav`
   * beside the page. Throws for a run that no directive resolved to, and for a recorded one.
   */
  trackOf(timeline: Timeline): TrackCut;
}

/** What an author needs to know of a directive; the checker and the authors' reference read nothing else. */
export interface DirectiveSyntax {
  readonly name: string;
  readonly forms: readonly DirectiveForm[];
  /** One sentence for the authors' reference. */
  readonly about: string;
  /** Markdown example for the authors' reference; it is also a fixture. */
  readonly example: string;
  /** The text in square brackets. */
  readonly label: { readonly use: 'none' | 'optional' | 'required'; readonly about?: string };
  readonly attributes: Readonly<Record<string, AttributeSchema>>;
  /** Names of directives one of which must stand around this one; absent: it may stand anywhere. */
  readonly inside?: readonly string[];
  /** Names of directives that must not stand around this one. */
  readonly notInside?: readonly string[];
}

/**
 * One directive. `Learner` is what a learner may see; `Teacher` may hold answers too.
 * Views are functions of their model alone, so a learner's page cannot show what its model does not hold.
 */
export interface DirectiveDefinition<Schemas extends Readonly<Record<string, AttributeSchema>>, Learner, Teacher>
  extends DirectiveSyntax {
  readonly attributes: Schemas;
  /** Undefined when something was wrong, which is then reported. */
  resolve(
    written: WrittenDirective,
    values: AttributeValues<Schemas>,
    context: ResolveContext,
  ): Resolved<Learner, Teacher> | undefined;
  /** `children` is the text between the fences of a container, already rendered for the same reader. */
  learnerView(model: Learner, children: ElementContent[], view: LessonView): ElementContent[];
  teacherView(model: Teacher, children: ElementContent[], view: LessonView): ElementContent[];
}

/** A resolved directive that is ready to be drawn for either reader. */
export interface ReadyDirective extends Omit<Resolved<unknown, unknown>, 'learner' | 'teacher'> {
  renderLearner(children: ElementContent[], view: LessonView): ElementContent[];
  renderTeacher(children: ElementContent[], view: LessonView): ElementContent[];
}

/** Checked attribute values before their types are told apart. */
export type CheckedValues = Readonly<Record<string, string | number>>;

/** A directive as the registry holds it: the types of its models stay inside. */
export interface Directive extends DirectiveSyntax {
  prepare(written: WrittenDirective, values: CheckedValues, context: ResolveContext): ReadyDirective | undefined;
}

/** Wraps a definition for the registry: each view can reach its own model and no other. */
export function defineDirective<const Schemas extends Readonly<Record<string, AttributeSchema>>, Learner, Teacher>(
  definition: DirectiveDefinition<Schemas, Learner, Teacher>,
): Directive {
  const { resolve, learnerView, teacherView, ...syntax } = definition;
  return {
    ...syntax,
    prepare(written, values, context) {
      // The one checker has just held `values` against these very schemas.
      const resolved = resolve(written, values as AttributeValues<Schemas>, context);
      if (resolved === undefined) return undefined;
      const { learner, teacher, ...parts } = resolved;
      return {
        ...parts,
        renderLearner: (children, view) => learnerView(learner, children, view),
        renderTeacher: (children, view) => teacherView(teacher, children, view),
      };
    },
  };
}
