import { parseArgs } from 'node:util';
import { findNearMiss } from '../content/near-miss.ts';
import { UsageError } from './usage-error.ts';

/** Every option of every command; a command names those it takes. */
const OPTIONS = {
  content: { type: 'string' },
  school: { type: 'string' },
  calendar: { type: 'string' },
  out: { type: 'string' },
  from: { type: 'string' },
  to: { type: 'string' },
  month: { type: 'string' },
  year: { type: 'string' },
  explain: { type: 'string' },
  by: { type: 'string' },
  csv: { type: 'boolean' },
  ics: { type: 'boolean' },
  json: { type: 'boolean' },
  quiet: { type: 'boolean' },
  replace: { type: 'boolean' },
  pdf: { type: 'boolean' },
  qti: { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
} as const;

export type OptionName = keyof typeof OPTIONS;

/** A command's words: the names after it, and its options. Absent: not given. */
export interface Arguments {
  readonly names: readonly string[];
  readonly options: {
    readonly [Name in OptionName]?: (typeof OPTIONS)[Name]['type'] extends 'string' ? string : boolean;
  };
}

/**
 * Reads what follows a command.
 * @throws UsageError for an option that the command does not take, or one without its value.
 */
export function parseArguments(words: readonly string[], allowed: readonly OptionName[]): Arguments {
  const { tokens } = parseArgs({
    args: [...words],
    options: OPTIONS,
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const names: string[] = [];
  const options: Record<string, string | boolean> = {};
  for (const token of tokens) {
    if (token.kind === 'positional') names.push(token.value);
    if (token.kind === 'option') options[token.name] = readOption(token.name, token.rawName, token.value, allowed);
  }
  return { names, options };
}

function readOption(
  name: string,
  written: string,
  value: string | undefined,
  allowed: readonly OptionName[],
): string | boolean {
  const known = allowed.find((each) => each === name);
  if (known === undefined) {
    const near = findNearMiss(name, allowed);
    const advice =
      near === undefined ? `it takes ${allowed.map((each) => `--${each}`).join(', ')}` : `did you mean --${near}?`;
    throw new UsageError(`\`${written}\` is not an option of this command; ${advice}`);
  }
  const takesValue = OPTIONS[known].type === 'string';
  if (takesValue && (value === undefined || value === '')) {
    throw new UsageError(`\`${written}\` stands without its value; write \`--${name} VALUE\``);
  }
  if (!takesValue && value !== undefined) throw new UsageError(`\`${written}\` takes no value; found \`${value}\``);
  return value ?? true;
}
