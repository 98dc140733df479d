import type { ElementContent } from 'hast';
import type { PlaceholderOf, TextKey } from './label-catalogue.ts';
import type { Labels } from './labels.ts';

/**
 * A label as content, with elements where its placeholders stood: so a name inside a sentence stays tagged with its
 * language, wherever a translation puts it. Text and numbers become text; elements go in as they are, not copied.
 * Throws where `labels.parts` throws.
 */
export function fillLabel<Key extends TextKey>(
  labels: Labels,
  key: Key,
  values: Readonly<Record<PlaceholderOf<Key>, readonly ElementContent[] | string | number>>,
): ElementContent[] {
  return labels.parts(key, values).flatMap((part): readonly ElementContent[] => {
    return typeof part === 'object' ? part : [{ type: 'text', value: String(part) }];
  });
}
