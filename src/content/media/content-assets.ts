/** A folder of the content folder whose files YAML files name. */
export type AssetKind = 'images' | 'sounds';

/** What came of reading a file: its bytes, or its size when there are more of them than were wanted. */
export type AssetBytes = { readonly bytes: Uint8Array } | { readonly sizeBytes: number };

/** Picture and sound files as the place that runs the core provides them. Nothing is looked at before it is asked for. */
export interface ContentAssets {
  /** Files of a kind, as paths from its folder with forward slashes. */
  list(kind: AssetKind): readonly string[];
  /** The file's path as messages show it. */
  showPath(kind: AssetKind, file: string): string;
  /** Reads a file that is listed. @param mostBytes A larger file is not read. */
  read(kind: AssetKind, file: string, mostBytes: number): AssetBytes;
  /** SHA-256 in lower-case hexadecimal digits. */
  digest(bytes: Uint8Array): string;
}

/** For content without pictures and sounds: whatever a file names is not there. */
export const NO_ASSETS: ContentAssets = {
  list: () => [],
  showPath: (kind, file) => `${kind}/${file}`,
  read: () => ({ bytes: new Uint8Array() }),
  digest: () => '',
};
