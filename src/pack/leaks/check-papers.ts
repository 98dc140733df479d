import { checkDrawings } from './check-drawings.ts';
import { checkGiveaways } from './check-giveaways.ts';
import { checkOrder } from './check-order.ts';
import { checkPictures } from './check-pictures.ts';
import { findOddShell } from './check-shells.ts';
import { checkStrayAnswers } from './check-stray-answers.ts';
import { listLettered, locateQuestions, type PlacedQuestions } from './locate-questions.ts';
import type { PageModel } from './page-model.ts';
import { sayFault } from './say-leak.ts';
import type { SearchedPage } from './searched-page.ts';

/** The model of a page with papers. */
export type PapersModel = Extract<PageModel, { kind: 'papers' }>;

/** What is to be looked for on papers alone: answers in plain sight, and what the order and the shape of things tell. */
export function checkPapers(page: SearchedPage, model: PapersModel): void {
  const placed = locateQuestions(page, model);
  checkStrayAnswers(page, placed);
  checkShells(page, placed);
  checkDrawings(page, model, placed);
  // A pack that was built earlier may come from another lesson: only its bytes are looked at.
  if (page.setting.origin === 'built') return;
  checkOrder(page, model.quiz, placed);
  checkPictures(page, model, placed);
  checkGiveaways(page, model, placed);
}

function checkShells(page: SearchedPage, { questions }: PlacedQuestions): void {
  for (const { question, items } of questions) {
    const odd = findOddShell(page.markup.elements, items, listLettered(question.space));
    if (odd === undefined) continue;
    const expected = `the same around each option of question ${question.number}, and not at \`${odd.letter}\` alone`;
    page.add({ severity: 'error', at: odd.at, message: sayFault(odd.found, expected, page.setting.origin) });
  }
}
