import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { resolveWeek, type WeekFiles, type WeekSetting } from '../../../src/lesson/resolve-week.ts';
import { DEMO_CONTENT, openContent, readWeekFolder } from '../../directives/build-week.ts';
import { listFolders, readCase } from '../../directives/read-case.ts';
import { openLeakWeek } from './leak-week.ts';

const LESSONS = new URL('../../../lessons/', import.meta.url);
const FIXTURES = new URL('../../fixtures/directives/', import.meta.url);

const weeks = readdirSync(LESSONS, { withFileTypes: true }).flatMap((entry) => (entry.isDirectory() ? entry.name : []));
const cases = listFolders(FIXTURES)
  .filter((name) => name !== 'content')
  .flatMap((name) => listFolders(new URL(`${name}/`, FIXTURES)).map((each) => `${name}/${each}`));

const fixed = openContent();

function isWhole(files: WeekFiles, setting: WeekSetting): boolean {
  return resolveWeek(files, setting).week !== undefined;
}

describe('no leak is found in', () => {
  it.each(weeks)('the demonstration week %s', (name) => {
    const files = readWeekFolder(new URL(`${name}/`, LESSONS), name);
    expect(openLeakWeek(files, openContent(DEMO_CONTENT)).find()).toEqual([]);
  });

  it.each(cases.filter((name) => isWhole(readCase(new URL(`${name}/`, FIXTURES)), fixed)))('the case %s', (name) => {
    expect(openLeakWeek(readCase(new URL(`${name}/`, FIXTURES)), fixed).find()).toEqual([]);
  });
});
