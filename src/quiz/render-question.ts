import type { ElementContent } from 'hast';
import { copyContent } from './copy-content.ts';
import type { DrawnAnswer, DrawnQuestion } from './draw-question.ts';
import type { AnswerSpace, ExpectedAnswer, KeyAnswer, LearnerQuestion, LetteredContent } from './model.ts';
import type { Placing } from './place-answers.ts';

/** Code of "A". */
const FIRST_LETTER = 65;

/** The question as a learner gets it: copies of its parts, in the order of the paper. */
export function renderLearnerQuestion(question: DrawnQuestion, number: number, placing: Placing): LearnerQuestion {
  return {
    number,
    prompt: copyContent(question.prompt),
    marks: question.marks,
    space: renderSpace(question.answer, placing),
  };
}

function renderSpace(answer: DrawnAnswer, placing: Placing): AnswerSpace {
  switch (answer.kind) {
    case 'options':
      return { kind: 'options', several: answer.right.length > 1, options: letter(listOptions(answer), placing) };
    case 'line':
      return answer.unit === undefined ? { kind: 'line' } : { kind: 'line', unit: answer.unit };
    case 'order':
      return { kind: 'order', items: letter(answer.items, placing) };
    case 'match':
      return {
        kind: 'match',
        headings: answer.headings && [copyContent(answer.headings[0]), copyContent(answer.headings[1])],
        left: answer.pairs.map(({ left }) => copyContent(left)),
        right: letter(listRightSides(answer), placing),
      };
    case 'lines':
      return { kind: 'lines', lines: answer.lines };
    case 'disc':
      return { kind: 'disc' };
  }
}

/** The question's answer for the teacher, with the letters of the paper. */
export function renderKeyAnswer(question: DrawnQuestion, number: number, placing: Placing): KeyAnswer {
  return {
    number,
    prompt: copyContent(question.prompt),
    expected: renderExpected(question.answer, placing),
    working: copyContent(question.working),
    ...(question.hint === undefined ? {} : { hint: question.hint }),
    marks: question.marks,
  };
}

function renderExpected(answer: DrawnAnswer, placing: Placing): ExpectedAnswer {
  switch (answer.kind) {
    case 'options': {
      const means = [...answer.right.map(() => []), ...answer.wrong.map((option) => option.means)];
      const options = letter(listOptions(answer), placing).map((option, place) => {
        const number = placing[place] ?? 0;
        return { ...option, right: number < answer.right.length, means: copyContent(means[number] ?? []) };
      });
      return { kind: 'options', options };
    }
    case 'line': {
      const slips = answer.slips.map((slip) => ({ answer: slip.answer, means: copyContent(slip.means) }));
      const line = {
        kind: 'line',
        accepted: answer.accepted.map(copyContent),
        forgive: { ...answer.forgive },
        slips,
      } as const;
      return answer.unit === undefined ? line : { ...line, unit: answer.unit };
    }
    case 'order':
      return { kind: 'order', items: unshuffle(letter(answer.items, placing), placing) };
    case 'match': {
      const rights = unshuffle(letter(listRightSides(answer), placing), placing);
      const pairs = answer.pairs.flatMap(({ left }, number) => {
        const right = rights[number];
        return right === undefined ? [] : [{ left: copyContent(left), right }];
      });
      return { kind: 'match', pairs };
    }
    case 'lines':
      return { kind: 'lines', rubric: answer.rubric.map((row) => ({ ...row })) };
    case 'disc':
      return { kind: 'disc', drawing: answer.renderDrawing(), description: answer.description };
  }
}

function listOptions({ right, wrong }: DrawnAnswer & { kind: 'options' }): ElementContent[][] {
  return [...right, ...wrong.map(({ content }) => content)];
}

function listRightSides({ pairs }: DrawnAnswer & { kind: 'match' }): ElementContent[][] {
  return pairs.map(({ right }) => right);
}

/** Copies of the contents in the order of the paper, with its letters. */
function letter(contents: readonly ElementContent[][], placing: Placing): LetteredContent[] {
  return placing.map((number, place) => ({
    letter: String.fromCharCode(FIRST_LETTER + place),
    content: copyContent(contents[number] ?? []),
  }));
}

/** Back in the order in which they were drawn. */
function unshuffle(lettered: readonly LetteredContent[], placing: Placing): LetteredContent[] {
  return placing.flatMap((_, number) => lettered[placing.indexOf(number)] ?? []);
}
