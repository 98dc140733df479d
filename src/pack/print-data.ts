/** A value as JSON that may stand in a `script` element as it is: no `<` in it can end the element or begin a comment. */
export function printData(value: unknown): string {
  return JSON.stringify(value).replaceAll('<', '\\u003c');
}
