import type { ElementContent, Properties } from 'hast';

/**
 * A deep copy of a tree that shares nothing with it. Left out are source positions and data, which would tell
 * in which order the author wrote the options, boxes to tick, which would tell the right one,
 * and comments.
 */
export function copyContent(content: readonly ElementContent[]): ElementContent[] {
  return content.flatMap(copyNode);
}

function copyNode(node: ElementContent): ElementContent[] {
  switch (node.type) {
    case 'text':
      return [{ type: 'text', value: node.value }];
    case 'element':
      if (node.tagName === 'input') return [];
      return [
        {
          type: 'element',
          tagName: node.tagName,
          properties: copyProperties(node.properties),
          children: copyContent(node.children),
        },
      ];
    default:
      return [];
  }
}

function copyProperties(properties: Properties): Properties {
  return Object.fromEntries(
    Object.entries(properties).map(([name, value]) => [name, Array.isArray(value) ? [...value] : value]),
  );
}
