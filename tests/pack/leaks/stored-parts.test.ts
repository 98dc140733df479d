import { describe, expect, it } from 'vitest';
import { readMarkup } from '../../../src/pack/leaks/read-markup.ts';
import { findUsedPart } from '../../../src/pack/leaks/stored-parts.ts';
import { openContent } from '../../directives/build-week.ts';
import { openLeakLesson, pathOf, plant } from './leak-week.ts';

const QUIZ = `:::group-quiz[Which hand?]{groups=4 seed=hands}
::question{ask=gesture-of-night}

1. Draw the Moon of Wednesday.

   ::answer{draw=wednesday}
:::
`;

const opened = openLeakLesson(QUIZ, openContent());
const PAPERS = pathOf(opened, 'quiz');
const page = String(opened.files.find(({ path }) => path === PAPERS)?.content);

const find = (from: string | RegExp, to: string) =>
  opened.find(plant(opened.files, PAPERS, from, to)).map(({ message }) => message);

describe('parts of drawings that a paper writes once', () => {
  it('stand on the papers of this test, within options', () => {
    expect(page).toMatch(/<svg class="figure-store" aria-hidden="true">.*<\/svg><\/footer>/);
    expect(page).toMatch(/quiz-figure.*?<use href="#drawn-\d+"\/>/);
  });

  it('are no difference between options that show them and options that do not', () => {
    expect(opened.find()).toEqual([]);
  });

  it('are read where they are used: a mark at one option is found in them too', () => {
    const marked = '<g id="drawn-99"><path class="x" d="M0 0h1"/></g></svg></footer>';
    const store = plant(opened.files, PAPERS, '</svg></footer>', marked);
    const used = plant(store, PAPERS, /(?<=quiz-figure".*?)<\/svg>/, '<use href="#drawn-99"/></svg>');
    expect(opened.find(store)).toEqual([]);
    expect(opened.find(used).map(({ message }) => message)).toEqual([
      expect.stringMatching(/^Found `.*` in a file for learners; expected the same around each option of question 1/),
    ]);
  });

  it('are no way to draw what a learner is to draw', () => {
    const expected = opened.week.lessons[0]?.quizzes[0]?.key[0]?.answers.find(
      ({ expected: { kind } }) => kind === 'disc',
    );
    const outline = /"d":"([^"]{12,})"/.exec(JSON.stringify(expected))?.[1] ?? '';
    const store = plant(opened.files, PAPERS, '</svg></footer>', `<path id="drawn-99" d="${outline}"/></svg></footer>`);
    const used = plant(store, PAPERS, /(?<=class="empty-disc"[^>]*>)/, '<use href="#drawn-99"/>');
    expect(opened.find(store)).toEqual([]);
    expect(opened.find(used).map(({ message }) => message)).toEqual([
      expect.stringContaining('What is to be drawn in question 2 of `Which hand?`'),
    ]);
  });

  it('say nothing else by their names', () => {
    expect(find('href="#drawn-1"', 'href="#drawn-one"')).toEqual([
      expect.stringContaining('expected the same around each option'),
    ]);
  });
});

describe('findUsedPart', () => {
  const { elements } = readMarkup(
    '<svg><use href="#drawn-1"/><use href="#seas"/><use/></svg><svg><path id="seas"/><g id="drawn-1"><path/></g></svg>',
    new Map(),
  );
  const uses = elements.filter(({ tag }) => tag.name === 'use');

  it('finds a stored part by its address, and nothing by another', () => {
    const found = uses.map((use) => findUsedPart(elements, use));
    expect(found).toEqual([elements.findIndex(({ tag }) => tag.name === 'g'), undefined, undefined]);
  });

  it('finds nothing for an element that uses nothing', () => {
    expect(elements.filter(({ tag }) => tag.name !== 'use').map((each) => findUsedPart(elements, each))).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });
});
