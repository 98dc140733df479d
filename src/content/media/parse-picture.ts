import type { MediaFault, Parsed } from './media-fault.ts';
import { nameFileType } from './name-file-type.ts';
import { isJpeg, parseJpeg } from './parse-jpeg.ts';
import { isPng, type PixelSize, parsePng } from './parse-png.ts';
import { parseSvg } from './parse-svg.ts';

/** Thirty pictures of this size, with the learners' copies, are 18 MB: about what a letter may carry. Common practice, no source. */
export const MOST_PICTURE_BYTES = 300_000;

/** Side of a bitmap in pixels: 2000 print sharp at 17 cm (300 dots an inch), and thirty of them fit a small computer's memory. */
const MOST_PIXELS = 2000;
/** Below it a picture is blurred at the 3 cm of a card: 170 dots an inch. */
const FEW_PIXELS = 200;

/** What a picture file is, whatever its name says. */
export interface PictureFacts extends PixelSize {
  /** Ending of its file in a pack, with the full stop. */
  readonly ending: '.svg' | '.png' | '.jpg';
  /** What should change, though the picture can be used. */
  readonly remarks: readonly MediaFault[];
}

/** Looks through a picture file: its kind by its bytes, whole and still, and its size in pixels. */
export function parsePicture(bytes: Uint8Array): Parsed<PictureFacts> {
  if (isPng(bytes)) return check(parsePng(bytes), '.png');
  if (isJpeg(bytes)) return check(parseJpeg(bytes), '.jpg');
  const kind = nameFileType(bytes);
  if (kind === 'an SVG picture') {
    const { value, fault } = parseSvg(bytes);
    return fault ? { fault } : { value: { ...value, ending: '.svg', remarks: [] } };
  }
  const found = `holds ${kind}`;
  return { fault: { found, expected: 'an SVG, PNG or JPEG picture', remedy: 'save it as one of these' } };
}

function check(parsed: Parsed<PixelSize & { tellsPlace?: boolean }>, ending: '.png' | '.jpg'): Parsed<PictureFacts> {
  if (parsed.fault) return { fault: parsed.fault };
  const { widthPx, heightPx, tellsPlace = false } = parsed.value;
  const found = `is ${widthPx} by ${heightPx} pixels large`;
  if (widthPx < 1 || heightPx < 1 || Math.max(widthPx, heightPx) > MOST_PIXELS) {
    return { fault: { found, expected: `at most ${MOST_PIXELS} each way`, remedy: 'save it smaller' } };
  }
  const remarks: MediaFault[] = [];
  if (Math.max(widthPx, heightPx) < FEW_PIXELS) {
    const remedy = 'it will be blurred in print: save it larger, or as SVG';
    remarks.push({ found, expected: `${FEW_PIXELS} pixels or more along its longer side`, remedy });
  }
  if (tellsPlace) {
    remarks.push({
      found: 'tells where it was taken',
      expected: 'a picture without that, since packs travel',
      remedy: 'save it without its notes on the place',
    });
  }
  return { value: { widthPx, heightPx, ending, remarks } };
}
