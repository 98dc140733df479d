/** The name between the braces of each placeholder of a text known at compile time. */
export type PlaceholderIn<Text extends string> = Text extends `${string}{${infer Name}}${infer Rest}`
  ? Name | PlaceholderIn<Rest>
  : never;

const PLACEHOLDER = /\{([a-z][a-z0-9-]*)\}/g;

/** The names of the placeholders `{name}` of a text, each once, in order of their first place. Other braces are plain text. */
export function findPlaceholders(template: string): string[] {
  return [...new Set(Array.from(template.matchAll(PLACEHOLDER), (match) => match[1] ?? ''))];
}

/**
 * A text with its placeholders replaced, as a run of parts: plain text stays text, a placeholder becomes its value.
 * A view uses this to put an element (such as a name tagged with its language) where the placeholder stood.
 * Throws for a placeholder without a value: the text was not checked against what it may hold.
 */
export function fillParts<Part>(template: string, values: Readonly<Record<string, Part>>): (string | Part)[] {
  const parts: (string | Part)[] = [];
  let end = 0;
  for (const match of template.matchAll(PLACEHOLDER)) {
    const name = match[1] ?? '';
    const value = Object.hasOwn(values, name) ? values[name] : undefined;
    if (value === undefined) throw new Error(`No value for the placeholder {${name}} of "${template}".`);
    if (match.index > end) parts.push(template.slice(end, match.index));
    parts.push(value);
    end = match.index + match[0].length;
  }
  if (end < template.length) parts.push(template.slice(end));
  return parts;
}

/** A text with its placeholders replaced by plain text or whole numbers. Throws as {@link fillParts} does. */
export function fillTemplate(template: string, values: Readonly<Record<string, string | number>>): string {
  return fillParts(template, values).join('');
}
