/** A stretch of one group on one line of the score. */
export interface GroupPiece {
  /** 0-based place of the group. */
  readonly group: number;
  /** 0-based place of the stretch's first night within the group; above 0 only in a group longer than a line. */
  readonly from: number;
  /** Nights in the stretch, 1 or more. */
  readonly count: number;
}

/**
 * Breaks groups of nights into lines: as few lines as can be, and then the most even ones.
 * A group is never split unless it is longer than a line; then it is split into like parts.
 * @param sizes nights in each group, in order; groups of 0 are passed over
 * @param capacity nights that fit on a line, 1 or more
 */
export function breakLines(sizes: readonly number[], capacity: number): readonly (readonly GroupPiece[])[] {
  const pieces = sizes.flatMap((size, group) => splitGroup(size, group, capacity));
  const best: { cost: number; start: number }[] = [{ cost: 0, start: 0 }];
  for (let end = 1; end <= pieces.length; end++) best.push(findLastLine(pieces, end, capacity, best));
  const lines: (readonly GroupPiece[])[] = [];
  for (let end = pieces.length; end > 0; end = best[end]?.start ?? 0) {
    lines.unshift(pieces.slice(best[end]?.start ?? 0, end));
  }
  return lines;
}

function splitGroup(size: number, group: number, capacity: number): GroupPiece[] {
  const parts = Math.ceil(size / capacity);
  const pieces: GroupPiece[] = [];
  for (let part = 0; part < parts; part++) {
    const from = Math.round((size * part) / parts);
    pieces.push({ group, from, count: Math.round((size * (part + 1)) / parts) - from });
  }
  return pieces;
}

/** Of all lines that end before `end`, the one with which the lines so far cost least: one each, and their squared gaps. */
function findLastLine(
  pieces: readonly GroupPiece[],
  end: number,
  capacity: number,
  best: readonly { readonly cost: number }[],
): { cost: number; start: number } {
  const lineCost = (capacity + 1) ** 2 * pieces.length;
  let found = { cost: Number.POSITIVE_INFINITY, start: end - 1 };
  let filled = 0;
  for (let start = end - 1; start >= 0; start--) {
    filled += pieces[start]?.count ?? 0;
    if (filled > capacity) break;
    const cost = (best[start]?.cost ?? 0) + lineCost + (capacity - filled) ** 2;
    if (cost < found.cost) found = { cost, start };
  }
  return found;
}
