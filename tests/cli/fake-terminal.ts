import type { Terminal } from '../../src/cli/terminal.ts';

/** A terminal that keeps what a command prints and tells, without colour. */
export interface FakeTerminal extends Terminal {
  readonly printed: string[];
  readonly told: string[];
}

export function createFakeTerminal(): FakeTerminal {
  const printed: string[] = [];
  const told: string[] = [];
  return {
    printed,
    told,
    print: (line) => void printed.push(line),
    tell: (line) => void told.push(line),
    emphasise: (text) => text,
  };
}
