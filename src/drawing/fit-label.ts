/** A text broken and sized so that it keeps within a width. */
export interface FittedLabel {
  /** One line of text each, in order; at least one. */
  readonly lines: readonly string[];
  /** In the units of the picture. */
  readonly fontSize: number;
}

/**
 * Estimates how wide a text is, on the safe side for any plain sans-serif typeface.
 * @param text one line
 * @param bold bold letters run about a seventh wider
 * @returns width in ems, to be multiplied by the font size
 * Source of the figures: letters of Andika and DejaVu Sans measured in a browser, the wider of the two, in a few
 * classes; other scripts count as wide letters do.
 */
export function estimateWidthEms(text: string, bold: boolean): number {
  let ems = 0;
  for (const letter of text) {
    let width = knownEms.get(letter);
    if (width === undefined) {
      width = letterEms(letter);
      knownEms.set(letter, width);
    }
    ems += width;
  }
  return bold ? ems * 1.14 : ems;
}

/** The layout measures the same few letters many thousand times. */
const knownEms = new Map<string, number>();

function letterEms(letter: string): number {
  if (letter >= '\u0180') return foreignEms(letter);
  if (/[ ijl|]/.test(letter)) return 0.32;
  if (/[.,:;'!()[\]frt·-]/.test(letter)) return 0.44;
  if (/[IJcksvxyz]/.test(letter)) return 0.58;
  if (/[mwMWŒœÆæ@%]/.test(letter)) return 1;
  return letter.toLowerCase() === letter ? 0.64 : 0.77;
}

/** Outside Latin; apart from it because classes of Unicode are slow to set up, and most calendars never need them. */
function foreignEms(letter: string): number {
  if (/[’‘]/.test(letter)) return 0.44;
  if (/[–“”]/.test(letter)) return 0.64;
  if (/\p{M}/u.test(letter)) return 0;
  if (/[\u1100-\u115F\u2E80-\uD7FF\uF900-\uFAFF\uFF00-\uFF60\u{1F000}-\u{1FAFF}\u{20000}-\u{3FFFD}—…]/u.test(letter))
    return 1.05;
  return letter.toLowerCase() === letter ? 0.64 : 0.77;
}

/** A text cut where a line may end, with its widths in ems: what is measured once can be broken many times. */
export interface MeasuredText {
  readonly words: readonly { readonly text: string; readonly ems: number; readonly emsAtLineEnd: number }[];
  readonly ems: number;
}

/** Cuts a text after spaces and hyphens, and between ideographs and kana; measures its words. */
export function measureText(text: string, bold: boolean): MeasuredText {
  const words = cutText(text.trimStart()).map((word) => ({
    text: word,
    ems: estimateWidthEms(word, bold),
    emsAtLineEnd: estimateWidthEms(word.trimEnd(), bold),
  }));
  return { words, ems: words.reduce((sum, word) => sum + word.ems, 0) };
}

/** From here on letters may be ones that are written without spaces between words. */
const unspacedFrom = '\u3041';

function cutText(text: string): readonly string[] {
  const words = text.match(/[^\s-]*-+\s*|[^\s-]+\s*/gu) ?? [''];
  for (const letter of text) if (letter >= unspacedFrom) return words.flatMap(cutUnspaced);
  return words;
}

/** After each ideograph or kana, with the small kana, the mark of length and the punctuation that belong to it. */
function cutUnspaced(word: string): readonly string[] {
  return (
    word.match(
      /[\u3041-\u30FA\u3400-\u9FFF\uF900-\uFAFF\u{20000}-\u{323AF}][ぁぃぅぇぉっゃゅょゎァィゥェォッャュョヮー、。・」』）\p{M}]*\s*|[^\u3041-\u30FA\u3400-\u9FFF\uF900-\uFAFF\u{20000}-\u{323AF}]+/gu,
    ) ?? [word]
  );
}

/**
 * Breaks a text into lines that are no wider than a width, at spaces and after hyphens.
 * @param widthEms width divided by the font size
 * @returns the lines; undefined when one word alone is too wide or more than `maxLines` are needed
 */
export function findLineBreaks(text: MeasuredText, widthEms: number, maxLines: number): readonly string[] | undefined {
  const lines: string[] = [''];
  let filled = 0;
  for (const word of text.words) {
    if (word.emsAtLineEnd > widthEms) return undefined;
    if (filled > 0 && filled + word.emsAtLineEnd > widthEms) {
      if (lines.length === maxLines) return undefined;
      lines.push('');
      filled = 0;
    }
    lines[lines.length - 1] += word.text;
    filled += word.ems;
  }
  return lines.map((line) => line.trimEnd());
}

/** Lines of like length look better than full ones over a short one: the narrowest width that needs no more lines. */
function evenOut(lines: readonly string[], text: MeasuredText, widthEms: number): readonly string[] {
  if (lines.length === 1) return lines;
  const steps = 24;
  const least = Math.min(widthEms, text.ems / lines.length);
  for (let step = 0; step < steps; step++) {
    const even = findLineBreaks(text, least + ((widthEms - least) * step) / steps, lines.length);
    if (even !== undefined) return even;
  }
  return lines;
}

/** Letters smaller than this share of their usual size cannot be read from the same distance. Chosen by eye. */
const smallestShare = 0.6;

/**
 * Fits a text into a width: whole lines first, then smaller letters, down to three fifths; then words are broken
 * between letters, and in the end the letters get as small as they must.
 * @param width in the units of the picture, above 0
 * @param fontSize the largest size, in the same units
 */
export function fitLabel(text: string, width: number, fontSize: number, maxLines: number, bold: boolean): FittedLabel {
  const measured = measureText(text, bold);
  for (let twentieths = 20; twentieths >= 12; twentieths--) {
    const size = (fontSize * twentieths) / 20;
    const lines = findLineBreaks(measured, width / size, maxLines);
    if (lines !== undefined) return { lines: evenOut(lines, measured, width / size), fontSize: size };
  }
  const lines = breakLetters(text, maxLines, bold);
  const widest = Math.max(...lines.map((line) => estimateWidthEms(line, bold)));
  return { lines, fontSize: Math.min(fontSize * smallestShare, width / widest) };
}

/**
 * Fits a text into a width as `fitLabel` does, but never below three fifths of the size: what does not fit then is cut
 * off, with an ellipsis in its place.
 */
export function fitOrCutLabel(
  text: string,
  width: number,
  fontSize: number,
  maxLines: number,
  bold: boolean,
): FittedLabel & { readonly cut: boolean } {
  // A hair less, for the last bits of the sizes that are tried.
  const least = fontSize * smallestShare - 1e-9;
  const whole = fitLabel(text, width, fontSize, maxLines, bold);
  if (whole.fontSize >= least) return { ...whole, cut: false };
  const letters = listLetters(text);
  const cutAfter = (kept: number) => `${letters.slice(0, kept).join('').trimEnd()}…`;
  const most = countLettersWithin(letters, (maxLines * width) / least, bold);
  // Lines that end between words read better, where they do not cost half of the letters.
  for (let kept = most; kept > most / 2; kept--) {
    const lines = findLineBreaks(measureText(cutAfter(kept), bold), width / least, maxLines);
    if (lines !== undefined) return { lines, fontSize: fontSize * smallestShare, cut: true };
  }
  for (let kept = most; kept > 1; kept--) {
    const label = fitLabel(cutAfter(kept), width, fontSize, maxLines, bold);
    if (label.fontSize >= least) return { ...label, cut: true };
  }
  return { ...fitLabel(`${letters[0] ?? ''}…`, width, fontSize, maxLines, bold), cut: true };
}

function countLettersWithin(letters: readonly string[], widthEms: number, bold: boolean): number {
  let filled = 0;
  const beyond = letters.findIndex((letter) => {
    filled += estimateWidthEms(letter, bold);
    return filled > widthEms;
  });
  return beyond < 0 ? letters.length : beyond;
}

/** A mark that belongs to the letter before it stays with it. */
function listLetters(text: string): readonly string[] {
  return text.match(/\P{M}\p{M}*|\p{M}+/gu) ?? [];
}

/** Equal shares of the letters. */
function breakLetters(text: string, maxLines: number, bold: boolean): readonly string[] {
  const letters = listLetters(text);
  const share = estimateWidthEms(text, bold) / maxLines;
  const lines: string[] = [''];
  for (const letter of letters) {
    const line = lines.at(-1) ?? '';
    const full = line !== '' && estimateWidthEms(line, bold) >= share - 0.01;
    if (full && lines.length < maxLines) lines.push(letter);
    else lines[lines.length - 1] = line + letter;
  }
  return lines.map((line) => line.trim());
}
