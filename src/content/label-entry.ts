/** One fixed word or sentence of a pack. */
export interface LabelEntry {
  /** The English text, with placeholders in braces; two forms where a number `{n}` decides. */
  readonly english: string | { readonly one: string; readonly other: string };
  /** Where it is used, for translators. */
  readonly about: string;
  /** Placeholders any of which a translation may use, where the English does not say it all. */
  readonly mayUse?: readonly string[];
}
