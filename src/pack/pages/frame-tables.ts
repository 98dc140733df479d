import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Labels } from '../../content/labels.ts';

/** From so many columns on, words no longer fit a phone's width side by side. */
const WIDE_FROM_COLUMNS = 6;

/**
 * Copies content with each wide table in a frame that scrolls sideways where the screen is small, by keyboard too, so
 * that its words need not be broken. On paper the frame is not there.
 */
export function frameTables(nodes: readonly ElementContent[], labels: Labels): ElementContent[] {
  return nodes.map((node) => {
    if (node.type !== 'element' || node.tagName === 'svg') return node;
    if (node.tagName !== 'table') return { ...node, children: frameTables(node.children, labels) };
    if (countColumns(node) < WIDE_FROM_COLUMNS) return node;
    const frame = { className: ['scroll', 'wide-table'], tabIndex: 0 };
    return h('section', { ...frame, ariaLabel: labels.text('wide-table') }, [node]);
  });
}

/** Cells of the first row. */
function countColumns(node: Element): number {
  if (node.tagName === 'tr') return node.children.filter((cell) => cell.type === 'element').length;
  const parts = node.children.filter((child) => child.type === 'element');
  return parts[0] === undefined ? 0 : countColumns(parts[0]);
}
