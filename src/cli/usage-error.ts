/** The command was called in a way it does not know; the message says what to type instead. Exit status 2. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}
