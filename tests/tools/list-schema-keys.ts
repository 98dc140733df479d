import type * as z from 'zod/mini';

/** The keys that a schema of a content file knows: `['month-begins', 'at']` for `at` within `month-begins`. */
export function listSchemaKeys(schema: z.core.$ZodType): string[][] {
  // zod types every schema by its base; the union of all kinds of schema is what the base stands for.
  const { def } = (schema as z.core.$ZodTypes)._zod;
  switch (def.type) {
    case 'object':
      return Object.entries(def.shape).flatMap(([key, value]) => [
        [key],
        ...listSchemaKeys(value).map((path) => [key, ...path]),
      ]);
    case 'array':
      return listSchemaKeys(def.element);
    case 'record':
      return listSchemaKeys(def.valueType);
    case 'optional':
      return listSchemaKeys(def.innerType);
    default:
      return [];
  }
}
