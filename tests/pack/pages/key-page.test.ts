import { describe, expect, it } from 'vitest';
import { buildFakeQuiz, buildFakeWeek } from '../fake-week.ts';
import { findAll, listElements, readText, renderPages } from '../render-pages.ts';

const renderKey = (...options: Parameters<typeof buildFakeWeek>) => {
  const page = renderPages(buildFakeWeek(...options)).get('key.html');
  if (page === undefined) throw new Error('No key.');
  return page;
};

describe('renderKeyPage', () => {
  it('says "Teacher only" in every group’s section and on every mark sheet', () => {
    const page = renderKey();
    const sections = [...findAll(page, '.group-key'), ...findAll(page, '.mark-sheet')];
    expect(sections).toHaveLength(6);
    for (const section of sections) expect(readText(section)).toContain('Teacher only');
  });

  it('gives letters, answers, other spellings, working and marks', () => {
    const [first] = findAll(renderKey(), '.key-answers').map(readText);
    expect(first).toContain('Question 1 once moreA the Sun (right)B the sea Has seen it shine on water.');
    expect(first).toContain('The Sun always lights one half.1 mark');
    expect(first).toContain('4 nightsCount on from tonight.2 marks');
    expect(first).toContain('the answer nobody else may seeAlso right: another spelling');
    expect(first).toContain('Capital letters and marks on letters do not matter.1 mark');
  });

  it('numbers the answers as the papers do', () => {
    const numbers = listElements(renderKey()).flatMap(({ element, around }) =>
      element.tagName === 'li' && around.at(-1)?.tagName === 'ol' ? element.properties['value'] : [],
    );
    expect(numbers.slice(0, 3)).toEqual([1, 2, 3]);
  });

  it('has a mark sheet with a row for each group and a column for each question and the total', () => {
    const quizzes = [buildFakeQuiz(1, ['Heron', 'Kelp', 'Oyster'])];
    const page = renderKey({ lessons: [{ quizzes }] });
    const scopes = findAll(page, 'th').map(({ properties }) => properties['scope']);
    expect(scopes.filter((scope) => scope === 'col')).toHaveLength(5);
    expect(scopes.filter((scope) => scope === 'row')).toHaveLength(3);
    expect(findAll(page, 'td')).toHaveLength(12);
    expect(findAll(page, 'thead').map(readText)).toEqual(['Group1 1 mark2 2 marks3 1 markTotal 4 marks']);
  });

  it('says so when the week has no quiz', () => {
    const page = renderKey({ lessons: [{ quizzes: [] }] });
    expect(findAll(page, 'main').map(readText)).toEqual(['There is no quiz this week.']);
  });
});
