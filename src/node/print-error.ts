/** No PDF can be made here: the message says why, and what to do. What else was made stays as it is. Exit status 1. */
export class PrintError extends Error {
  override readonly name = 'PrintError';
}
