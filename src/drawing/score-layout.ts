import { breakLines, type GroupPiece } from './break-lines.ts';
import { figureBox } from './figure/figure.ts';
import { roundTo } from './round.ts';
import { gatherScoreNeeds, type NightNeeds, type ScoreNeeds } from './score-needs.ts';

/**
 * The page of the score in millimetres: A3 landscape, which prints on A4 at 71 %. `top` and `bottom` bound the music;
 * the margins are wider than what a common printer leaves white.
 */
export const scorePage = { width: 420, height: 297, left: 12, right: 408, top: 30, bottom: 282 } as const;

/**
 * Heights and sizes in millimetres of what stands in a row, top to bottom, where names are `usualNameFont` high: they
 * grow and shrink with the names. Chosen by eye on paper. Moons and figures take what is left of the height.
 */
export const row = {
  groupLabel: 7.8,
  groupFont: 7.4,
  beat: 5.7,
  beatRadius: 2.45,
  aroundMoon: 0.8,
  dateFont: 3.9,
  date: 4.7,
  belowRow: 1.9,
  week: 3.1,
  weekFont: 4,
} as const;

const usualNameFont = 6.4;

/** Millimetres from line to line of a name, as a share of its size. */
export const nameLeading = 1.05;

/** Width that texts may take of a cell. */
export const textShare = 0.925;

/** Where everything on the score goes. All lengths in millimetres. */
export interface ScoreLayout {
  readonly rows: readonly (readonly GroupPiece[])[];
  /** Width of a night's cell, the same all over the score. */
  readonly pitch: number;
  /** Where the first row begins. */
  readonly top: number;
  readonly rowHeight: number;
  /** What all sizes in `row` are multiplied by. */
  readonly scale: number;
  readonly moonRadius: number;
  /** Height of the box of a figure; 0 where no night has a gesture. */
  readonly figureHeight: number;
  readonly nameFont: number;
  /** Lines that a name may take, 1 or 2; dates stand below that in every cell. */
  readonly nameLines: number;
  /** Size of all dates. */
  readonly dateFont: number;
}

/** A wider name is set smaller, down to this share, so that the others need not be. */
const leastNameShare = 0.92;

const largestNameFont = 11;
const largestScale = 1.3;
const smallestScale = 0.35;
const largestFigure = 62;
const largestMoonRadius = 13;

/** Share of the height for Moon and figure that the Moon takes. */
const moonShareOfHeight = 0.3;
const moonShareOfPitch = 0.46;
const figureShareOfPitch = 0.97;

/** Sizes at which a name and a figure count as one: what is gained beyond them counts less and less. */
const wantedName = 6.5;
const wantedFigure = 32;

type Rows = readonly (readonly GroupPiece[])[];

/**
 * Chooses how many nights stand on a line and how large all is drawn: names as large as can be and figures that are not
 * small beside them, a little less large when the lines are more even or no group is split.
 * @param groups nights of each group, in order
 * @throws RangeError when there is no night
 */
export function computeScoreLayout(groups: readonly (readonly NightNeeds[])[]): ScoreLayout {
  return findBestLayout(gatherScoreNeeds(groups));
}

function findBestLayout(needs: ScoreNeeds): ScoreLayout {
  let best: { readonly layout: ScoreLayout; readonly worth: number } | undefined;
  for (let capacity = Math.min(4, needs.nights); capacity <= Math.min(14, needs.nights); capacity++) {
    const rows = breakLines(needs.sizes, capacity);
    const shape = worthOfShape(rows, needs.sizes);
    for (const nameLines of [1, 2] as const) {
      for (const layout of listLayouts(rows, nameLines, needs)) {
        const worth = shape * worthOfSizes(layout);
        if (best === undefined || worth > best.worth) best = { layout, worth };
      }
    }
  }
  if (best === undefined) throw new RangeError('no number of nights on a line was tried');
  return best.layout;
}

function countNights(pieces: readonly GroupPiece[]): number {
  return pieces.reduce((sum, piece) => sum + piece.count, 0);
}

/** Less for the share of the lines that stays empty (root mean square), and for each time a group had to be split. */
function worthOfShape(rows: Rows, sizes: readonly number[]): number {
  const widest = Math.max(...rows.map(countNights));
  const gaps = rows.reduce((sum, pieces) => sum + (1 - countNights(pieces) / widest) ** 2, 0) / rows.length;
  const splits = rows.flat().length - sizes.filter((size) => size > 0).length;
  return (1 - 0.6 * Math.sqrt(gaps)) * 0.9 ** splits;
}

/** Names are read from afar, figures are told apart from afar: neither can make up for the other. */
function worthOfSizes({ nameFont, figureHeight, moonRadius }: ScoreLayout): number {
  const figure = figureHeight === 0 ? moonRadius / 7 : figureHeight / wantedFigure;
  return (nameFont / wantedName) ** 0.55 * Math.min(figure, 1.5) ** 0.45;
}

/** Layouts of these rows with names from as large as fits down to half of that. */
function listLayouts(rows: Rows, nameLines: 1 | 2, needs: ScoreNeeds): ScoreLayout[] {
  // A short run is not spread over the whole width, a single row not over the whole height.
  const pitch = (scorePage.right - scorePage.left) / Math.max(5, ...rows.map(countNights));
  const height = scorePage.bottom - scorePage.top;
  const rowHeight = height / Math.max(2, rows.length);
  const top = scorePage.top + (height - rowHeight * rows.length) / 2;
  const widest = needs.nameEms[nameLines - 1] ?? 1;
  const most = Math.min(largestNameFont, (pitch * textShare) / (widest * leastNameShare));
  return Array.from({ length: 11 }, (_, step) => most * (1 - step / 20)).map((nameFont) =>
    fillRow({ rows, pitch, top, rowHeight, nameLines, nameFont: roundTo(nameFont, 2) }, needs),
  );
}

/** Gives Moon and figure what the texts leave of a row's height. */
function fillRow(
  frame: Pick<ScoreLayout, 'rows' | 'pitch' | 'top' | 'rowHeight' | 'nameLines' | 'nameFont'>,
  { dateEms, hasFigures, hasWeek }: ScoreNeeds,
): ScoreLayout {
  const { pitch, rowHeight, nameLines, nameFont } = frame;
  const scale = Math.max(smallestScale, Math.min(largestScale, nameFont / usualNameFont));
  const texts =
    scale * (row.groupLabel + row.beat + 2 * row.aroundMoon + row.date + row.belowRow + (hasWeek ? row.week : 0));
  const rest = Math.max(rowHeight / 8, rowHeight - texts - nameLines * nameLeading * nameFont);
  const widestMoon = Math.min(largestMoonRadius, (pitch * moonShareOfPitch) / 2);
  const highestFigure = Math.min(largestFigure, (pitch * figureShareOfPitch * figureBox.height) / figureBox.width);
  const moonRadius = Math.min(widestMoon, (rest * (hasFigures ? moonShareOfHeight : 1)) / 2);
  const figureHeight = hasFigures ? Math.min(highestFigure, rest - 2 * moonRadius) : 0;
  // What a figure cannot take, the Moon may.
  const grown = Math.min(widestMoon, Math.max(moonRadius, (rest - figureHeight) / 2));
  const dateFont = roundTo(Math.min(row.dateFont * scale, (pitch * textShare) / dateEms), 2);
  return { ...frame, scale, moonRadius: roundTo(grown, 2), figureHeight: roundTo(figureHeight, 2), dateFont };
}
