import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Labels } from '../../content/labels.ts';

/** What an author writes for a blank: four underscores or more. */
const BLANK = /(_{4,})/;

/**
 * Copies a handout with room to write where its author put underscores: a line as long as they are, a whole line where a
 * paragraph is nothing else, a box where the cell of a table is. Voices say that there is something to write.
 * @param tag Properties of the kit's own words, where the author's are in another language.
 */
export function openBlanks(
  nodes: readonly ElementContent[],
  labels: Labels,
  tag: { readonly lang?: string },
): ElementContent[] {
  const say = () => h('span', { className: ['visually-hidden'], ...tag }, labels.text('write-here'));
  const open = (node: ElementContent): ElementContent[] => {
    if (node.type === 'text') return openText(node.value, say);
    if (node.type !== 'element' || node.tagName === 'svg' || node.tagName === 'code') return [node];
    if (isBlank(node)) return [openWhole(node, say)];
    return [{ ...node, children: node.children.flatMap(open) }];
  };
  return nodes.flatMap(open);
}

/** A paragraph or a cell that holds a blank and nothing else. */
function isBlank({ tagName, children }: Element): boolean {
  const [text, more] = children;
  return (
    (tagName === 'p' || tagName === 'td') &&
    more === undefined &&
    text?.type === 'text' &&
    /^\s*_{4,}\s*$/.test(text.value)
  );
}

function openWhole(node: Element, say: () => Element): Element {
  if (node.tagName === 'td') return { ...node, children: [] };
  return { ...node, children: [say(), h('span', { className: ['blank-line'] })] };
}

function openText(value: string, say: () => Element): ElementContent[] {
  const parts = value.split(BLANK).filter((part) => part !== '');
  return parts.flatMap((part): ElementContent[] =>
    BLANK.test(part)
      ? [say(), h('span', { className: ['blank'], ariaHidden: 'true' }, part)]
      : [{ type: 'text', value: part }],
  );
}
