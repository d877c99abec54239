import { fail, type Outcome, type Problem, problem, succeed } from '../diagnostics/index.ts';
import { isNumeric, type TableCell, type TableColumn } from './column.ts';
import { type Decimal, decimalOf, withPoints } from './decimals.ts';
import { type Header, headerColumn, readHeaders } from './headers.ts';
import { DELIMITERS, type Delimiter, firstRow, plainText, type TextRow, textRows } from './records.ts';

/** What may be said of a text beforehand; what is not said is found out, or asked for by a refusal. */
export interface ReadOptions {
  readonly delimiter?: Delimiter;
  readonly decimal?: Decimal;
  /** Whether columns that the table lacks are left out and pointed out; otherwise they refuse the whole. */
  readonly leaveOut?: boolean;
  /** The most rows, 1,000,000 if not said. */
  readonly rowLimit?: number;
}

/**
 * A table as read. `cells` has, by column name, one cell for each row, of the columns the text has; the others stay
 * blank. `units` are the units stated in headers. `problems` point out rows that are not as they should be; the rows
 * are there all the same.
 */
export interface ReadTable {
  readonly length: number;
  readonly cells: Readonly<Record<string, readonly TableCell[]>>;
  readonly units: Readonly<Record<string, string>>;
  readonly delimiter: Delimiter;
  readonly decimal: Decimal;
  readonly problems: readonly Problem[];
}

const ROW_LIMIT = 1_000_000;

const NOWHERE = { from: 0, to: 0 };

/**
 * Reads CSV or clipboard text into the given columns of a table. Headers name columns by name or label, in any case,
 * with a unit after them if they like: `thickness (m)`, `Thickness [ft]`; a number alone under such a header becomes
 * an entry with that unit. Any other cell stays as written, without outer spaces; a plain number under no unit is a
 * number.
 *
 * Refused as a whole: an empty text, a missing header, headers that name no column or one twice, open quotation
 * marks, rows with too many cells, numbers that can be read two ways, too many rows. Kept and pointed out: rows with
 * too few cells, blank rows.
 */
export function readTable(
  text: string,
  columns: readonly TableColumn[],
  options: ReadOptions = {},
): Outcome<ReadTable> {
  const plain = plainText(text);
  const delimiter = options.delimiter ?? likelyDelimiter(plain, columns);
  const read = textRows(plain, delimiter);
  if (!read.ok) return read;
  const [top, ...rows] = read.value;
  if (top === undefined) return fail(problem('table-empty', NOWHERE, {}));
  const understood = readHeaders(top.cells, columns, options.leaveOut ?? false);
  if (!understood.ok) return understood;
  const limit = options.rowLimit ?? ROW_LIMIT;
  if (rows.length > limit) {
    return fail(problem('table-too-many-rows', NOWHERE, { rows: rows.length, limit }));
  }
  const stray = valueWithoutHeader(top.cells, rows);
  if (stray !== undefined) return fail(stray);
  const width = top.cells.findLastIndex((header) => header.trim() !== '') + 1;
  // Its cells may stand under the wrong headers, from a number on that its own comma broke in two.
  const [long, ...longer] = rows.flatMap((row, i) => longRow(row, i + 1, width, delimiter) ?? []);
  if (long !== undefined) return fail(long, ...longer);
  const { headers, warnings } = understood.value;
  const numeric = headers.filter(({ column }) => isNumeric(column));
  const decimal = decimalOf(rows, numeric, delimiter, options.decimal);
  if (!decimal.ok) return decimal;
  return succeed({
    length: rows.length,
    cells: Object.fromEntries(
      headers.map((header) => [header.column.name, cellsOf(header, rows, decimal.value)]),
    ),
    units: Object.fromEntries(
      headers.filter(({ unit }) => unit !== '').map(({ column, unit }) => [column.name, unit]),
    ),
    delimiter,
    decimal: decimal.value,
    problems: [...warnings, ...rows.flatMap((row, i) => rowProblem(row, i + 1, width) ?? [])],
  });
}

/** The delimiter with which the first row names the most columns, or else has the most cells. */
function likelyDelimiter(text: string, columns: readonly TableColumn[]): Delimiter {
  const ranked = DELIMITERS.map((delimiter) => {
    const cells = firstRow(text, delimiter);
    const named = cells.filter((cell) => headerColumn(cell, columns) !== undefined).length;
    return { delimiter, named, cells: cells.length };
  });
  ranked.sort((a, b) => b.named - a.named || b.cells - a.cells);
  const [best] = ranked;
  return best === undefined || best.cells === 1 ? ',' : best.delimiter;
}

// A number as a spreadsheet writes it, or a fraction: what a stated unit is put behind.
const PLAIN_NUMBER =
  /^[+\-−]?(?:(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d*)?(?:[eE][+\-−]?\d+)?|\.\d+(?:[eE][+\-−]?\d+)?|(?:\d+ )?\d+\/\d+)$/;

function cellsOf(
  { position, column, unit }: Header,
  rows: readonly TextRow[],
  decimal: Decimal,
): TableCell[] {
  const numeric = isNumeric(column);
  return rows.map(({ cells }) => {
    const written = cells[position]?.trim() ?? '';
    if (written === '') return null;
    if (!numeric) return written;
    const cell = decimal === 'comma' ? withPoints(written) : written;
    if (unit !== '') return PLAIN_NUMBER.test(cell) ? `${cell} ${unit}` : cell;
    const number = Number(cell);
    return String(number) === cell && Number.isFinite(number) ? number : cell;
  });
}

function valueWithoutHeader(headers: readonly string[], rows: readonly TextRow[]): Problem | undefined {
  const blank = headers.flatMap((header, position) => (header.trim() === '' ? [position] : []));
  for (const position of blank) {
    const row = rows.findIndex(({ cells }) => (cells[position]?.trim() ?? '') !== '');
    const found = rows[row];
    if (found === undefined) continue;
    const text = found.cells[position]?.trim() ?? '';
    const facts = { position: position + 1, row: row + 1, line: found.line, text };
    return problem('column-without-header', NOWHERE, facts);
  }
  return undefined;
}

function rowProblem({ line, cells }: TextRow, row: number, headers: number): Problem | undefined {
  if (cells.every((cell) => cell.trim() === '')) return problem('row-blank', NOWHERE, { row, line });
  if (cells.length < headers) {
    return problem('row-short', NOWHERE, { row, line, cells: cells.length, headers });
  }
  return undefined;
}

function longRow(
  { line, cells }: TextRow,
  row: number,
  headers: number,
  delimiter: Delimiter,
): Problem | undefined {
  const extra = cells.slice(headers).map((cell) => cell.trim());
  if (extra.every((cell) => cell === '')) return undefined;
  const number = delimiter === ',' ? brokenNumber(cells) : '';
  const facts = { row, line, cells: cells.length, headers, extra: extra.join(', '), number };
  return problem('row-long', NOWHERE, facts);
}

/** A number that the commas between its thousands seem to have broken into several cells, else `''`. */
function brokenNumber(cells: readonly string[]): string {
  const row = cells.map((cell) => (cell.includes(',') ? '' : cell.trim())).join(',');
  return /(?<![^,])[+\-−$]?\d{1,3}(?:,\d{3})+(?:\.\d*)?(?![^, ])/.exec(row)?.[0] ?? '';
}
