import { readText } from '../../../src/quiz/fold-text.ts';
import type { QuestionInstance } from '../../../src/quiz/questions/question-instance.ts';

/** The texts of a question's prompt, spaces that do not break made plain. */
export function readPrompt(instance: QuestionInstance): string {
  return plain(readText(instance.renderPrompt()));
}

export function readWorking(instance: QuestionInstance): string {
  return plain(readText(instance.renderWorking()));
}

/** The right answer in words: an option, what is shown first for a line, or items in their order. */
export function readAnswer(instance: QuestionInstance): string {
  switch (instance.kind) {
    case 'choice':
      return plain(readText(instance.renderRight()));
    case 'line':
      return plain(readText(instance.listAnswers()[0] ?? []));
    case 'order':
      return instance
        .renderItems()
        .map((item) => plain(readText(item)))
        .join(', ');
    default:
      throw new Error(`${instance.asks} pairs things.`);
  }
}

/** Every set of wrong options, as texts in order of the letters. */
export function readSets(instance: QuestionInstance): string[] {
  if (instance.kind !== 'choice') throw new Error(`${instance.asks} is no choice.`);
  return instance.listWrongSets().map((set) =>
    set
      .map(({ content }) => plain(readText(content)))
      .sort()
      .join(', '),
  );
}

/** What each wrong answer means, by its text, over all sets or slips. */
export function readMeanings(instance: QuestionInstance): Record<string, string> {
  if (instance.kind === 'line') {
    return Object.fromEntries(instance.listSlips().map(({ answer, means }) => [answer, plain(readText(means))]));
  }
  if (instance.kind !== 'choice') throw new Error(`${instance.asks} has no wrong answers.`);
  const options = instance.listWrongSets().flat();
  return Object.fromEntries(options.map(({ content, means }) => [plain(readText(content)), plain(readText(means))]));
}

/** Places of an instance's level among the three, for a list of them: how many of each. */
export function countLevels(instances: readonly QuestionInstance[]): number[] {
  return [1, 2, 3].map((level) => instances.filter((instance) => instance.level === level).length);
}

/** The one instance whose prompt, or what it asks, holds a text. */
export function requireQuestion(instances: readonly QuestionInstance[], part: string): QuestionInstance {
  const found = instances.filter((instance) => readPrompt(instance).includes(part) || instance.asks === part);
  const [only] = found;
  if (only === undefined || found.length > 1) throw new Error(`${found.length} questions hold "${part}".`);
  return only;
}

/** The question at a place of a list, from 0, or from the end when negative. */
export function takeQuestion(instances: readonly QuestionInstance[], place: number): QuestionInstance {
  const instance = instances.at(place);
  if (instance === undefined) throw new Error(`There is no question ${place}.`);
  return instance;
}

function plain(text: string): string {
  return text.replaceAll('\u00A0', ' ');
}
