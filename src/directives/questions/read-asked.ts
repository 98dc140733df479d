import type { RootContent } from 'mdast';
import type { ComputedSource, QuestionSource } from '../../quiz/model.ts';
import type { Level } from '../../quiz/questions/question-instance.ts';
import type { ComputedKind } from '../../quiz/questions/question-kinds.ts';
import type { CheckedValues, ResolveContext, WrittenDirective } from '../definition.ts';
import { computeSpan, type DateSpan, type Span } from './compute-span.ts';
import { readGiven } from './read-common.ts';
import { readFromBank } from './read-from-bank.ts';
import { reportQuestion } from './report-question.ts';

/** A `::question`: a computed one, or one from a questions file. */
export function readAsked(node: RootContent, context: ResolveContext): QuestionSource[] {
  const read = context.readDirective(node);
  if (read === undefined || read.written.name !== 'question') return [];
  const { written, values } = read;
  const { ask, use } = values;
  if ((ask === undefined) === (use === undefined)) {
    const found = ask === undefined ? '`::question` without `ask` or `use`' : '`::question` with both `ask` and `use`';
    reportQuestion(context, written.place, found, 'one of them', 'write `::question{ask=night-of-date}`');
    return [];
  }
  if (use === undefined) return readComputed(written, values, context);
  return reportUnused(written, values, context) ? [] : readFromBank(String(use), written, values, context);
}

/** Attributes that say what to compute. */
const COMPUTED_ONLY = ['level', 'within', 'night', 'on'] as const;

function reportUnused(written: WrittenDirective, values: CheckedValues, context: ResolveContext): boolean {
  const unused = COMPUTED_ONLY.filter((name) => values[name] !== undefined);
  for (const name of unused) {
    const found = `\`${name}\` with \`use\``;
    reportQuestion(context, written.attributePlace(name), found, 'it with `ask` only', 'take it out');
  }
  return unused.length > 0;
}

function readComputed(written: WrittenDirective, values: CheckedValues, context: ResolveContext): ComputedSource[] {
  const { marks, hint } = readGiven(values);
  const { night, on } = values;
  const within = readWithin(written, values, context);
  if (within === undefined) return [];
  // The attributes' schemas admit the computed kinds, the levels and the days of the week only.
  const ask = values['ask'] as ComputedKind;
  const level = values['level'] as Level | undefined;
  const number = context.almanac.run.find(({ name }) => name === night)?.number;
  const date = [...context.dates].find(([day]) => day === on)?.[1];
  return [
    {
      kind: 'computed',
      place: written.place,
      ask,
      ...(marks === undefined ? {} : { marks }),
      ...(hint === undefined ? {} : { hint }),
      ...(level === undefined ? {} : { level }),
      ...within,
      ...(number === undefined ? {} : { night: number }),
      ...(date === undefined ? {} : { on: date }),
    },
  ];
}

/** Undefined where the lesson lies in no term, which is then reported; nothing for a week, which goes without saying. */
function readWithin(
  written: WrittenDirective,
  values: CheckedValues,
  { almanac, lesson, school, report }: ResolveContext,
): { within?: DateSpan } | undefined {
  // The attribute's schema admits the spans only.
  const span = (values['within'] ?? 'week') as Span;
  if (span === 'week') return {};
  const within = computeSpan(span, almanac.nightOn(lesson.date), almanac, school.terms);
  if (within !== undefined) return { within };
  const known = school.terms.map(({ name, from, to }) => `\`${name}\` from \`${from}\` to \`${to}\``).join(', ');
  const found = `\`within=term\` on \`${lesson.date}\`, which lies in no term of \`${school.name}\``;
  const expected = known === '' ? 'terms in the school’s file' : `a date in ${known}`;
  const advice = 'mend the terms in the school’s file, or write `within=month`';
  reportQuestion({ report }, written.attributePlace('within'), found, expected, advice);
  return undefined;
}
