import type { Element } from 'hast';
import type { PackFile } from '../pack-plan.ts';
import { printDrawing } from './print-drawing.ts';

/** A picture of a package, for an item or a test to show. */
export interface StoredPicture {
  /** Path from the package's root, where items and tests lie. */
  readonly path: string;
  /** In CSS pixels, whole; absent where the file alone knows. */
  readonly width?: number;
  readonly height?: number;
}

/** The pictures of a package: the same picture is there once, however often it is shown. */
export interface PictureStore {
  /** A drawing, as the files of the pack have it on their pages. */
  addDrawing(drawing: Element): StoredPicture;
  /** A picture file of the pack, by the address that a page shows it from. Throws for one that is not there. */
  addFile(address: string): StoredPicture;
  /** All of them, in the order in which they were first shown. */
  list(): PackFile[];
}

/**
 * Makes an empty store. Files are numbered, so that a name tells nothing of its picture.
 * @param files Picture files of the pack by their name in its `images` folders.
 */
export function createPictureStore(files: ReadonlyMap<string, Uint8Array>): PictureStore {
  const byContent = new Map<string | Uint8Array, PackFile>();
  const store = (content: string | Uint8Array, extension: string): string => {
    const path = byContent.get(content)?.path ?? `images/picture-${byContent.size + 1}.${extension}`;
    byContent.set(content, { path, content });
    return path;
  };
  const storeFile = (address: string): string => {
    const name = decodeURIComponent(address.slice(address.lastIndexOf('/') + 1));
    const content = files.get(name);
    if (content === undefined) throw new Error(`The picture ${address} of a question was not read.`);
    return store(content, name.slice(name.lastIndexOf('.') + 1).toLowerCase());
  };
  return {
    addFile: (address) => ({ path: storeFile(address) }),
    addDrawing: (drawing) => {
      const file = findPictureFile(drawing);
      const path = file === undefined ? store(printDrawing(drawing), 'svg') : storeFile(file);
      return { path, ...measure(drawing) };
    },
    list: () => [...byContent.values()],
  };
}

/** The file that a drawing is made of where it is not drawn: a picture shown in a picture would not be loaded. */
function findPictureFile({ tagName, properties, children }: Element): string | undefined {
  if (tagName === 'image') return String(properties['href']);
  for (const child of children) {
    const file = child.type === 'element' ? findPictureFile(child) : undefined;
    if (file !== undefined) return file;
  }
  return undefined;
}

function measure({ properties }: Element): { width?: number; height?: number } {
  const [width, height] = [Number(properties['width']), Number(properties['height'])];
  return width > 0 && height > 0 ? { width: Math.round(width), height: Math.round(height) } : {};
}
