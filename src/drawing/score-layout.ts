import { breakLines, type GroupPiece } from './break-lines.ts';
import { estimateWidthEms, findLineBreaks, type MeasuredText, measureText } from './fit-label.ts';
import { roundTo } from './round.ts';

/** The page of the score in millimetres: A3 landscape, which prints on A4 at 71 %. */
export const scorePage = { width: 420, height: 297, left: 20, right: 400, top: 49, bottom: 281 } as const;

/** Sizes of one night's cell in millimetres at scale 1, top to bottom. Chosen by eye on paper. */
export const cell = {
  groupLabel: 9.6,
  beat: 7,
  moonRadius: 10,
  belowMoon: 2.4,
  nameFont: 5.4,
  nameLine: 6.2,
  dateFont: 4.2,
  dateLine: 5.2,
  cueFont: 4,
  cueLine: 4.8,
  bracket: 7,
  betweenRows: 3,
} as const;

/** Longest cue that the score shows, in letters, and the lines it may take: a wall page has room for few words. */
const cueMaxLetters = 64;
const cueMaxLines = 3;

/** One name must not make all the month small: a wider one, or one with a wider word, is set smaller or cut off itself. */
const nameMaxEms = 24;
const nameWordMaxEms = 12;

/** What the layout must know of a night. */
export interface NightTexts {
  readonly name: string;
  readonly nightOfMonth: number;
  readonly date: string;
  readonly cue?: string;
  readonly inWeek: boolean;
}

/** Where everything on the score goes. */
export interface ScoreLayout {
  readonly rows: readonly (readonly GroupPiece[])[];
  /** Width of a night's cell, the same all over the score. */
  readonly pitch: number;
  /** Height of a row, and what all sizes in `cell` are multiplied by. */
  readonly rowHeight: number;
  readonly scale: number;
  /** In millimetres, scale and all: the Moons take the height that the texts leave. */
  readonly moonRadius: number;
  /** Lines that the longest name may take, 1 or 2; dates stand below that in every cell. */
  readonly nameLines: number;
  /** Size of all dates in millimetres, scale and all. */
  readonly dateFont: number;
  /** Lines that the longest cue shown takes; 0 when cues are left out. */
  readonly cueLines: number;
}

const largestScale = 1.2;
const smallestScale = 0.4;
const leastScaleWithCues = 0.75;
const scaleStep = 0.05;

/** Dates may be this much smaller than they should be, to fit their cells. */
const leastDateShare = 0.85;

/** Width that texts may take of a cell, and that a Moon may. */
export const textShare = 0.9;
const moonShare = 0.7;

type Rows = readonly (readonly GroupPiece[])[];

/** What the search needs to know of all texts, gathered once. */
interface TextNeeds {
  readonly sizes: readonly number[];
  /** Names that every cell must hold at full size. */
  readonly names: readonly MeasuredText[];
  readonly nights: number;
  /** Lines that a name which is too wide for its cell shall have. */
  readonly leastNameLines: 0 | 2;
  /** Width of the widest date with its number. */
  readonly dateEms: number;
  readonly cues: readonly MeasuredText[];
  readonly bracket: number;
}

/** Tells the cue that the score shows for a night; undefined for none and for one that is too long for a wall page. */
export function findShortCue(night: { readonly cue?: string }): string | undefined {
  return night.cue !== undefined && night.cue.length <= cueMaxLetters ? night.cue : undefined;
}

/**
 * Chooses how many nights stand on a line and how large all is drawn: the largest drawing that fits on the page, a
 * little less large when its lines are more even or names keep to one line. Cues are left out, all of them, when they would make it small.
 * @param groups nights of each group, in order
 * @throws RangeError when there is no night
 */
export function computeScoreLayout(groups: readonly (readonly NightTexts[])[]): ScoreLayout {
  const nights = groups.flat();
  if (nights.length === 0) throw new RangeError('a score needs at least one night');
  const allNames = nights.map((night) => measureText(night.name, true));
  const names = allNames.filter(isOfUsualWidth);
  const needs: TextNeeds = {
    sizes: groups.map((group) => group.length),
    names,
    nights: nights.length,
    leastNameLines: names.length < allNames.length ? 2 : 0,
    dateEms: Math.max(...nights.map((night) => estimateWidthEms(`${night.nightOfMonth} · ${night.date}`, true))),
    cues: nights.flatMap((night) => findShortCue(night) ?? []).map((cue) => measureText(cue, false)),
    bracket: nights.some((night) => night.inWeek) ? cell.bracket : 0,
  };
  const withCues = findBestLayout(needs);
  if (withCues.cueLines === 0 || withCues.scale >= leastScaleWithCues) return withCues;
  return findBestLayout({ ...needs, cues: [] });
}

function isOfUsualWidth({ ems, words }: MeasuredText): boolean {
  return ems <= nameMaxEms && words.every((word) => word.emsAtLineEnd <= nameWordMaxEms);
}

