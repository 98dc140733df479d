import type { ElementContent } from 'hast';
import type { ExpectedAnswer, LearnerQuestion } from '../../quiz/model.ts';
import type { PapersModel } from './check-papers.ts';
import { countPhrase } from './find-phrase.ts';
import type { PlacedQuestions } from './locate-questions.ts';
import { listSpaceContent } from './page-model.ts';
import { listContentAttributes, listDescriptions, readShownText } from './read-content.ts';
import { shorten } from './say-leak.ts';
import type { SearchedPage } from './searched-page.ts';
import { gradeAnswer } from './secret.ts';
import { splitWords } from './split-words.ts';

/** What says a picture to who does not see it. */
const DESCRIPTIONS: ReadonlySet<string> = new Set(['alt', 'title', 'ariaLabel', 'ariaDescription']);

/**
 * Looks for pictures in questions whose description or file name names an option or an answer. A name that can be read
 * in the question, or beside the picture in the same option, is told to all alike.
 */
export function checkPictures(page: SearchedPage, { quiz, lesson }: PapersModel, placed: PlacedQuestions): void {
  const seen = new Set<string>();
  quiz.papers.forEach(({ questions }, paper) => {
    for (const question of questions) {
      const expected = quiz.key[paper]?.answers.find(({ number }) => number === question.number)?.expected;
      for (const { found, what, name } of listTelling(question, expected, page.setting.names)) {
        const key = `${question.number} ${found}`;
        if (seen.has(key)) continue;
        seen.add(key);
        const prompt = placed.questions.find((each) => each.paper === paper && each.question === question)?.promptAt;
        const picture = lesson.pictures.find((each) => found.endsWith(`images/${each.name}`));
        page.add({
          severity: 'error',
          at: findAttribute(page, found, prompt),
          message: `${what} of question ${question.number} of \`${quiz.title}\` in \`${lesson.file}\` names \`${name}\`, which is asked for: \`${shorten(found)}\`; expected what is seen, not its name; ${what === 'A picture’s file name' ? 'give the file another name' : 'say what the picture shows'}`,
          ...(picture === undefined
            ? {}
            : { related: { file: `${page.setting.weekFolder}/${picture.path}`, line: 1, column: 1 } }),
        });
      }
    }
  });
}

interface TellingPicture {
  readonly found: string;
  readonly what: 'A picture’s description' | 'A picture’s file name';
  readonly name: string;
}

/** Pictures of a question that name what is asked for. */
function listTelling(
  question: LearnerQuestion,
  expected: ExpectedAnswer | undefined,
  names: ReadonlySet<string>,
): TellingPicture[] {
  const contents = [question.prompt, ...listSpaceContent(question.space)];
  const pictures = contents.flatMap((content) => listPictureTexts(content).map((text) => ({ ...text, content })));
  if (pictures.length === 0) return [];
  const asked = listAsked(question, expected)
    .map((name) => ({ name, phrase: splitWords(name) }))
    .filter(({ phrase }) => gradeAnswer(phrase, names.has(phrase.join(' '))) === 'unseen');
  const prompt = splitWords(readShownText(question.prompt));
  return pictures.flatMap(({ found, what, content }) => {
    const words = splitWords(found);
    const beside = splitWords(readShownText(content));
    const told = asked.find(({ phrase }) => {
      const isTold = countPhrase(prompt, phrase) > 0 || countPhrase(beside, phrase) > 0;
      const isGlued = what === 'A picture’s file name' && words.join('').includes(phrase.join(''));
      return !isTold && (isGlued || countPhrase(words, phrase) > 0);
    });
    return told === undefined ? [] : [{ found, what, name: told.name.trim() }];
  });
}

/** What learners choose from or are to write, as texts. */
function listAsked({ space }: LearnerQuestion, expected: ExpectedAnswer | undefined): string[] {
  const written = expected?.kind === 'line' ? expected.accepted.map(readShownText) : [];
  const drawn = expected?.kind === 'disc' ? [expected.description] : [];
  return [...written, ...drawn, ...listSpaceContent(space).map(readShownText)];
}

function listPictureTexts(content: readonly ElementContent[]): Omit<TellingPicture, 'name'>[] {
  const said = listDescriptions(content).map((found) => ({ found, what: 'A picture’s description' as const }));
  const attributes = [...listContentAttributes(content)].flatMap(({ name, value }): Omit<TellingPicture, 'name'>[] => {
    if (DESCRIPTIONS.has(name)) return [{ found: value, what: 'A picture’s description' }];
    return name === 'src' && !value.startsWith('data:') ? [{ found: value, what: 'A picture’s file name' }] : [];
  });
  return [...said, ...attributes];
}

/** Where on the page an attribute has the value, from a word on; the word itself, or 0, where none has it. */
function findAttribute({ markup, runOf }: SearchedPage, value: string, from: number | undefined): number {
  const start = from === undefined ? 0 : runOf(from).at;
  for (const { tag, at } of markup.elements) {
    const attribute = at < start ? undefined : tag.attributes.find((each) => each.value === value);
    if (attribute !== undefined) return at + attribute.offset;
  }
  return start;
}
