import { fail, type Outcome, type Problem, problem, succeed } from '../diagnostics/index.ts';
import { isBareNumber } from '../units/index.ts';
import { columnWords, isNumeric, type TableCell, type TableColumn } from './column.ts';
import { type Decimal, decimalOf, withPoints } from './decimals.ts';
import { type Mapping, namedMapping, type TakenColumn, takenColumns } from './mapping.ts';
import type { Delimiter, TextRow } from './records.ts';
import { type TableText, tableText } from './table-text.ts';
import { columnFacts, dataRows, looksLikeData, type TextColumn, textColumns } from './text-columns.ts';

/** What may be said of a text beforehand; what is not said is found out, or asked for by a refusal. */
export interface ReadOptions {
  readonly delimiter?: Delimiter;
  readonly decimal?: Decimal;
  /** The most rows, 1,000,000 if not said. */
  readonly rowLimit?: number;
}

/**
 * A table as read. `cells` has, by column name, one cell for each row, of the columns the text has; the others stay
 * blank. `units` are the units stated for them. `problems` point out rows that are not as they should be; the rows
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

/** The problem with columns of a text that go nowhere yet, at least one. */
type Unsettled = (open: readonly [TextColumn, ...TextColumn[]]) => Problem;

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
  const parted = tableText(text, columns, options.delimiter);
  if (!parted.ok) return parted;
  const mapping = namedMapping(parted.value, columns);
  const given = columns.filter(({ kind }) => kind === 'given').map(columnWords);
  return read(parted.value, columns, mapping, options, (open) =>
    unknownHeaders(open, given, parted.value, mapping),
  );
}

/**
 * Reads a text whose columns go where a mapping says, and otherwise like {@link readTable}. Columns it does not
 * settle refuse the whole.
 */
export function readMapped(
  text: TableText,
  columns: readonly TableColumn[],
  mapping: Mapping,
  options: Omit<ReadOptions, 'delimiter'> = {},
): Outcome<ReadTable> {
  return read(text, columns, mapping, options, (open) => {
    const data = mapping.headed && mapping.goes.size === 0 && looksLikeData(text);
    return problem('column-undecided', NOWHERE, { columns: open.map(columnFacts), data });
  });
}

function read(
  text: TableText,
  columns: readonly TableColumn[],
  { headed, goes }: Mapping,
  options: ReadOptions,
  unsettled: Unsettled,
): Outcome<ReadTable> {
  const found = textColumns(text, headed);
  const understood = takenColumns(found, columns, goes, unsettled);
  if (!understood.ok) return understood;
  const { delimiter } = text;
  const rows = dataRows(text, headed);
  const limit = options.rowLimit ?? ROW_LIMIT;
  if (rows.length > limit) {
    return fail(problem('table-too-many-rows', NOWHERE, { rows: rows.length, limit }));
  }
  const width = (found.at(-1)?.position ?? -1) + 1;
  // Its cells may stand in the wrong columns, from a number on that its own comma broke in two.
  const [long, ...longer] = rows.flatMap((row, i) => longRow(row, i + 1, width, delimiter) ?? []);
  if (long !== undefined) return fail(long, ...longer);
  const { taken, warnings } = understood.value;
  const numeric = taken.filter(({ column }) => isNumeric(column));
  const decimal = decimalOf(rows, numeric, delimiter, options.decimal);
  if (!decimal.ok) return decimal;
  return succeed({
    length: rows.length,
    cells: Object.fromEntries(taken.map((one) => [one.column.name, cellsOf(one, rows, decimal.value)])),
    units: Object.fromEntries(
      taken.filter(({ unit }) => unit !== '').map(({ column, unit }) => [column.name, unit]),
    ),
    delimiter,
    decimal: decimal.value,
    problems: [...warnings, ...rows.flatMap((row, i) => rowProblem(row, i + 1, width) ?? [])],
  });
}

/** What is wrong with headers that name no column, where nobody is there to say what they go to. */
function unknownHeaders(
  open: readonly [TextColumn, ...TextColumn[]],
  columns: readonly string[],
  text: TableText,
  { goes }: Mapping,
): Problem {
  if (goes.size === 0 && looksLikeData(text)) {
    return problem('table-header-missing', NOWHERE, { first: text.top.cells.join(', '), columns });
  }
  const headers = open.map(({ header }) => header).filter((header) => header !== '');
  if (headers.length > 0) return problem('column-unknown', NOWHERE, { headers, columns });
  const [{ position, first }] = open;
  if (first === undefined) throw new Error('a column without a header is found by its values');
  return problem('column-without-header', NOWHERE, { position: position + 1, ...first });
}

function cellsOf(
  { position, column, unit }: TakenColumn,
  rows: readonly TextRow[],
  decimal: Decimal,
): TableCell[] {
  const numeric = isNumeric(column);
  return rows.map(({ cells }) => {
    const written = cells[position]?.trim() ?? '';
    if (written === '') return null;
    if (!numeric) return written;
    const cell = decimal === 'comma' ? withPoints(written) : written;
    if (unit !== '') return isBareNumber(cell) ? `${cell} ${unit}` : cell;
    const number = Number(cell);
    return String(number) === cell && Number.isFinite(number) ? number : cell;
  });
}

function rowProblem({ line, cells }: TextRow, row: number, columns: number): Problem | undefined {
  if (cells.every((cell) => cell.trim() === '')) return problem('row-blank', NOWHERE, { row, line });
  if (cells.length < columns) {
    return problem('row-short', NOWHERE, { row, line, cells: cells.length, columns });
  }
  return undefined;
}

function longRow(
  { line, cells }: TextRow,
  row: number,
  columns: number,
  delimiter: Delimiter,
): Problem | undefined {
  const extra = cells.slice(columns).map((cell) => cell.trim());
  if (extra.every((cell) => cell === '')) return undefined;
  const number = delimiter === ',' ? brokenNumber(cells) : '';
  const facts = { row, line, cells: cells.length, columns, extra: extra.join(', '), number };
  return problem('row-long', NOWHERE, facts);
}

/** A number that the commas between its thousands seem to have broken into several cells, else `''`. */
function brokenNumber(cells: readonly string[]): string {
  const row = cells.map((cell) => (cell.includes(',') ? '' : cell.trim())).join(',');
  return /(?<![^,])[+\-−$]?\d{1,3}(?:,\d{3})+(?:\.\d*)?(?![^, ])/.exec(row)?.[0] ?? '';
}
