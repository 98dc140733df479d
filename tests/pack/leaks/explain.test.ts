import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { createLabels } from '../../../src/content/labels.ts';
import { parseLabelFile } from '../../../src/content/parse-label-file.ts';
import { isKitScript, isLabelText, isOfLabelWords, isPlayerText, isRunData } from '../../../src/pack/leaks/explain.ts';

const path = 'content/labels/fr.yaml';
const { value: french } = parseLabelFile({ path, text: readFileSync(path, 'utf8') });

describe('fixed words of pages', () => {
  it('are known in every language', () => {
    for (const labels of [createLabels('en'), createLabels('fr', french)]) {
      expect(isLabelText(labels.text('for-learners'), labels)).toBe(true);
      expect(isPlayerText(`${labels.text('player-play')} ${labels.text('player-rest')} 2`, labels)).toBe(true);
      expect(isPlayerText(labels.text('for-learners'), labels)).toBe(false);
      expect(isOfLabelWords(['butter', 'moon'], labels)).toBe(false);
    }
  });
});

describe('scripts', () => {
  const json = {
    name: 'script',
    attributes: [{ name: 'type', value: 'application/json', offset: 8 }],
    hides: false,
    selfClosing: false,
  };

  it('of a run hold numbers under fixed names and nothing else', () => {
    expect(isRunData(json, '{"from":0,"events":[[1,0.5],[2,-3]]}')).toBe(true);
    expect(isRunData(json, '{"from":"0"}')).toBe(false);
    expect(isRunData(json, '{"right":0}')).toBe(false);
    expect(isRunData(json, '{"from":0')).toBe(false);
    expect(isRunData({ ...json, attributes: [] }, '{"from":0}')).toBe(false);
  });

  it('of the kit are known letter by letter', () => {
    const player = readFileSync('src/pack/pages/gesture-player.js', 'utf8');
    expect(isKitScript(player)).toBe(true);
    expect(isKitScript(`${player} `)).toBe(false);
  });
});
