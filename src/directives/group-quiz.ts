import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import { addDays, clampDate, computeMonday } from '../content/civil-date.ts';
import { dealPapers } from '../quiz/deal-papers.ts';
import type { QuizFacts, QuizSheet } from '../quiz/model.ts';
import { defineDirective, type ResolveContext, type WrittenDirective } from './definition.ts';
import { LEARNERS_FOLDER, nameKeyAnchor, nameKeyPage, nameQuizPage } from './page-names.ts';
import { readQuestions } from './questions/read-questions.ts';
import { listQuizPictures } from './quiz-pictures.ts';

/** What the teacher's page says of a quiz; the papers and the key are pages of their own. */
interface QuizCard {
  readonly title: string;
  readonly introduction: ElementContent[];
  readonly groups: readonly string[];
  readonly questions: number;
  readonly marks: number;
  readonly minutes?: number;
  readonly papersHref: string;
  readonly keyHref: string;
}

export const groupQuiz = defineDirective({
  name: 'group-quiz',
  forms: ['container'],
  about: 'A quiz for groups: a paper for each group, with other computed questions on each, and the key.',
  example:
    ':::group-quiz[Which night?]{groups=4 minutes=12}\n1. Where does the light of the Moon come from?\n   - [x] the Sun\n   - [ ] the sea\n\n::question{ask=night-of-date}\n:::',
  label: { use: 'required', about: 'the title on the papers' },
  attributes: {
    groups: { type: 'integer', min: 1, max: 40, about: "how many groups; left out, the school's own groups" },
    minutes: { type: 'integer', min: 1, max: 120, about: 'how long the groups have' },
    seed: {
      type: 'text',
      about: 'a word that decides which group gets which question; left out, the week and lesson do',
    },
  },
  notInside: ['group-quiz', 'handout', 'teacher'],
  resolve(written, values, context) {
    const { introduction, sources } = readQuestions(written, context);
    if (sources.length === 0) return undefined;
    const sheet = dealPapers({
      title: written.label,
      number: written.number,
      ...(values.minutes === undefined ? {} : { minutes: values.minutes }),
      introduction,
      sources,
      groups: nameGroups(values.groups, context),
      seed: values.seed ?? `${context.weekId}/${context.lesson.slug}/${written.number}`,
      facts: computeFacts(context),
      report: context.report,
    });
    return {
      learner: undefined,
      teacher: computeCard(written, sheet, introduction, context),
      quiz: sheet,
      pictures: listQuizPictures(sheet, context.gestures),
    };
  },
  learnerView: () => [],
  teacherView: (card, _children, { labels }) => [
    h('section.quiz-card', { ariaLabel: card.title }, [
      h('p.quiz-card-title', card.title),
      h(
        'p.quiz-card-facts',
        [
          labels.count('questions', card.questions),
          labels.count('marks', card.marks),
          ...(card.minutes === undefined ? [] : [labels.count('minutes', card.minutes)]),
          labels.list(card.groups),
        ].join(' · '),
      ),
      ...card.introduction,
      h('p.sheet-link', [
        h('a', { href: card.papersHref }, labels.count('papers', card.groups.length)),
        ' · ',
        h('a', { href: card.keyHref }, labels.text('key-link')),
      ]),
    ]),
  ],
});

function computeCard(
  written: WrittenDirective,
  sheet: QuizSheet,
  introduction: ElementContent[],
  { lesson }: ResolveContext,
): QuizCard {
  const [first] = sheet.papers;
  return {
    title: sheet.title,
    introduction,
    groups: sheet.papers.map((paper) => paper.group),
    questions: first?.questions.length ?? 0,
    marks: first?.totalMarks ?? 0,
    ...(sheet.minutes === undefined ? {} : { minutes: sheet.minutes }),
    papersHref: `${LEARNERS_FOLDER}/${nameQuizPage(lesson.stem, written.number)}`,
    keyHref: `${nameKeyPage(lesson.stem)}#${nameKeyAnchor(lesson.slug, written.number)}`,
  };
}

/** The school's own names first; where there are too few, "Group 5" and so on. */
function nameGroups(count: number | undefined, { school, labels }: ResolveContext): string[] {
  const wanted = count ?? Math.max(school.groups.length, 1);
  return Array.from(
    { length: wanted },
    (_, index) => school.groups[index] ?? labels.text('group-number', { n: index + 1 }),
  );
}

/** How far beyond the lesson's date a question may reach: a class can count a week ahead. Our own choice. */
const DAYS_AHEAD = 7;

/** Questions are about the days from the Monday of the lesson's week to a week after the lesson, whichever are taught. */
function computeFacts({ almanac, calendar, gestures, labels, lesson, school, toldDates }: ResolveContext): QuizFacts {
  return {
    almanac,
    calendar,
    gestures,
    school,
    labels,
    today: lesson.date,
    from: clampDate(computeMonday(lesson.date)),
    to: clampDate(addDays(lesson.date, DAYS_AHEAD)),
    toldDates,
  };
}
