import type { ForgiveWord } from '../../content/question-words.ts';
import type { Forgiveness, WrittenSource } from '../../quiz/model.ts';
import type { ResolveContext } from '../definition.ts';
import type { QuestionItem } from './question-item.ts';
import { readCommon } from './read-common.ts';

/** `::answer[…]`: a short answer to write, with other spellings that count. */
export function readShort(item: QuestionItem, context: ResolveContext): WrittenSource[] {
  const { written, values } = item.answer ?? {};
  const answers = [written?.label ?? '', ...splitSpellings(String(values?.['accept'] ?? ''))];
  // The attribute's schema admits these words only.
  const forgive = readForgiveness(values?.['forgive'] as ForgiveWord | undefined);
  return [{ kind: 'short', ...readCommon(item, [], context), answers, forgive }];
}

const FORGIVENESS: Readonly<Record<ForgiveWord, Forgiveness>> = {
  all: { case: true, accents: true },
  case: { case: true, accents: false },
  macrons: { case: false, accents: true },
  nothing: { case: false, accents: false },
};

/** What a word of the author's forgives; left out, capitals and marks on letters. */
export function readForgiveness(word: ForgiveWord = 'all'): Forgiveness {
  return FORGIVENESS[word];
}

function splitSpellings(accept: string): string[] {
  return accept
    .split(';')
    .map((spelling) => spelling.trim())
    .filter((spelling) => spelling !== '');
}
