import { decodeReferences } from './decode-text.ts';

/** Text that no tag parts, or only tags within a line. */
export interface MarkupRun {
  readonly text: string;
  readonly at: number;
  /** Index of the element in which it begins; -1 outside of all. */
  readonly element: number;
}

/** Tags that stand within a line of text. */
const INLINE: ReadonlySet<string> = new Set(
  'a abbr b bdi bdo cite code data del dfn em font i ins kbd label mark q s samp small span strong sub sup time tspan u var wbr'.split(
    ' ',
  ),
);

/** Puts text together over tags within a line. */
export function collectRuns() {
  const runs: MarkupRun[] = [];
  const parted: MarkupRun[] = [];
  let run = '';
  /** The run with a space wherever a tag stands between two letters; undefined while there is no such tag. */
  let spaced: string | undefined;
  let tagSeen = false;
  let start = 0;
  let startElement = -1;
  const end = () => {
    if (run !== '') {
      runs.push({ text: run, at: start, element: startElement });
      if (spaced !== undefined) parted.push({ text: spaced, at: start, element: startElement });
    }
    run = '';
    spaced = undefined;
    tagSeen = false;
  };
  const addPlain = (text: string, at: number, element: number) => {
    if (run === '') {
      const blank = text.search(/\S/);
      if (blank === -1) return;
      start = at + blank;
      startElement = element;
    } else if (tagSeen && isSolid(run.charCodeAt(run.length - 1)) && isSolid(text.charCodeAt(0))) {
      spaced = `${spaced ?? run} ${text}`;
    } else if (spaced !== undefined) spaced += text;
    tagSeen = false;
    run += text;
  };
  return {
    runs,
    parted,
    end,
    addPlain,
    /** Text with character references. */
    add: (raw: string, at: number, element: number) => addPlain(decodeReferences(raw), at, element),
    /** A start or an end tag. */
    meet(name: string): void {
      if (INLINE.has(name)) tagSeen = true;
      else end();
    },
  };
}

/** Whether a character is a letter, a digit or none of ASCII. */
function isSolid(code: number): boolean {
  return isLetter(code) || (code >= 0x30 && code <= 0x39) || code > 0x7f;
}

/** Whether a character is a letter of ASCII. */
export function isLetter(code: number): boolean {
  const small = code | 0x20;
  return small >= 0x61 && small <= 0x7a;
}
