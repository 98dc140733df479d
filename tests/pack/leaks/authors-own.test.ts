import { describe, expect, it } from 'vitest';
import { openContent } from '../../directives/build-week.ts';
import { openLeakLesson } from './leak-week.ts';

const setting = openContent();

/** Findings about a lesson as it is written, as `severity message`. */
function search(body: string, pictures: readonly string[] = []): string[] {
  return openLeakLesson(body, setting, pictures)
    .find()
    .map(({ severity, message }) => `${severity} ${message}`);
}

const quiz = (...questions: readonly string[]) =>
  `:::group-quiz[Moon quiz]{groups=2 seed=own}\n${questions.map((question, index) => `${index + 1}. ${question}`).join('\n\n')}\n:::\n`;
const choose = (prompt: string, ...options: readonly string[]) =>
  `${prompt}\n${options.map((option, index) => `   - [${index === 0 ? 'x' : ' '}] ${option}`).join('\n')}`;
const answer = (prompt: string, written: string, more = '') =>
  `${prompt}\n\n   ::answer[${written}]${more === '' ? '' : `{${more}}`}`;

const WORKING = 'The Sun always lights one half of the Moon.';

describe('a sentence that an author has written in the key and on a handout', () => {
  const body = `${quiz(answer('Why?', 'sunlight', `working="${WORKING} We see a part of it."`))}\n:::handout[Sky slip]\n- Look up.\n- Know this: *The Sun* always lights\n  one half of the Moon.\n:::\n`;

  it('is found, with its place in the lesson', () => {
    const [found, ...others] = openLeakLesson(body, setting).find();
    expect(others).toEqual([]);
    expect(found).toEqual({
      rule: 'learner-leak',
      severity: 'error',
      place: { file: expect.stringContaining('sky-slip'), line: expect.any(Number), column: expect.any(Number) },
      message: `The working of question 1 of \`Moon quiz\` in \`lessons/test-week/input.md\` stands in the text: \`${WORKING}\`; expected none of it in a file for learners; take it out of the page, or say it in other words in the key`,
      related: { file: 'lessons/test-week/input.md', line: 18, column: 15 },
    });
  });

  it('is let pass where it is a note for the teacher, which may well say the same', () => {
    const rule = 'Never look at the Sun, not even when it is low.';
    const note = `:::teacher[Mind]\n${rule}\n:::\n\n:::handout[Sky slip]\n${rule}\n:::\n`;
    expect(search(note)).toEqual([]);
  });

  it('is let pass where it is too short to be anybody’s own', () => {
    const short = `${quiz(answer('Why?', 'sunlight', 'working="Look at it."'))}\n:::handout[Sky slip]\nLook at it.\n:::\n`;
    expect(search(short)).toEqual([]);
  });
});

describe('on one paper', () => {
  it('a question that says the working of another is a warning', () => {
    const told = quiz(
      answer('Why?', 'sunlight', `working="${WORKING}"`),
      choose(`${WORKING} Which half?`, 'this half', 'that half'),
    );
    expect(search(told)).toEqual([expect.stringMatching(/^warning The working of question 1 .* stands in the text/)]);
  });

  it('a question that says the answer of another is a warning', () => {
    const told = quiz(
      answer('Why is it round?', 'it stands opposite the Sun'),
      choose('When does Round Moon rise?', 'at sunset, since it stands opposite the Sun', 'at noon'),
    );
    expect(search(told)).toEqual([
      'warning The answer to question 1 of `Moon quiz` in `lessons/test-week/input.md` is given away by question 2: `it stands opposite the Sun`; expected questions that do not answer each other; say one of them in other words',
    ]);
    const before = `:::group-quiz[Moon quiz]\nIt stands opposite the Sun today.\n\n1. ${answer('Why is it round?', 'it stands opposite the Sun')}\n:::\n`;
    expect(search(before)).toEqual([expect.stringContaining('is given away by the words before the questions')]);
  });

  it('a question may say its own answer, and short answers stand all over a paper', () => {
    const plain = quiz(
      answer('Does the Moon get bigger, or do we see more of its sunlit side?', 'we see more of its sunlit side'),
      answer('What lights the Moon?', 'the Sun'),
      choose('Where is the Sun at sunset?', 'in the west', 'behind the Moon'),
      answer('Which hand?', 'left'),
      choose('Turn left 3 times. Where are you?', 'to the right of the door', 'left of the door'),
      answer('How many?', '3'),
      answer('Which night follows Butter Moon?', 'Short Wait'),
      answer('What is after Round Moon?', 'Second Round'),
      answer('What is before?', 'Round'),
    );
    expect(search(plain)).toEqual([]);
  });
});

