import type { ElementContent } from 'hast';
import { h, s } from 'hastscript';
import type { AnswerSpace, ExpectedAnswer, KeyAnswer, LearnerQuestion, QuizSheet } from '../../../src/quiz/model.ts';

/** A question with its answer, before it has a number. */
export interface SampleQuestion {
  readonly prompt: ElementContent[];
  readonly marks: number;
  readonly space: AnswerSpace;
  readonly expected: ExpectedAnswer;
}

/** A quiz of these questions, the same for every group. */
export function buildQuiz(
  questions: readonly SampleQuestion[],
  groups: readonly string[] = ['Heron', 'Kelp'],
): QuizSheet {
  const title = 'Nights & “days” <of> the month';
  const totalMarks = questions.reduce((sum, { marks }) => sum + marks, 0);
  return {
    title,
    number: 1,
    minutes: 12,
    papers: groups.map((group) => ({
      title,
      group,
      minutes: 12,
      introduction: [h('p', 'Work together.')],
      questions: questions.map(
        ({ prompt, marks, space }, index): LearnerQuestion => ({ number: index + 1, prompt, marks, space }),
      ),
      totalMarks,
    })),
    key: groups.map((group) => ({
      group,
      answers: questions.map(
        ({ prompt, marks, expected }, index): KeyAnswer => ({
          number: index + 1,
          prompt,
          expected,
          working: text(SECRET_WORKING),
          hint: SECRET_WORKING,
          marks,
        }),
      ),
      totalMarks,
    })),
  };
}

/** What the key says aloud, and no tool shows. */
export const SECRET_WORKING = 'three nights to go';

/** A text as a tree. */
export function text(value: string): ElementContent[] {
  return [{ type: 'text', value }];
}

/** A name of the calendar, tagged with its language. */
export function name(value: string, language = 'mi', dir?: 'rtl'): ElementContent[] {
  return [h('span', { lang: language, ...(dir === undefined ? {} : { dir }) }, value)];
}

/** A drawing as the questions about the sky have it. */
export function drawMoon(words: string, shade: string): ElementContent {
  return s(
    'svg',
    { className: ['moon'], viewBox: '-40 -40 80 80', width: 80, height: 80, role: 'img', ariaLabel: words },
    [
      s('circle', { className: ['moon-lit'], r: 40, fill: '#FFFEFB' }),
      s('path', { d: shade, fillOpacity: 0.93, strokeWidth: 1.2 }),
    ],
  );
}

const LETTERS = 'ABCDEFGH';

/** Options to tick; those with a star before them are right. What a wrong one means follows a bar. */
export function choice(marks: number, several: boolean, written: readonly string[]): SampleQuestion {
  const options = written.map((line, index) => {
    const [words = '', means = ''] = line.replace(/^\*/, '').split('|');
    return {
      letter: LETTERS[index] ?? '',
      content: text(words),
      right: line.startsWith('*'),
      means: means === '' ? [] : text(means),
    };
  });
  return {
    prompt: text('Which?'),
    marks,
    space: { kind: 'options', several, options: options.map(({ letter, content }) => ({ letter, content })) },
    expected: { kind: 'options', options },
  };
}

/** A line to write on, where these spellings count. */
export function line(
  marks: number,
  accepted: readonly string[],
  forgive = { case: true, accents: true },
  unit?: string,
): SampleQuestion {
  const withUnit = unit === undefined ? {} : { unit };
  return {
    prompt: [h('p', 'How many?'), h('p', 'Count from tonight.')],
    marks,
    space: { kind: 'line', ...withUnit },
    expected: {
      kind: 'line',
      accepted: accepted.map(text),
      forgive,
      slips: [{ answer: '99', means: text('Counted all.') }],
      ...withUnit,
    },
  };
}

/** Things in their right order, shown in the order of the given places. */
export function order(marks: number, right: readonly string[], shown: readonly number[]): SampleQuestion {
  const items = shown.map((place, index) => ({ letter: LETTERS[index] ?? '', content: text(right[place] ?? '') }));
  const sorted = right.map((_, place) => items[shown.indexOf(place)] ?? { letter: '', content: [] });
  return {
    prompt: text('Put in order.'),
    marks,
    space: { kind: 'order', items },
    expected: { kind: 'order', items: sorted },
  };
}

