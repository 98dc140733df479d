import { findNearMiss } from '../content/near-miss.ts';
import { MissingFolderError } from '../node/read-content.ts';
import { type OptionName, parseArguments } from './arguments.ts';
import { build } from './build.ts';
import { check } from './check.ts';
import { HELP } from './help.ts';
import { nights } from './nights.ts';
import { createTerminal, type Terminal } from './terminal.ts';
import { UsageError } from './usage-error.ts';

declare const KIT_VERSION: string;

const COMMANDS = {
  build: { run: build, options: ['content', 'out', 'school', 'calendar', 'replace', 'json', 'quiet', 'help'] },
  check: { run: check, options: ['content', 'school', 'calendar', 'json', 'quiet', 'help'] },
  nights: { run: nights, options: ['from', 'to', 'content', 'school', 'calendar', 'json', 'help'] },
} as const satisfies Record<string, { run: typeof build; options: readonly OptionName[] }>;

/** Runs one call of the command. @returns The exit status: 0 done, 1 content, 2 usage, 3 the kit itself. */
async function main(words: readonly string[], terminal: Terminal): Promise<number> {
  const [name = '--help', ...rest] = words;
  if (name === '--help' || name === '-h' || name === 'help') {
    terminal.print(HELP.lessontide);
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
  if (given.options.help === true) {
    terminal.print(HELP[name]);
    return 0;
  }
  return COMMANDS[name].run(given, terminal);
}

function isCommand(name: string): name is keyof typeof COMMANDS {
  return Object.hasOwn(COMMANDS, name);
}

async function runProcess(): Promise<void> {
  const terminal = createTerminal(process);
  // Whoever reads the output may stop early, as `head` does; that is no failure.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(0);
    throw error;
  });
  try {
    process.exitCode = await main(process.argv.slice(2), terminal);
  } catch (error) {
    if (error instanceof UsageError) {
      terminal.tell(`lessontide: ${error.message}`);
      process.exitCode = 2;
    } else if (error instanceof MissingFolderError) {
      terminal.tell(`lessontide: ${error.message}`);
      process.exitCode = 1;
    } else {
      terminal.tell(
        'lessontide: the kit itself failed, which is not your mistake. Nothing was lost; please report this:',
      );
      terminal.tell(error instanceof Error ? (error.stack ?? error.message) : String(error));
      process.exitCode = 3;
    }
  }
}

void runProcess();
