import { hasBytes, readTag, viewOf } from './bytes.ts';
import type { Parsed } from './media-fault.ts';
import { describeOtherForm, SOUND_CUT_SHORT, type SoundType } from './sound-types.ts';

/** MPEG-4 with AAC sound alone. */
export const m4a: SoundType = {
  ending: '.m4a',
  mediaType: 'audio/mp4',
  matches: (bytes) => hasBytes(bytes, 4, 'ftyp') && !NOT_MPEG_4.has(readTag(bytes, 8).slice(0, 3)),
  parse: parseM4a,
};

/** Beginnings of brands of other files in the same kind of box: pictures, 3GP, QuickTime. */
const NOT_MPEG_4: ReadonlySet<string> = new Set(['hei', 'hev', 'mif', 'msf', 'avi', '3gp', '3g2', 'qt ']);

/** Boxes that hold the track's kind and the kind of its samples: ISO/IEC 14496-12, from memory. */
const TRACK = ['moov', 'trak', 'mdia'];

function parseM4a(bytes: Uint8Array): Parsed<undefined> {
  const top = listBoxes(bytes, 0, bytes.length);
  if (top === undefined || !top.some(({ type }) => type === 'mdat')) return { fault: SOUND_CUT_SHORT };
  const media = findBoxes(bytes, TRACK);
  const kinds = media.flatMap((box) => findBoxes(bytes, ['hdlr'], box).map(({ from }) => readTag(bytes, from + 8)));
  if (kinds.includes('vide')) return { fault: describeOtherForm('a film') };
  if (!kinds.includes('soun')) return { fault: SOUND_CUT_SHORT };
  const samples = media.flatMap((box) => findBoxes(bytes, ['minf', 'stbl', 'stsd'], box));
  const isAac = samples.some(({ from }) => readTag(bytes, from + 12) === 'mp4a');
  return isAac ? { value: undefined } : { fault: describeOtherForm('an MPEG-4 sound without AAC') };
}

/** A box: its contents lie from `from` up to `to`. */
interface Box {
  readonly type: string;
  readonly from: number;
  readonly to: number;
}

function findBoxes(bytes: Uint8Array, path: readonly string[], within?: Box): Box[] {
  const [type, ...rest] = path;
  const boxes = listBoxes(bytes, within?.from ?? 0, within?.to ?? bytes.length) ?? [];
  const found = boxes.filter((box) => box.type === type);
  return rest.length === 0 ? found : found.flatMap((box) => findBoxes(bytes, rest, box));
}

/** The boxes that fill a stretch; nothing when they do not fill it. */
function listBoxes(bytes: Uint8Array, from: number, to: number): Box[] | undefined {
  const view = viewOf(bytes);
  const boxes: Box[] = [];
  for (let at = from; at < to; ) {
    if (at + 8 > to) return undefined;
    const short = view.getUint32(at);
    // 1: the size follows in eight bytes. 0: up to the end.
    const isLong = short === 1 && at + 16 <= to;
    const size = isLong ? Number(view.getBigUint64(at + 8)) : short === 0 ? to - at : short;
    const head = isLong ? 16 : 8;
    if (size < head || at + size > to) return undefined;
    boxes.push({ type: readTag(bytes, at + 4), from: at + head, to: at + size });
    at += size;
  }
  return boxes;
}
