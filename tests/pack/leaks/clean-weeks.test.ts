import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { DEMO_CONTENT, openContent, readWeekFolder } from '../../directives/build-week.ts';
import { openLeakWeek } from './leak-week.ts';

const LESSONS = new URL('../../../lessons/', import.meta.url);
const WEEKS = readdirSync(LESSONS, { withFileTypes: true }).filter((entry) => entry.isDirectory());

describe.each(WEEKS.map(({ name }) => name))('the demonstration week %s', (name) => {
  it('has no leak', () => {
    const files = readWeekFolder(new URL(`${name}/`, LESSONS), name);
    expect(openLeakWeek(files, openContent(DEMO_CONTENT)).find()).toEqual([]);
  });
});
