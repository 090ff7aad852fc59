import { withoutUnseen } from '../../core/input/unseen.ts';

/** A cell of a table saved as CSV; null is an empty cell. */
export type CsvCell = string | number | null;

/** Spreadsheets take a cell that starts with one of these for a formula (OWASP, "CSV Injection"). */
const FORMULA_START = /^(?:\s*[=+\-@]|[\t\r])/;

function field(cell: CsvCell): string {
  if (cell === null) return '';
  // Six decimals: a millimetre, a thousandth of a millilitre; keeps binary noise out of spreadsheets.
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(Number(cell.toFixed(6))) : '';
  const seen = withoutUnseen(cell);
  const safe = FORMULA_START.test(seen) ? `'${seen}` : seen;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/**
 * A table as CSV (RFC 4180): comma, CRLF, quotes doubled. Names from map data that a spreadsheet would run as a
 * formula get an apostrophe before them; signs that nobody sees become blanks. Starts with a byte order mark, without which spreadsheets garble names.
 */
export function csvText(heads: readonly string[], rows: readonly (readonly CsvCell[])[]): string {
  const lines = [heads, ...rows].map((row) => row.map(field).join(','));
  return `\ufeff${lines.join('\r\n')}\r\n`;
}
