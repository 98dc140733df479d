/** The id of a content file: its name without folder and ending, in NFC. */
export function computeFileId(path: string): string {
  const name = path.slice(path.lastIndexOf('/') + 1);
  return name.replace(/\.[^.]+$/, '').normalize('NFC');
}

/** The id of a week: the name of the folder its file is in, in NFC; empty when the path names none. */
export function computeFolderId(path: string): string {
  return (path.split('/').at(-2) ?? '').normalize('NFC');
}
