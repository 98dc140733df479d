import type { RunGroup } from './timeline-types.ts';

/**
 * 1-based place that an item of a run has in its whole group in the calendar, also where a name is left out or said
 * twice.
 * @param index of the item in the group's items
 * @throws RangeError when there is no such item
 */
export function computePlaceInGroup({ items, firstInGroup }: RunGroup, index: number): number {
  const [first, item] = [items[0], items[index]];
  if (first === undefined || item === undefined)
    throw new RangeError(`item ${index} is not in a group of ${items.length}`);
  return firstInGroup + item.number - first.number;
}