describe('a picture in a question', () => {
  const nights = ['Round Moon', 'Butter Moon', 'Short Wait'];

  it('must not name what is asked for', () => {
    expect(
      search(quiz(choose('Which night is this?\n\n   ![Round Moon over the jetty](a.png)\n', ...nights)), ['a.png']),
    ).toEqual([
      'error A picture’s description of question 1 of `Moon quiz` in `lessons/test-week/input.md` names `Round Moon`, which is asked for: `Round Moon over the jetty`; expected what is seen, not its name; say what the picture shows',
    ]);
    const wrong = quiz(choose('Which night is this?\n\n   ![Not Short  wait](a.png "a Moon")\n', ...nights));
    expect(search(wrong, ['a.png'])).toEqual([expect.stringContaining('names `Short Wait`')]);
    const title = quiz(answer('Which night is this?\n\n   ![A Moon](a.png "the butter moon")\n', 'Butter Moon'));
    expect(search(title, ['a.png'])).toEqual([expect.stringContaining('names `Butter Moon`')]);
  });

  it('must not be called after it', () => {
    const body = quiz(
      choose('Which night is this?\n\n   ![A Moon over the jetty](pictures/round-moon.png)\n', ...nights),
    );
    const [found, ...others] = openLeakLesson(body, setting, ['pictures/round-moon.png']).find();
    expect(others).toEqual([]);
    expect(found).toMatchObject({
      severity: 'error',
      message: expect.stringMatching(
        /^A picture’s file name of question 1 .* names `Round Moon`.*; give the file another name$/,
      ),
      related: { file: 'lessons/test-week/pictures/round-moon.png', line: 1, column: 1 },
    });
    const glued = quiz(answer('Which night is this?\n\n   ![A Moon](roundmoon2.png)\n', 'Round Moon'));
    expect(search(glued, ['roundmoon2.png'])).toHaveLength(1);
  });

  it('may say what the question says to all', () => {
    const told = quiz(
      choose(
        'Round Moon stands over the jetty. What follows?\n\n   ![Round Moon over the jetty](round-moon.png)\n',
        'Butter Moon',
        'Short Wait',
        'Round Moon',
      ),
    );
    expect(search(told, ['round-moon.png'])).toEqual([]);
  });

  it('may say what is seen, though it is an answer as well', () => {
    const seen = quiz(choose('Which side is lit?\n\n   ![A Moon, lit on the left](a.png)\n', 'left', 'right'));
    expect(search(seen, ['a.png'])).toEqual([]);
  });

  it('may be called anything on a handout', () => {
    const body = `${quiz(answer('Which night is next?', 'Round Moon'))}\n:::handout[Round Moon]\n![Round Moon over the jetty](round-moon.png)\n:::\n`;
    expect(search(body, ['round-moon.png'])).toEqual([]);
  });
});

it('a group or the school may be the answer to a question', () => {
  const body = `:::group-quiz[Moon quiz]{groups=4}
1. ${answer('Which bird wades?', 'Heron')}

2. ${answer('Where do we learn?', 'Saltgrass Point School')}
:::
`;
  expect(search(body)).toEqual([]);
});

it('a handout may teach the very names and sentences that the quiz asks for', () => {
  const body = `:::group-quiz[Moon quiz]{groups=4 seed=names}
1. ${answer('Which group begins with Round Moon?', 'High Water')}

::question{ask=night-of-date}

::question{ask=next-in-run}

::question{ask=nights-until}
:::

:::handout[High Water]
:sentence{} The nights of High Water are Round Moon, Butter Moon and Short Wait.

::gesture-sequence{nights="High Water" tempo=72}

::score

::tonight
:::
`;
  expect(search(body)).toEqual([]);
});