/** Pairs, the right side shown in the order of the given places. */
export function match(
  marks: number,
  pairs: readonly (readonly [ElementContent[], ElementContent[]])[],
  shown: readonly number[],
): SampleQuestion {
  const right = shown.map((place, index) => ({ letter: LETTERS[index] ?? '', content: pairs[place]?.[1] ?? [] }));
  return {
    prompt: text('Match.'),
    marks,
    space: { kind: 'match', headings: [text('Night'), text('Moon')], left: pairs.map(([left]) => left), right },
    expected: {
      kind: 'match',
      pairs: pairs.map(([left], place) => ({
        left,
        right: right[shown.indexOf(place)] ?? { letter: '', content: [] },
      })),
    },
  };
}

/** An open answer with a rubric. */
export const open: SampleQuestion = {
  prompt: text('Why is it dark?'),
  marks: 2,
  space: { kind: 'lines', lines: 4 },
  expected: {
    kind: 'lines',
    rubric: [
      { marks: 2, words: 'says that the Sun & the Moon stand together' },
      { marks: 1, words: 'names the Sun' },
    ],
  },
};

/** The Moon to draw. */
export const draw: SampleQuestion = {
  prompt: text('Draw the Moon of Wednesday.'),
  marks: 2,
  space: { kind: 'disc' },
  expected: { kind: 'disc', drawing: [drawMoon('Lit at the left.', 'M1 0z')], description: 'Lit at the left.' },
};

/** What authors and languages can bring, in one prompt: letters that XML needs escaped, and all that Markdown has. */
export const richPrompt: ElementContent[] = [
  h('p', [
    '5 < 6 & "7" > \'3\' ]]> ',
    h('em', 'Tāne'),
    ' ',
    h('code', 'a\u0000b\ud800c'),
    h('a', { href: 'https://example.org/?a=1&b=2' }, 'here'),
  ]),
  h('p', [
    h('a', { href: '#part' }, 'within'),
    h('img', { src: 'images/my%20tide.PNG', alt: 'A “tide” & a line', title: 'T' }),
    h('br'),
  ]),
  h('ol', { start: 3 }, [h('li', 'three'), h('li', [h('p', 'four')])]),
  h('ul', [h('li', { className: ['task'] }, [h('input', { type: 'checkbox' }), 'box'])]),
  h('table', [h('thead', [h('tr', [h('th', { align: 'right' }, 'a')])]), h('tbody', [h('tr', [h('td', 'b')])])]),
  h('blockquote', [h('p', 'said')]),
  h('pre', [h('code', { className: ['language-js'] }, 'x < 1')]),
  h('h3', 'Heading'),
  h('hr'),
  h('p', [
    h('span', { lang: 'ar', dir: 'rtl' }, 'ليلة القمر'),
    h('span', { dataAnswer: 'x', id: 'y' }, [h('div', 'block in a line')]),
  ]),
];

/** Every kind of question, and odd content for each. */
export const EVERY_KIND: readonly SampleQuestion[] = [
  { ...choice(1, false, ['*the Sun', 'the <sea>|Mixed up “shore” & sea.', 'the Moon']), prompt: richPrompt },
  choice(2, true, ['*one|', 'two|Counted tonight as well.', '*three', 'four']),
  choice(3, true, ['*a', '*b', 'c']),
  line(1, ['Te Rā o Tāwhirimātea', 'l’eau'], { case: true, accents: true }),
  line(2, ['3'], { case: true, accents: true }, 'nights & days'),
  line(1, ['Half Shell'], { case: false, accents: false }),
  order(1, ['first', 'second', 'third'], [2, 0, 1]),
  order(4, ['first', 'second', 'third'], [1, 2, 0]),
  match(
    3,
    [
      [name('Hidden Moon'), [drawMoon('Dark.', 'M1 0z')]],
      [name('Half Shell'), [drawMoon('Lit at the right.', 'M2 0z')]],
      [name('ليلة القمر', 'ar', 'rtl'), [drawMoon('Whole.', 'M3 0z')]],
    ],
    [1, 2, 0],
  ),
  match(
    1,
    [
      [text('a'), text('1')],
      [text('b'), text('2')],
      [text('c'), text('3')],
    ],
    [2, 0, 1],
  ),
  open,
  draw,
];
