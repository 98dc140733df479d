import type { PapersModel } from './check-papers.ts';
import type { PlacedQuestions } from './locate-questions.ts';
import { listContentAttributes } from './read-content.ts';
import type { MarkupElement } from './read-markup.ts';
import { sayLeak } from './say-leak.ts';
import type { SearchedPage } from './searched-page.ts';
import { findUsedPart } from './stored-parts.ts';

/** A shorter outline is in many drawings. Our own choice. */
const FEWEST_CHARACTERS = 12;

/** Looks where the Moon is to be drawn for outlines of the drawing that the key has, and no picture of the question. */
export function checkDrawings(page: SearchedPage, { quiz, lesson }: PapersModel, { questions }: PlacedQuestions): void {
  for (const { paper, question, element } of questions) {
    const expected = quiz.key[paper]?.answers.find(({ number }) => number === question.number)?.expected;
    if (expected?.kind !== 'disc') continue;
    const shown = new Set([...listContentAttributes(question.prompt)].map(({ value }) => value));
    const { from, text, used } = readElement(page, element);
    for (const { name, value } of listContentAttributes(expected.drawing)) {
      if (name !== 'd' || value.length < FEWEST_CHARACTERS || shown.has(value)) continue;
      const at = used.includes(value) ? 0 : text.indexOf(value);
      if (at === -1) continue;
      const owner = {
        file: lesson.file,
        question: { quiz: quiz.title, number: question.number, page: page.path, paper },
      };
      const secret = { kind: 'drawing', text: expected.description, owner } as const;
      page.add({ severity: 'error', at: from + at, message: sayLeak(secret, 'as a drawing', page.setting.origin) });
      break;
    }
  }
}

/** What is written in an element, and where it begins; and what is written of the drawn parts that it uses. */
function readElement({ markup: { elements }, source }: SearchedPage, element: number) {
  const from = elements[element]?.at ?? 0;
  const next = findNext(elements, element);
  const used = elements.slice(element, next).flatMap((each) => {
    const part = findUsedPart(elements, each);
    return part === undefined ? [] : [source.slice(elements[part]?.at, elements[findNext(elements, part)]?.at)];
  });
  return { from, text: source.slice(from, elements[next]?.at), used: used.join() };
}

/** Index of the first element after an element and all in it; past the last one where there is none. */
function findNext(elements: readonly MarkupElement[], element: number): number {
  const next = elements.findIndex(({ parent }, index) => index > element && parent < element);
  return next === -1 ? elements.length : next;
}
