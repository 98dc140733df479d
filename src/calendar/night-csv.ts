import type { NightRow } from './night-row.ts';

/** The columns in order, each with its cell; null is an empty cell. */
const COLUMNS: readonly (readonly [name: string, read: (row: NightRow) => string | number | boolean | null])[] = [
  ['date', (row) => row.date],
  ['begins', (row) => row.begins],
  ['ends', (row) => row.ends],
  ['night', (row) => row.night.name],
  ['night-number', (row) => row.night.number],
  ['group', (row) => row.night.group],
  ['repeat', (row) => row.night.repeat],
  ['night-of-month', (row) => row.nightOfMonth],
  ['month', (row) => row.month.name],
  ['month-number', (row) => row.month.number],
  ['year', (row) => row.month.year],
  ['month-first-date', (row) => row.month.firstDate],
  ['month-length', (row) => row.month.length],
  ['intercalary', (row) => row.month.intercalary],
  ['moon-age-days', (row) => row.moonAgeDays],
  ['illuminated-fraction', (row) => row.illuminatedFraction],
  ['phase', (row) => row.phase?.name ?? null],
  ['phase-at', (row) => row.phase?.at ?? null],
  ['sunset', (row) => row.sunset],
  ['sunrise', (row) => row.sunrise],
  ['moonrise', (row) => row.moonrise],
  ['moonset', (row) => row.moonset],
  ['basis', (row) => row.basis],
];

/** The header line of a table of nights as RFC 4180 has it, without its line end. */
export const NIGHT_CSV_HEADER = COLUMNS.map(([name]) => name).join(',');

/**
 * What makes spreadsheets take a text for a formula when it comes first: the characters of OWASP's Application Security
 * Verification Standard 5.0, requirement 1.2.10, and carriage return. Spreadsheets for Japanese also take the wide forms
 * (common practice, no source).
 */
const FORMULA_SIGNS = /^[=+\-@\t\r\0\uFF1D\uFF0B\uFF0D\uFF20]/;

/** A name that begins like a formula gets an apostrophe before it, which makes it text. */
function guardText(value: string): string {
  return FORMULA_SIGNS.test(value) ? `'${value}` : value;
}

/** A field stands in quotes where a comma, a quote or a line end is in it; quotes are doubled (RFC 4180, section 2). */
function renderField(value: string | number | boolean | null): string {
  const text = typeof value === 'string' ? guardText(value) : String(value ?? '');
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** A night as a record of RFC 4180 under {@link NIGHT_CSV_HEADER}, without its line end (CR LF). */
export function renderNightCsv(row: NightRow): string {
  return COLUMNS.map(([, read]) => renderField(read(row))).join(',');
}
