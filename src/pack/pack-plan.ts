/** A file of a pack before it is written. `path` is relative to the pack's root, with forward slashes. */
export interface PackFile {
  readonly path: string;
  readonly content: string | Uint8Array;
}

/** All files of a pack, in a fixed order. */
export interface PackPlan {
  /** Name of the pack's folder. */
  readonly id: string;
  readonly files: readonly PackFile[];
}

/** SHA-256 as the place that runs the core provides it: text counts as UTF-8. */
export interface Sha256 {
  hex(content: string | Uint8Array): string;
  base64(content: string | Uint8Array): string;
}

/** Packs files into a ZIP archive, in their order; the same files give the same bytes. Handed in, as the digest is. */
export type Zip = (files: readonly PackFile[]) => Uint8Array;
