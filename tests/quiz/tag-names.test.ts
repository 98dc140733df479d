import type { ElementContent } from 'hast';
import { describe, expect, it } from 'vitest';
import { renderName } from '../../src/content/render-name.ts';
import { drawWritten } from '../../src/quiz/draw-question.ts';
import { tagAllOrNone, tagName, tagNames } from '../../src/quiz/tag-names.ts';
import { choice, makeFacts, text } from './quiz-helpers.ts';

const { calendar: made } = makeFacts();
const calendar = { ...made, language: 'fr' };
const [group] = calendar.groups;
const [night, other] = group?.nights.map(({ name }) => name) ?? [];
if (group === undefined || night === undefined || other === undefined) throw new Error('The sky has no two nights.');
const tagged = (name: string) => [renderName(name, 'fr')];
const strong = (children: ElementContent[]): ElementContent[] => [
  { type: 'element', tagName: 'strong', properties: {}, children },
];

describe('tagNames', () => {
  it('tags what is a name of a night, a group or a month and nothing else', () => {
    const month = calendar.months[0]?.name ?? '';
    for (const name of [night, group.name, month]) expect(tagNames(text(name), calendar)).toEqual(tagged(name));
    expect(tagNames(text(`not ${night}`), calendar)).toEqual(text(`not ${night}`));
    expect(tagName('the sea', calendar)).toEqual({ type: 'text', value: 'the sea' });
  });

  it('knows a name in capitals or bold, and keeps both', () => {
    expect(tagNames(text(night.toUpperCase()), calendar)).toEqual(tagged(night.toUpperCase()));
    expect(tagNames(strong(text(night)), calendar)).toEqual(strong(tagged(night)));
    expect(tagNames([...text(night), ...strong(text(other))], calendar)).toEqual([
      ...text(night),
      ...strong(text(other)),
    ]);
  });

  it('does not tag what has a language', () => {
    expect(tagNames(tagged(night), calendar)).toEqual(tagged(night));
  });
});

describe('tagAllOrNone', () => {
  const options = (...names: string[]) => names.map((name) => ({ content: text(name) }));

  it('tags options where all are names, and none where a tag would tell names from made-up ones', () => {
    expect(tagAllOrNone(options(night, other), calendar)).toEqual([
      { content: tagged(night) },
      { content: tagged(other) },
    ]);
    const mixed = options(night, 'Moon of nobody');
    expect(tagAllOrNone(mixed, calendar)).toBe(mixed);
  });
});

describe('drawWritten', () => {
  const place = { file: 'lesson.md', line: 1, column: 1 };
  const prompt = text('Which?');

  it('tags names in options, in what is put in order, and on both sides of what is matched', () => {
    expect(drawWritten(asWritten(choice('Which?', [`+${night}`, other])), calendar).answer).toEqual({
      kind: 'options',
      right: [tagged(night)],
      wrong: [{ content: tagged(other), means: [] }],
    });
    const items = [text(night), text('the sea')];
    expect(drawWritten({ kind: 'order', place, prompt, items }, calendar).answer).toEqual({
      kind: 'order',
      items: [tagged(night), text('the sea')],
    });
    const pairs = [{ left: text('the sea'), right: text(night) }];
    const headings = [text('left'), text(night)] as const;
    expect(drawWritten({ kind: 'match', place, prompt, headings, pairs }, calendar).answer).toEqual({
      kind: 'match',
      headings,
      pairs: [{ left: text('the sea'), right: tagged(night) }],
    });
  });
});

function asWritten(source: ReturnType<typeof choice>) {
  if (source.kind === 'computed') throw new Error('A choice is written.');
  return source;
}
