/** A path as messages show it: forward slashes on every system. */
export function showPath(path: string): string {
  return path.replaceAll('\\', '/');
}
