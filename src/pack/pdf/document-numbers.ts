/** Numbers of the objects that a document has once, whatever its parts are. */
export const DOCUMENT_NUMBERS = {
  catalog: 1,
  info: 2,
  pages: 3,
  tags: 4,
  document: 5,
  tagKeys: 6,
  outline: 7,
} as const;
