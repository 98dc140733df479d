import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { runCommand } from '../../src/cli/run-command.ts';
import { makeMp3, makeSvg } from '../content/media/sample-files.ts';
import { createFakeTerminal } from './fake-terminal.ts';

/** A copy of the demonstration's content in a folder of this test's own. */
let content: string;

beforeEach(() => {
  content = join(mkdtempSync(join(tmpdir(), 'lessontide-media-')), 'content');
  cpSync('content', content, { recursive: true });
  for (const kind of ['images', 'sounds']) mkdirSync(join(content, kind), { recursive: true });
});

afterEach(() => rmSync(join(content, '..'), { recursive: true, force: true }));

/** Puts one text in the place of another in a content file; the other must be there. */
function edit(file: string, from: string, to: string): void {
  const text = readFileSync(join(content, file), 'utf8');
  if (!text.includes(from)) throw new Error(`${file} does not hold ${from}`);
  writeFileSync(join(content, file), text.replace(from, to));
}

async function check(...words: string[]) {
  const terminal = createFakeTerminal();
  const status = await runCommand(['check', ...words, '--content', content], terminal);
  return { status, told: terminal.told.map((line) => line.replaceAll(`${content}/`, '')) };
}

const COVER = '  cover:\n';
const PICTURE = '  cover:\n    picture: swan.svg\n';
const NIGHT = '      - name: Maybe Moon\n';
const SPOKEN = `${NIGHT}        recording: { file: maybe.mp3, credit: The oldest class, permission: For this school }\n`;

describe('check', () => {
  it('reads the pictures and sounds that content names, and takes them when they are good', async () => {
    writeFileSync(join(content, 'images/swan.svg'), makeSvg());
    writeFileSync(join(content, 'sounds/maybe.mp3'), makeMp3());
    edit('gestures/estuary.yaml', COVER, PICTURE);
    edit('calendars/estuary.yaml', NIGHT, SPOKEN);
    expect(await check('round-moon')).toEqual({ status: 0, told: [] });
  });

  it('tells what is wrong with them at the line that names them', async () => {
    writeFileSync(join(content, 'images/swan.svg'), makeSvg('\n<script/>'));
    writeFileSync(join(content, 'sounds/maybe.mp3'), 'no sound');
    edit('gestures/estuary.yaml', COVER, PICTURE);
    edit('calendars/estuary.yaml', NIGHT, SPOKEN);
    const { status, told } = await check('round-moon');
    expect(status).toBe(1);
    expect(told).toEqual([
      expect.stringMatching(
        /^calendars\/estuary\.yaml:\d+:28 error: .*`maybe\.mp3` holds no kind of file.*\[media-file\]$/,
      ),
      'gestures/estuary.yaml:8:14 error: `gestures.cover.picture.file`: `swan.svg` holds a script (`<script>`), expected a still picture that needs nothing else; take it out, or save the picture as PNG. (see images/swan.svg:2:1) [media-file]',
    ]);
  });

  it('does not look at files that nothing names', async () => {
    writeFileSync(join(content, 'images/odd.svg'), '<svg>');
    expect((await check('round-moon')).told).toEqual([]);
  });

  it.each([['round-moon'], []])('warns of gestures that look alike, once: %s', async (...words) => {
    edit(
      'gestures/estuary.yaml',
      COVER,
      '  cover-again:\n    both: { shape: open, at: face, palm: back, fingers: up }\n    move: close\n    cue: Cover.\n    seated: Cover.\n  cover:\n',
    );
    const { status, told } = await check(...words);
    expect(status).toBe(0);
    expect(told).toEqual([
      expect.stringMatching(
        /^gestures\/estuary\.yaml:12:3 warning: `gestures\.cover`: found a gesture that looks like `cover-again` .*\(see gestures\/estuary\.yaml:7:3\) \[gestures-alike\]$/,
      ),
    ]);
  });
});
