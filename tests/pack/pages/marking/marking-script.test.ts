import { describe, expect, it } from 'vitest';
import { createLabels } from '../../../../src/content/labels.ts';
import { renderMarkingAnswers, renderMarkingWords } from '../../../../src/pack/pages/marking-help.ts';
import { dropModuleWords, markingScript } from '../../../../src/pack/pages/marking-script.ts';
import type { QuizSheet } from '../../../../src/quiz/model.ts';

describe('the script of the marking help', () => {
  it('is one plain script, which stores nothing and asks for nothing', () => {
    expect(() => new Function(markingScript)).not.toThrow();
    expect(markingScript).not.toMatch(/^\s*(import|export)\b/m);
    expect(markingScript).not.toMatch(/<\/script|<!--/i);
    for (const way of ['Storage', 'indexedDB', 'cookie', 'fetch', 'XMLHttp', 'location', 'history', 'sendBeacon']) {
      expect(markingScript).not.toContain(way);
    }
  });

  it('leaves out the words that only modules know, and nothing else', () => {
    const module =
      "import {\n  one,\n  two,\n} from './other.js';\nimport { x } from './x.js';\n\n/** Says so. */\nexport function say() {\n  return 'import it; export it';\n}\n";
    expect(dropModuleWords(module)).toBe("/** Says so. */\nfunction say() {\n  return 'import it; export it';\n}\n");
  });
});

describe('the data of the marking help', () => {
  const labels = createLabels('en');

  it('cannot end its own element, whatever a group is called', () => {
    const group = '</script><script>alert(1)</script>';
    const quiz: QuizSheet = { title: 'Quiz', number: 1, papers: [], key: [{ group, answers: [], totalMarks: 0 }] };
    const { properties, children } = renderMarkingAnswers(quiz);
    expect(properties['type']).toBe('application/json');
    const [data] = children;
    const text = data?.type === 'text' ? data.value : '';
    expect(text).not.toContain('<');
    expect(JSON.parse(text)).toEqual([{ group, answers: [] }]);
  });

  it('has every word that the script asks for, with the names that it fills in', () => {
    const [data] = renderMarkingWords(labels).children;
    const words: Record<string, unknown> = JSON.parse(data?.type === 'text' ? data.value : '');
    const asked = [...markingScript.matchAll(/\bwords\.(\w+)/g)].map(([, name]) => name ?? '');
    const fieldWords = [...(/FIELD_WORDS = \{[^}]*\}/.exec(markingScript)?.[0] ?? '').matchAll(/'(\w+)'/g)];
    const used = new Set([...asked, ...fieldWords.map(([, name]) => name ?? ''), 'right', 'partly', 'wrong']);
    expect(used.size).toBeGreaterThan(30);
    expect([...used].filter((name) => !(name in words))).toEqual([]);
    expect(Object.keys(words).filter((name) => !used.has(name))).toEqual([]);
  });
});
