import { styleText } from 'node:util';

/** Where a command writes: results to `print`, everything else to `tell`. */
export interface Terminal {
  /** Standard output, a line at a time. */
  print(line: string): void;
  /** Standard error, a line at a time: findings and progress. */
  tell(line: string): void;
  /** Emphasis on a terminal that shows it; the bare text elsewhere. `to` is where the text will be written. */
  emphasise(text: string, style: 'bold' | 'dim' | 'red' | 'yellow', to: 'print' | 'tell'): string;
}

/** The terminal of this process. No colour with NO_COLOR, to a file, or on a dumb terminal. */
export function createTerminal({ stdout, stderr, env }: NodeJS.Process): Terminal {
  const plain = (env['NO_COLOR'] ?? '') !== '' || env['TERM'] === 'dumb';
  const shows = { print: !plain && stdout.isTTY === true, tell: !plain && stderr.isTTY === true };
  return {
    print: (line) => void stdout.write(`${line}\n`),
    tell: (line) => void stderr.write(`${line}\n`),
    emphasise: (text, style, to) => (shows[to] ? styleText(style, text) : text),
  };
}
