import { describe, expect, it } from 'vitest';
import { makeAssets, makeSvg } from '../content/media/sample-files.ts';
import { buildWeek, DEMO_CONTENT, listTexts, makeWeek, openContent, writeLesson } from './build-week.ts';

/** The gestures of the demonstration, each with a picture of the author's own. */
function addPictures(text: string): string {
  let number = 0;
  return text.replace(/^ {4}cue:/gm, (cue) => {
    number += 1;
    return `    picture: { file: ${number}.svg, credit: "Ana" }\n${cue}`;
  });
}

const images = Object.fromEntries(
  Array.from({ length: 60 }, (_, index) => [`${index + 1}.svg`, makeSvg(`<circle cx="20" cy="15" r="${index + 1}"/>`)]),
);

function buildQuiz(ask: string, changeGestures = addPictures) {
  const body = `:::group-quiz[Which?]{groups=2}\n::question{ask=${ask}}\n:::`;
  const setting = openContent(DEMO_CONTENT, undefined, { assets: makeAssets({ images }), changeGestures });
  const { plan, diagnostics } = buildWeek(makeWeek({ 'a.md': writeLesson(body) }), setting);
  if (plan === undefined) throw new Error(JSON.stringify(diagnostics));
  return plan;
}

function listPictures(html: string): string[] {
  return [...new Set(html.match(/(?<=")images\/picture-[^"]+/g) ?? [])].sort();
}

describe('the author’s own pictures in a quiz', () => {
  const plan = buildQuiz('gesture-of-night');
  const paths = plan.files.map(({ path }) => path);
  const papers = [...listTexts(plan)].find(([path]) => /^learners\/.*quiz/.test(path))?.[1] ?? '';

  it('are packed for learners as far as a paper shows them', () => {
    const shown = listPictures(papers);
    expect(shown.length).toBeGreaterThanOrEqual(4);
    const packed = paths
      .filter((path) => path.startsWith('learners/images/'))
      .map((path) => path.replace('learners/', ''));
    expect(packed).toEqual(shown);
  });

  it('are packed for the key too', () => {
    const shown = listPictures(listTexts(plan).get('key-3-wednesday.html') ?? '');
    expect(shown.length).toBeGreaterThanOrEqual(4);
    expect(paths).toEqual(expect.arrayContaining(shown));
  });

  it('are not packed for learners where a quiz shows none', () => {
    const other = buildQuiz('night-of-date').files.map(({ path }) => path);
    expect(other.filter((path) => path.startsWith('learners/images/'))).toEqual([]);
  });

  it('are drawings where the file has no pictures', () => {
    const drawn = buildQuiz('gesture-of-night', (text) => text);
    expect(drawn.files.filter(({ path }) => path.includes('images/'))).toEqual([]);
    const paper = [...listTexts(drawn)].find(([path]) => /^learners\/.*quiz/.test(path))?.[1] ?? '';
    expect(paper).toContain('class="figure quiz-figure" role="img" aria-label="');
  });
});
