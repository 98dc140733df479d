/**
 * Wraps a pure function so that its latest answers are kept; when `limit` answers are kept, the oldest one goes.
 * @param limit Most answers kept, 1 or more.
 * @param compute A pure function; an answer of `undefined` is not kept.
 * @returns The same function, remembering.
 */
export function createMemo<Key, Value>(limit: number, compute: (key: Key) => Value): (key: Key) => Value {
  const kept = new Map<Key, Value>();
  return (key) => {
    const known = kept.get(key);
    if (known !== undefined) return known;
    const value = compute(key);
    if (kept.size >= limit) {
      const oldest = kept.keys().next();
      if (!oldest.done) kept.delete(oldest.value);
    }
    kept.set(key, value);
    return value;
  };
}
