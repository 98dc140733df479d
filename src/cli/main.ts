import { runCommand } from './run-command.ts';
import { createTerminal } from './terminal.ts';

// Whoever reads the output may stop early, as `head` does; that is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit(0);
});

void runCommand(process.argv.slice(2), createTerminal(process)).then((status) => {
  process.exitCode = status;
});