function findBestLayout(needs: TextNeeds): ScoreLayout {
  const total = needs.nights;
  let best: { readonly layout: ScoreLayout; readonly worth: number } | undefined;
  for (let capacity = Math.min(5, total); capacity <= Math.min(12, total); capacity++) {
    const rows = breakLines(needs.sizes, capacity);
    const loss = 0.8 * unevenness(rows, needs.sizes);
    if (best !== undefined && largestPossible(rows, needs) - loss <= best.worth) continue;
    const layout = fitRows(rows, needs);
    const worth = layout.scale - loss - (layout.nameLines > 1 ? 0.06 : 0);
    if (best === undefined || worth > best.worth) best = { layout, worth };
  }
  if (best === undefined) throw new RangeError('no number of nights on a line was tried');
  return best.layout;
}

function countNights(row: readonly GroupPiece[]): number {
  return row.reduce((sum, piece) => sum + piece.count, 0);
}

/** Share of the lines that stays empty (root mean square), and a little for each time a group had to be split. */
function unevenness(rows: Rows, sizes: readonly number[]): number {
  const widest = Math.max(...rows.map(countNights));
  const gaps = rows.reduce((sum, row) => sum + (1 - countNights(row) / widest) ** 2, 0) / rows.length;
  const splits = rows.flat().length - sizes.filter((size) => size > 0).length;
  return Math.sqrt(gaps) + 0.3 * splits;
}

/** A short run is not spread over the whole width: six cells at least. */
function pitchOf(rows: Rows): number {
  return (scorePage.right - scorePage.left) / Math.max(6, ...rows.map(countNights));
}

function rowHeightOf(rows: Rows): number {
  return (scorePage.bottom - scorePage.top) / Math.max(2, rows.length);
}

function largestPossible(rows: Rows, needs: TextNeeds): number {
  const high = (rowHeightOf(rows) - cell.betweenRows) / rowNeed(needs, 1, needs.cues.length === 0 ? 0 : 1);
  const wide = (pitchOf(rows) * moonShare) / (2 * cell.moonRadius);
  return Math.min(largestScale, wide, high);
}

/** The largest scale at which these rows fit; the smallest of all when none does: there texts shrink to fit. */
function fitRows(rows: Rows, needs: TextNeeds): ScoreLayout {
  const pitch = pitchOf(rows);
  const rowHeight = rowHeightOf(rows);
  const room = rowHeight - cell.betweenRows;
  const first = Math.floor(largestPossible(rows, needs) / scaleStep);
  for (let steps = first; steps * scaleStep > smallestScale; steps--) {
    const scale = roundTo(steps * scaleStep, 2);
    const width = (pitch * textShare) / scale;
    const usualLines = countLines(needs.names, width / cell.nameFont, 2);
    const cueLines = countLines(needs.cues, width / cell.cueFont, cueMaxLines);
    if (usualLines === undefined || cueLines === undefined) continue;
    if (needs.dateEms * cell.dateFont * leastDateShare > width) continue;
    const nameLines = Math.max(usualLines, needs.leastNameLines);
    const spare = room - scale * rowNeed(needs, nameLines, cueLines);
    if (spare < 0) continue;
    const moonRadius = Math.min(scale * cell.moonRadius + spare / 2, (pitch * moonShare) / 2);
    return {
      rows,
      pitch,
      rowHeight,
      scale,
      moonRadius,
      nameLines,
      dateFont: dateFontOf(pitch, scale, needs),
      cueLines,
    };
  }
  const scale = Math.min(smallestScale, room / rowNeed(needs, 2, 0));
  const moonRadius = Math.min(scale * cell.moonRadius, (pitch * moonShare) / 2);
  const dateFont = dateFontOf(pitch, scale, needs);
  return { rows, pitch, rowHeight, scale, moonRadius, nameLines: 2, dateFont, cueLines: 0 };
}

function dateFontOf(pitch: number, scale: number, { dateEms }: TextNeeds): number {
  return Math.min(cell.dateFont * scale, (pitch * textShare) / dateEms);
}

/** Height of a row at scale 1, without the space between rows. */
function rowNeed(needs: TextNeeds, nameLines: number, cueLines: number): number {
  return (
    cell.groupLabel +
    cell.beat +
    2 * cell.moonRadius +
    cell.belowMoon +
    nameLines * cell.nameLine +
    cell.dateLine +
    cueLines * cell.cueLine +
    needs.bracket
  );
}

/** Lines that the longest of the texts takes; undefined when one does not fit. */
function countLines(texts: readonly MeasuredText[], widthEms: number, maxLines: number): number | undefined {
  let most = 0;
  for (const text of texts) {
    const lines = findLineBreaks(text, widthEms, maxLines);
    if (lines === undefined) return undefined;
    most = Math.max(most, lines.length);
  }
  return most;
}
