import { NoNightError } from '../calendar/no-night-error.ts';
import type { InstantMs } from '../calendar/rules.ts';
import { findNearMiss } from '../content/near-miss.ts';
import { findFileError } from '../node/file-error.ts';
import { type Arguments, type OptionName, parseArguments } from './arguments.ts';
import { build } from './build.ts';
import { check } from './check.ts';
import { HELP } from './help.ts';
import { nights } from './nights.ts';
import { observe } from './observe.ts';
import type { Terminal } from './terminal.ts';
import { UsageError } from './usage-error.ts';

declare const KIT_VERSION: string;

interface Command {
  readonly options: readonly OptionName[];
  /** @param nowMs The present instant. @returns The exit status. */
  run(given: Arguments, terminal: Terminal, nowMs: InstantMs): number | Promise<number>;
}

const COMMANDS = {
  build: {
    run: build,
    options: ['content', 'out', 'school', 'calendar', 'pdf', 'qti', 'replace', 'json', 'quiet', 'help'],
  },
  check: { run: check, options: ['content', 'out', 'school', 'calendar', 'json', 'quiet', 'help'] },
  nights: {
    run: nights,
    options: [
      ...(['from', 'to', 'month', 'year', 'explain', 'content', 'school', 'calendar'] as const),
      ...(['json', 'csv', 'ics', 'quiet', 'help'] as const),
    ],
  },
  observe: { run: observe, options: ['by', 'content', 'school', 'json', 'help'] },
} as const satisfies Record<string, Command>;

/**
 * Runs one call of the command; folders are taken from where the process stands.
 * @param nowMs The present instant; left out, the clock tells.
 * @returns The exit status: 0 done, 1 something in the content is wrong, 2 wrong usage, 3 the kit itself failed.
 */
export async function runCommand(
  words: readonly string[],
  terminal: Terminal,
  nowMs: InstantMs = Date.now(),
): Promise<number> {
  try {
    return await dispatch(words, terminal, nowMs);
  } catch (error) {
    if (error instanceof UsageError) {
      terminal.tell(`lessontide: ${error.message}`);
      return 2;
    }
    const refused = error instanceof NoNightError ? error : findFileError(error);
    if (refused !== undefined) {
      terminal.tell(`lessontide: ${refused.message}`);
      return 1;
    }
    terminal.tell('lessontide: the kit itself failed; this is not your mistake, and nothing was lost. Please report:');
    terminal.tell(error instanceof Error ? (error.stack ?? error.message) : String(error));
    return 3;
  }
}

async function dispatch(words: readonly string[], terminal: Terminal, nowMs: InstantMs): Promise<number> {
  const [name = '--help', ...rest] = words;
  if (name === '--help' || name === '-h' || name === 'help') {
    const [topic = ''] = rest;
    terminal.print(isCommand(topic) ? HELP[topic] : HELP.lessontide);
    return 0;
  }
  if (name === '--version') {
    terminal.print(KIT_VERSION);
    return 0;
  }
  if (!isCommand(name)) {
    const near = findNearMiss(name, Object.keys(COMMANDS));
    const advice = near === undefined ? 'see `lessontide --help`' : `did you mean \`${near}\`?`;
    throw new UsageError(`\`${name}\` is not a command; expected ${Object.keys(COMMANDS).join(', ')}; ${advice}`);
  }
  const given = parseArguments(rest, COMMANDS[name].options);
  if (given.options.help !== true) return COMMANDS[name].run(given, terminal, nowMs);
  terminal.print(HELP[name]);
  return 0;
}

function isCommand(name: string): name is keyof typeof COMMANDS {
  return Object.hasOwn(COMMANDS, name);
}
