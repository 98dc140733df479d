import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { fillLabel } from '../../src/content/fill-label.ts';
import { createLabels } from '../../src/content/labels.ts';

const NIGHT = h('span', { lang: 'x-night' }, 'N');
const NEXT = h('span', { lang: 'x-night' }, 'M');

describe('fillLabel', () => {
  it('puts elements where the placeholders stood', () => {
    expect(fillLabel(createLabels('en'), 'quiz-working-next', { night: [NIGHT], next: [NEXT] })).toEqual([
      { type: 'text', value: 'After ' },
      NIGHT,
      { type: 'text', value: ' comes ' },
      NEXT,
      { type: 'text', value: '.' },
    ]);
  });

  it('follows the word order of a translation', () => {
    const labels = createLabels('xx', {
      id: 'xx',
      language: 'xx',
      labels: { 'quiz-working-next': '{next}, {night}' },
    });
    expect(fillLabel(labels, 'quiz-working-next', { night: 'before', next: [NEXT] })).toEqual([
      NEXT,
      { type: 'text', value: ', ' },
      { type: 'text', value: 'before' },
    ]);
  });

  it('takes text and numbers as they are, braces too', () => {
    const filled = fillLabel(createLabels('en'), 'quiz-working-date', { date: '{night}', number: 0, night: [NIGHT] });
    expect(filled.map((node) => (node.type === 'text' ? node.value : '*')).join('')).toBe(
      '{night} is night 0 of the month: *.',
    );
  });
});
