import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { listWeeks, readContent, readWeek } from '../../src/node/read-content.ts';

let folder: string;
let week: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'lessontide-read-'));
  week = join(folder, 'week');
  mkdirSync(week);
  writeFileSync(join(week, 'week.yaml'), 'title: A week\n');
});

afterEach(() => rmSync(folder, { recursive: true, force: true }));

const listLessons = () => readWeek(week).lessons.map(({ path }) => path.slice(path.indexOf('/week/') + 6));

describe('readWeek', () => {
  it('takes files for lessons, not folders', () => {
    mkdirSync(join(week, 'a.md'));
    writeFileSync(join(week, 'b.md'), 'text');
    expect(listLessons()).toEqual(['b.md']);
  });

  it('passes over what editors and systems hide beside the files', () => {
    writeFileSync(join(week, '._monday.md'), Buffer.from([0, 5, 22, 7]));
    symlinkSync('somebody@somewhere.4711', join(week, '.#monday.md'));
    mkdirSync(join(week, '.old'));
    writeFileSync(join(week, '.old/monday.md'), 'text');
    expect(listLessons()).toEqual([]);
  });

  it('follows links to files and folders, and comes to an end', () => {
    writeFileSync(join(folder, 'elsewhere.md'), 'text');
    symlinkSync('../elsewhere.md', join(week, 'linked.md'));
    mkdirSync(join(folder, 'pictures'));
    writeFileSync(join(folder, 'pictures/moon.png'), '');
    symlinkSync('../pictures', join(week, 'pictures'));
    symlinkSync('.', join(week, 'itself'));
    symlinkSync('../week', join(folder, 'pictures/back'));
    expect(listLessons()).toEqual(['linked.md']);
    expect(readWeek(week).pictures).toEqual(['pictures/moon.png']);
  });

  it('does not drop a lesson in silence whose link leads nowhere', () => {
    symlinkSync('nowhere.md', join(week, 'b.md'));
    expect(() => readWeek(week)).toThrow(`\`${join(week, 'b.md')}\` is not there, or is a link that leads nowhere`);
  });

  it('asks for week.yaml to be a file', () => {
    rmSync(join(week, 'week.yaml'));
    mkdirSync(join(week, 'week.yaml'));
    expect(() => readWeek(week)).toThrow('There is no file `week.yaml`');
  });
});

describe('listWeeks', () => {
  it('lists folders with a week.yaml, linked ones too', () => {
    mkdirSync(join(folder, 'no-week'));
    symlinkSync('week', join(folder, 'also'));
    writeFileSync(join(folder, 'README.md'), '');
    expect(listWeeks(folder)).toEqual(['also', 'week']);
    expect(listWeeks(join(folder, 'nowhere'))).toEqual([]);
  });
});

describe('readContent', () => {
  it('wants a folder', () => {
    expect(() => readContent(join(folder, 'nowhere'))).toThrow('There is no folder');
    expect(() => readContent(join(week, 'week.yaml'))).toThrow('There is no folder');
  });
});
