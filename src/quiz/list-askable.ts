import type { ComputedSource, QuizFacts } from './model.ts';
import type { QuestionInstance } from './questions/question-instance.ts';
import { QUESTION_KINDS } from './questions/question-kinds.ts';

/**
 * The instances that would do for each computed question: of its kind, from its dates, of its level, about its night and
 * date. What two questions have in common is listed once.
 */
export function listAskable(
  sources: readonly ComputedSource[],
  facts: QuizFacts,
): Map<ComputedSource, readonly QuestionInstance[]> {
  const listed = new Map<string, readonly QuestionInstance[]>();
  return new Map(
    sources.map((source) => {
      const { from, to } = source.within ?? facts;
      const key = `${source.ask} ${from} ${to}`;
      const all = listed.get(key) ?? QUESTION_KINDS[source.ask].list({ ...facts, from, to });
      listed.set(key, all);
      return [source, all.filter((instance) => isAbout(instance, source))];
    }),
  );
}

function isAbout({ level, about }: QuestionInstance, source: ComputedSource): boolean {
  return (
    (source.level === undefined || level === source.level) &&
    (source.night === undefined || about.nights.includes(source.night)) &&
    (source.on === undefined || about.dates.includes(source.on))
  );
}
