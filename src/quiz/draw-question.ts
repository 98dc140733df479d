import type { ElementContent } from 'hast';
import { renderName } from '../content/render-name.ts';
import type { Calendar } from '../content/types.ts';
import { foldText } from './fold-text.ts';
import type { QuestionSource, QuizFacts } from './model.ts';
import type { QuestionInstance } from './questions/question-instance.ts';
import { pick, type Random } from './random.ts';

/** A question with all that a paper and its key need, before its options are put in order. */
export interface DrawnQuestion {
  readonly prompt: ElementContent[];
  readonly marks: number;
  readonly working: ElementContent[];
  readonly answer:
    | {
        readonly kind: 'options';
        readonly right: readonly ElementContent[][];
        readonly wrong: readonly ElementContent[][];
      }
    | { readonly kind: 'line'; readonly unit?: string; readonly accepted: readonly ElementContent[][] };
}

/** A handwritten question as drawn; it passed {@link checkQuestion}. */
export function drawWritten(source: Exclude<QuestionSource, { kind: 'computed' }>, calendar: Calendar): DrawnQuestion {
  const working: ElementContent[] = source.working ? [{ type: 'text', value: source.working }] : [];
  const { prompt } = source;
  if (source.kind === 'short') {
    const accepted = listSpellings(source.answers).map((spelling) => [tagIfName(spelling, calendar)]);
    return { prompt, marks: source.marks ?? 1, working, answer: { kind: 'line', accepted } };
  }
  const right = source.options.filter((option) => option.right).map((option) => option.content);
  const wrong = source.options.filter((option) => !option.right).map((option) => option.content);
  return { prompt, marks: source.marks ?? right.length, working, answer: { kind: 'options', right, wrong } };
}

/** A computed question as drawn. The set of wrong options is drawn too. */
export function drawComputed(
  source: QuestionSource,
  instance: QuestionInstance,
  facts: QuizFacts,
  random: Random,
): DrawnQuestion {
  const prompt = instance.renderPrompt();
  const marks = source.marks ?? 1;
  if (instance.kind === 'line') {
    const accepted: ElementContent[][] = [[{ type: 'text', value: instance.writeAnswer() }]];
    return {
      prompt,
      marks,
      working: instance.renderWorking(),
      answer: { kind: 'line', unit: instance.unit, accepted },
    };
  }
  const wrong = pick(instance.listWrongSets(), random);
  const [right, ...others] = [instance.right, ...wrong.map(({ name }) => name)].map((name): ElementContent[] => [
    renderName(name, facts.calendar.language),
  ]);
  const answer = { kind: 'options', right: right === undefined ? [] : [right], wrong: others } as const;
  return { prompt, marks, working: instance.renderWorking(wrong), answer };
}

/** Spellings that differ to a marker; the first of equal ones is kept. */
function listSpellings(answers: readonly string[]): string[] {
  const spellings = new Map<string, string>();
  for (const answer of answers) {
    const folded = foldText(answer);
    if (folded !== '' && !spellings.has(folded)) spellings.set(folded, answer.trim());
  }
  return [...spellings.values()];
}

/** An answer that is a name of the calendar is tagged with the language of the names. */
function tagIfName(text: string, calendar: Calendar): ElementContent {
  return listFoldedNames(calendar).has(foldText(text))
    ? renderName(text, calendar.language)
    : { type: 'text', value: text };
}

const foldedNames = new WeakMap<Calendar, ReadonlySet<string>>();

/** All names of groups, nights and months; worked out once a calendar. */
function listFoldedNames(calendar: Calendar): ReadonlySet<string> {
  const known = foldedNames.get(calendar);
  if (known !== undefined) return known;
  const { groups, months, thirteenthMonth } = calendar;
  const named = [
    ...groups,
    ...groups.flatMap(({ nights }) => nights),
    ...months,
    ...(thirteenthMonth ? [thirteenthMonth] : []),
  ];
  const folded = new Set(named.map(({ name }) => foldText(name)));
  foldedNames.set(calendar, folded);
  return folded;
}
