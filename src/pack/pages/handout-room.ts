import type { Element, ElementContent } from 'hast';

/** Heights in mm that the rows to write in may have; the styles of handouts have a class for each. */
export const ROOMS_MM = [9, 11, 13, 16, 20, 25, 32, 40, 50] as const;

export type RoomMm = (typeof ROOMS_MM)[number];

/** What an A4 sheet holds between its margins, less a little for what is estimated too low. */
const SHEET_MM = 267 * 0.97;

/** By so much a sheet may seem to be too full with the lowest rows: the estimate is rather too high. */
const TIGHT_MM = 10;

/** Where a handout takes more than a sheet anyway. */
const MIDDLE_ROOM_MM: RoomMm = 16;

/** Lines for name and date, the title. */
const HEAD_MM = 28;

/**
 * A line of 13 pt, and how much fits on one of the sheet's width. These and the other sizes were measured on the
 * demonstration's eight handouts, printed by Chromium; of what they hold without rows to write in, the estimate is
 * between 14 mm too low and 10 mm too high.
 */
const LINE_MM = 6.4;
const LETTERS_A_LINE = 86;

/** What stands below or above a block, and what a blank to write in adds to its line. */
const GAP_MM = 2;
const BLANK_MM = 4;

/** Of cards of gestures, five in a row. */
const CARD_ROW_MM = 68;
const CARDS_A_ROW = 5;

/** A picture of the author's: nothing is known of its size. */
const PICTURE_MM = 80;

/**
 * How high the rows to write in may be so that a handout fills its sheet and no more; nothing where it has no such rows.
 * An estimate: where even the lowest rows do not fit one sheet, a middle height, on as many sheets as that takes.
 */
export function computeRoomMm(body: readonly ElementContent[]): RoomMm | undefined {
  const rows = listOpenRows(body);
  if (rows.length === 0) return undefined;
  const ownMm = rows.map(measureRow);
  const spareMm = SHEET_MM - HEAD_MM - measureAll(body, 1);
  const needMm = (room: number) => ownMm.reduce((sum, own) => sum + Math.max(own, room), 0);
  const fitting = ROOMS_MM.filter((room) => needMm(room) <= spareMm).at(-1);
  return fitting ?? (needMm(ROOMS_MM[0]) <= spareMm + TIGHT_MM ? ROOMS_MM[0] : MIDDLE_ROOM_MM);
}

function listOpenRows(nodes: readonly ElementContent[]): Element[] {
  return nodes.flatMap((node) => {
    if (node.type !== 'element') return [];
    return isOpenRow(node) ? [node] : listOpenRows(node.children);
  });
}

/** A row of a table with a cell to write in. */
function isOpenRow({ tagName, children }: Element): boolean {
  return (
    tagName === 'tr' &&
    children.some((cell) => cell.type === 'element' && cell.tagName === 'td' && cell.children.length === 0)
  );
}

function measureAll(nodes: readonly ElementContent[], columns: number): number {
  return nodes.reduce((sum, node) => sum + (node.type === 'element' ? measure(node, columns) : 0), 0);
}

/** Height of a block in mm, the rows to write in left out. */
function measure(node: Element, columns: number): number {
  if (node.tagName === 'svg' || hasClass(node, 'figure-store')) return 0;
  if (node.tagName === 'img') return PICTURE_MM;
  if (hasClass(node, 'gesture-group')) return 14 + CARD_ROW_MM * Math.ceil(countCards(node) / CARDS_A_ROW);
  if (hasClass(node, 'strip-night')) return CARD_ROW_MM / CARDS_A_ROW;
  if (hasClass(node, 'tonight')) return 14 + measureAll(node.children, 1.45);
  if (isOpenRow(node)) return 0;
  if (node.tagName === 'tr') return Math.max(10.5, measureRow(node));
  if (/^(p|li|h[1-6])$/.test(node.tagName)) return measureText(node, columns);
  return measureAll(node.children, columns);
}

/** No column of a table is narrower than so many letters. */
const LEAST_LETTERS = 6;

/** Height in mm of what stands in a row's cells. A table gives each column width by what is in it, so they even out. */
function measureRow({ children }: Element): number {
  const letters = children.reduce(
    (sum, cell) => sum + (cell.type === 'element' ? Math.max(LEAST_LETTERS, countLetters(cell)) : 0),
    0,
  );
  // How a name is said stands on a line of its own in a table.
  const lines = Math.ceil(letters / LETTERS_A_LINE) + (children.some((cell) => holds(cell, ['name-say'])) ? 1 : 0);
  return lines * LINE_MM + GAP_MM;
}

/** @param columns How many such blocks stand side by side. */
function measureText(node: Element, columns: number): number {
  const lines = Math.max(1, Math.ceil((countLetters(node) * columns) / LETTERS_A_LINE));
  return lines * (LINE_MM + (holds(node, ['blank', 'blank-line']) ? BLANK_MM : 0)) + GAP_MM;
}

function countLetters(node: ElementContent): number {
  if (node.type === 'text') return node.value.length;
  return node.type === 'element' ? node.children.reduce((sum, child) => sum + countLetters(child), 0) : 0;
}

function countCards(node: Element): number {
  return node.children.reduce((sum, child) => {
    if (child.type !== 'element') return sum;
    return sum + (hasClass(child, 'gesture-card') ? 1 : countCards(child));
  }, 0);
}

function holds(node: ElementContent, classes: readonly string[]): boolean {
  if (node.type !== 'element') return false;
  return classes.some((name) => hasClass(node, name)) || node.children.some((child) => holds(child, classes));
}

function hasClass({ properties: { className } }: Element, name: string): boolean {
  return Array.isArray(className) && className.includes(name);
}
