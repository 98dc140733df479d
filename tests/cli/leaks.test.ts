import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { runCommand } from '../../src/cli/run-command.ts';
import { bigEndian, joinBytes, makePng } from '../content/media/sample-files.ts';
import { createFakeTerminal } from './fake-terminal.ts';

/** A folder of this test's own, with a week of one lesson and a place for packs. */
let work: string;
let week: string;
let out: string;

const LESSON = `---
title: A lesson
day: wednesday
minutes: 10
intentions: [We learn]
success: [I can]
materials: []
---

:::group-quiz[Moon quiz]{groups=2 seed=leaks}
1. Where does the light of the Moon come from?

   ::answer[from the far Sun]{working="The Sun always lights one half of the Moon."}

::question{ask=night-of-date}
:::

:::handout[Sky slip]
Draw what you see.
:::
`;

beforeEach(() => {
  work = mkdtempSync(join(tmpdir(), 'lessontide-leaks-'));
  week = join(work, 'week');
  out = join(work, 'packs');
  cpSync('lessons/round-moon/week.yaml', join(week, 'week.yaml'));
  writeFileSync(
    join(week, 'week.yaml'),
    readFileSync(join(week, 'week.yaml'), 'utf8').replace(/^days: .*$/m, 'days: [wednesday]'),
  );
  writeFileSync(join(week, 'wednesday.md'), LESSON);
});

afterEach(() => rmSync(work, { recursive: true, force: true }));

async function run(...words: string[]) {
  const terminal = createFakeTerminal();
  const status = await runCommand([...words, '--out', out], terminal);
  return { status, printed: terminal.printed, told: terminal.told };
}

/** Puts one text in the place of another in a file; the other must be there. */
function edit(path: string, from: string, to: string): void {
  const text = readFileSync(path, 'utf8');
  if (!text.includes(from)) throw new Error(`${path} does not hold ${from}.`);
  writeFileSync(
    path,
    text.replace(from, () => to),
  );
}

/** The path of the file in the built learners' part whose name holds a word. */
function findBuilt(word: string): string {
  const folder = join(out, 'week', 'learners');
  const name = readdirSync(folder).find((each) => each.includes(word));
  if (name === undefined) throw new Error(`No file is called ${word}.`);
  return join(folder, name);
}

const WORKING = 'The Sun always lights one half of the Moon.';

describe('check', () => {
  it('finds nothing in a week, nor in its pack as it was built', async () => {
    expect(await run('check', week)).toMatchObject({ status: 0, told: [] });
    expect(await run('build', week)).toMatchObject({ status: 0, told: [] });
    expect(await run('check', week)).toMatchObject({ status: 0, told: [] });
  });

  it('finds what was planted in a page of a built pack', async () => {
    await run('build', week);
    const path = findBuilt('quiz');
    edit(path, '</main>', `<p title="from the far sun">a</p></main>`);
    const { status, told } = await run('check', week);
    expect(told).toEqual([
      expect.stringMatching(
        /quiz-1\.html:\d+:\d+ error: The answer to question 1 of `Moon quiz` in `.*wednesday\.md` stands in the attribute `title` of `<p>`: `from the far Sun`; expected none of it in a file for learners; the file is not as the kit builds it now; build the week again \[learner-leak\]$/,
      ),
    ]);
    expect(told[0]?.startsWith(path)).toBe(true);
    expect(status).toBe(1);
    // Built anew, it is as it should be.
    expect((await run('build', week, '--replace')).status).toBe(0);
    expect((await run('check', week)).status).toBe(0);
  });

  it('finds it as JSON, and in any file that was put there, hidden or not', async () => {
    await run('build', week);
    const folder = join(out, 'week', 'learners');
    const text = joinBytes('Comment\0', WORKING);
    const chunk = joinBytes(bigEndian(text.length), 'tEXt', text, bigEndian(0));
    const png = makePng(4, 4);
    writeFileSync(join(folder, 'a.png'), joinBytes(png.subarray(0, 33), chunk, png.subarray(33)));
    writeFileSync(join(folder, '.notes'), WORKING);
    const { status, printed } = await run('check', week, '--json');
    const found: { place: { file: string }; message: string }[] = JSON.parse(printed.join('\n'));
    expect(found.map(({ place }) => place.file)).toEqual([join(folder, '.notes'), join(folder, 'a.png')]);
    expect(found[1]?.message).toContain('stands in its PNG text chunk Comment');
    expect(status).toBe(1);
  });

  it('has nothing against a pack of an older lesson', async () => {
    await run('build', week);
    edit(join(week, 'wednesday.md'), 'Draw what you see.', 'Draw the Moon.');
    edit(join(week, 'wednesday.md'), 'ask=night-of-date', 'ask=next-in-run');
    edit(join(week, 'week.yaml'), '2026-07-27', '2026-08-24');
    expect(await run('check', week)).toMatchObject({ status: 0, told: [] });
  });

  it('finds in a pack of an older lesson what only the key says now', async () => {
    edit(join(week, 'wednesday.md'), 'Draw what you see.', 'It is sunlight from the far side of the sea.');
    await run('build', week);
    edit(join(week, 'wednesday.md'), 'It is sunlight from the far side of the sea.', 'Draw what you see.');
    edit(join(week, 'wednesday.md'), WORKING, 'It is sunlight from the far side of the sea.');
    const { status, told } = await run('check', week);
    expect(told).toEqual([
      expect.stringMatching(/sky-slip\.html:\d+:\d+ error: The working of question 1 .* build the week again/),
    ]);
    expect(status).toBe(1);
  });

  it('finds what the author has written on a handout too, and where', async () => {
    edit(join(week, 'wednesday.md'), 'Draw what you see.', `Draw what you see.\n\nMind: ${WORKING}`);
    const { status, told } = await run('check', week);
    expect(told).toEqual([
      expect.stringMatching(
        /^week\/learners\/.*sky-slip\.html:\d+:\d+ error: .* \(see .*wednesday\.md:21:7\) \[learner-leak\]$/,
      ),
    ]);
    expect(status).toBe(1);
  });
});

describe('build', () => {
  it('writes nothing after a leak, and keeps the last good pack', async () => {
    await run('build', week);
    const before = readFileSync(findBuilt('sky-slip'), 'utf8');
    edit(join(week, 'wednesday.md'), 'Draw what you see.', `Mind: ${WORKING}`);
    const { status, told } = await run('build', week);
    expect(status).toBe(1);
    expect(told).toEqual([
      expect.stringContaining('The working of question 1 of `Moon quiz`'),
      expect.stringContaining('not built, 1 mistake above; the last good pack, if any, is as it was'),
    ]);
    expect(readFileSync(findBuilt('sky-slip'), 'utf8')).toBe(before);
    rmSync(out, { recursive: true });
    await run('build', week);
    expect(existsSync(join(out, 'week'))).toBe(false);
  });

  it('builds where there is only a warning, and tells it', async () => {
    edit(
      join(week, 'wednesday.md'),
      '::question{ask=night-of-date}',
      '2. It comes from the far Sun. Which day is it?\n\n   ::answer[noon]',
    );
    const { status, told } = await run('build', week);
    expect(told).toEqual([expect.stringContaining('warning: The answer to question 1 of `Moon quiz`')]);
    expect(status).toBe(0);
  });
});
