/** An element of XML. */
export interface XmlElement {
  /** As the schema spells it, prefix and all. */
  readonly name: string;
  /** In the order in which they are written. */
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly XmlContent[];
}

/** What stands in an element: others, and texts, in which nothing need be escaped. */
export type XmlContent = XmlElement | string;

/** Attributes as they are given; those without a value are left out. */
export type XmlAttributes = Readonly<Record<string, string | number | boolean | undefined>>;

/** Makes an element of XML. */
export function xmlElement(
  name: string,
  attributes: XmlAttributes = {},
  children: readonly XmlContent[] = [],
): XmlElement {
  const written = Object.entries(attributes).flatMap(([key, value]) =>
    value === undefined ? [] : [[key, String(value)] as const],
  );
  return { name, attributes: Object.fromEntries(written), children };
}
