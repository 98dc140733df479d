import type { Root } from 'hast';
import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { createLabels } from '../../../src/content/labels.ts';
import { renderKeyAnswer } from '../../../src/pack/pages/key-answer.ts';
import type { ExpectedAnswer, Forgiveness, KeyOption } from '../../../src/quiz/model.ts';
import { findAll, readText } from '../render-pages.ts';

const text = (value: string) => [{ type: 'text' as const, value }];
const LABELS = createLabels('en');

function render(expected: ExpectedAnswer, more: { hint?: string } = {}): Root {
  const answer = { number: 3, prompt: text('Asked?'), expected, working: text('Because.'), marks: 2, ...more };
  return { type: 'root', children: [renderKeyAnswer(answer, 'k-g1-q3', LABELS)] };
}

const line = (accepted: string, forgive: Forgiveness, slips: readonly { answer: string; means: string }[] = []) =>
  render({
    kind: 'line',
    accepted: [text(accepted)],
    forgive,
    slips: slips.map(({ answer, means }) => ({ answer, means: text(means) })),
  });

describe('renderKeyAnswer', () => {
  it('shows every option in the order of the paper, and rings the letters of right ones', () => {
    const options = ['the sea', 'the Sun', 'a lamp'].map((word, place) => ({
      letter: 'ABC'.charAt(place),
      content: text(word),
      right: place === 1,
      means: place === 0 ? text('Has seen it shine on water.') : [],
    }));
    const item = render({ kind: 'options', options });
    expect(findAll(item, '.key-option').map(readText)).toEqual([
      'A the sea Has seen it shine on water.',
      'B the Sun (right)',
      'C a lamp',
    ]);
    expect(findAll(item, '.is-right').map(readText)).toEqual(['B the Sun (right)']);
  });

  it('sets options in a row where nothing is to be said of any, and pictures two by two', () => {
    const [one, other] = ['A', 'B'].map((letter) => ({
      letter,
      content: text(letter),
      right: letter === 'A',
      means: [],
    }));
    if (one === undefined || other === undefined) throw new Error('No options.');
    const nameClasses = (options: readonly KeyOption[]) =>
      findAll(render({ kind: 'options', options }), '.key-options')[0]?.properties['className'];
    expect(nameClasses([one, other])).toContain('brief');
    const picture = { ...other, content: [h('svg')], means: text('Took the next one.') };
    expect(nameClasses([one, picture])).toContain('pictures');
  });

  it.each([
    [{ case: true, accents: true }, 'Capital letters, macrons and other marks on letters do not matter.'],
    [{ case: true, accents: false }, 'Capital letters do not matter; macrons and other marks on letters do.'],
    [{ case: false, accents: true }, 'Macrons and other marks on letters do not matter; capital letters do.'],
    [{ case: false, accents: false }, 'Capital letters, macrons and other marks on letters must be right.'],
  ])('says how strictly to read a word (%o)', (forgive, words) => {
    expect(findAll(line('Rā', forgive), '.key-forgive').map(readText)).toEqual([words]);
  });

  it('says nothing of letters where the answer is a number', () => {
    expect(findAll(line('12', { case: true, accents: true }), '.key-forgive')).toEqual([]);
  });

  it('tells what wrong answers to be expected mean', () => {
    const item = line('3', { case: true, accents: true }, [{ answer: '4', means: 'Counted tonight as well.' }]);
    expect(findAll(item, '.key-slip').map(readText)).toEqual(['4 Counted tonight as well.']);
  });

  it('writes an order as its letters and its words', () => {
    const items = [
      { letter: 'B', content: text('New') },
      { letter: 'A', content: text('Full') },
    ];
    expect(findAll(render({ kind: 'order', items }), '.key-order').map(readText)).toEqual(['In order: B ANewFull']);
  });

  it('writes pairs as number and letter', () => {
    const pairs = [
      { left: text('New'), right: { letter: 'B', content: text('dark') } },
      { left: text('Full'), right: { letter: 'A', content: text('round') } },
    ];
    expect(findAll(render({ kind: 'match', pairs }), '.key-pairs').map(readText)).toEqual([
      '1 B New dark2 A Full round',
    ]);
  });

  it('lists a rubric with its marks', () => {
    const rubric = [
      { marks: 2, words: 'says why' },
      { marks: 1, words: 'says what' },
    ];
    const rows = findAll(render({ kind: 'lines', rubric }), 'tr').map(readText);
    expect(rows).toEqual(['2 markssays why', '1 marksays what']);
  });

  it('shows the Moon to be drawn, in ink and in words', () => {
    const drawing = [{ type: 'element' as const, tagName: 'svg', properties: {}, children: [] }];
    const item = render({ kind: 'disc', drawing, description: 'a half Moon, lit on the left' });
    expect(findAll(item, '.key-drawing').map(readText)).toEqual([
      'It looks like this: a half Moon, lit on the leftHalf of the marks for how much is lit, half for the side that is lit.',
    ]);
    expect(findAll(item, 'svg')).toHaveLength(1);
  });

  it('gives the question, the working, the hint and the marks', () => {
    const words = readText(render({ kind: 'lines', rubric: [{ marks: 2, words: 'says why' }] }, { hint: 'Look up.' }));
    expect(words).toBe('Asked?2 markssays whySay: Because.If they are stuck: Look up.2 marks');
  });
});
