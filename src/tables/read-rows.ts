import { type Problem, problem } from '../diagnostics/index.ts';
import { type Account, type Ledger, openLedger } from './account.ts';
import { bareBesideUnits } from './bare-beside-units.ts';
import { cellReader } from './cell-entry.ts';
import { slipIn } from './cell-slip.ts';
import { columnLetters, isNumeric, type TableCell, type TableColumn } from './column.ts';
import { type Decimal, decimalOf } from './decimals.ts';
import { unguardText } from './guarded-text.ts';
import { unitOfColumn } from './headers.ts';
import { ignoredUnits } from './ignored-units.ts';
import { leftOutMultiples } from './left-out-multiples.ts';
import { leftOutUnits } from './left-out-units.ts';
import { type Mapping, type SortedColumns, sortColumns, type TakenColumn } from './mapping.ts';
import {
  aboveHeaders,
  calledTotals,
  isKept,
  leftOutRows,
  notesLeftOut,
  unansweredRows,
} from './other-rows.ts';
import { longRow, shortRow } from './ragged-rows.ts';
import type { Consents, ReadOptions, TableReading } from './reading.ts';
import { realTrouble } from './real-trouble.ts';
import { isBlankRow, type TextRow } from './records.ts';
import { rowKinds } from './row-kinds.ts';
import { rowUnitCells, rowUnitProblems } from './row-units.ts';
import { splitDecimals } from './split-decimals.ts';
import { splitNumbers } from './split-numbers.ts';
import { sumsApart } from './sums-apart.ts';
import type { TableText } from './table-text.ts';
import { changedHeaders, dataRows, headerRepeats, type TextColumn, textColumns } from './text-columns.ts';
import { unclearCells } from './unclear-cells.ts';

/** The problem with columns of a text that go nowhere yet, at least one. */
type Unsettled = (open: readonly [TextColumn, ...TextColumn[]]) => Problem;

/** How many cells are told one by one; of more the number is told. */
const CELLS_TOLD = 100;

const ROW_LIMIT = 1_000_000;

const NOWHERE = { from: 0, to: 0 };

/** Reads the rows of a text whose columns go where a mapping says, and accounts for every cell of it. */
export function readRows(
  text: TableText,
  columns: readonly TableColumn[],
  mapping: Mapping,
  options: ReadOptions,
  unsettled: Unsettled,
): TableReading {
  const { headed } = mapping;
  const ledger = openLedger(text.rows);
  const found = textColumns(text, headed);
  const sorted = sortColumns(found, columns, mapping.goes, text.registry, unsettled);
  const problems: Problem[] = [...sorted.problems];
  if (headed) problems.push(...aboveHeaders(text, options, ledger));
  for (const { at, line } of text.rows) if (text.skipped.has(line)) ledger.writeRow(at, 'out');

  const repeats = headed ? headerRepeats(text) : [];
  for (const { at } of repeats) ledger.writeRow(at, 'heading');
  const changed = headed ? changedHeaders(text) : [];
  for (const { row, header, again } of changed) {
    ledger.writeRow(row.at, 'refused');
    problems.push(problem('headings-change', NOWHERE, { line: row.line, header, again }));
  }
  const all = dataRows(text, headed).filter((row) => !changed.some((one) => one.row === row));
  // Nothing but its place says which row is which.
  const isAligned =
    options.inPlace === true &&
    sorted.taken.every(({ column }) => isNumeric(column) || column.options !== undefined);
  const between = isAligned ? rowsBetween(all) : [];
  if (between.length > 0 && options.blankRows === undefined)
    problems.push(problem('rows-blank-between', NOWHERE, { lines: between.map(({ line }) => line) }));
  const stays = new Set(options.blankRows === 'in' ? between : []);
  const blank = all.filter((row) => isBlankRow(row) && !stays.has(row));
  const filled = all.filter((row) => !isBlankRow(row) || stays.has(row));
  const width = (found.at(-1)?.position ?? -1) + 1;
  for (const row of filled) {
    const isPlain = options.thousands === 'plain';
    const long = longRow(row, Math.max(width, headed ? text.top.cells.length : 0), text.delimiter, isPlain);
    if (long === undefined) continue;
    ledger.writeRow(row.at, 'refused');
    problems.push(long);
  }
  const { taken } = sorted;
  const numeric = taken.filter(({ column }) => isNumeric(column));
  const decimal = decimalOf(filled, numeric, options.decimal, (row, position) =>
    ledger.write(row, position, 'refused'),
  );
  if (!decimal.ok) problems.push(...decimal.problems);
  const sign = decimal.ok ? decimal.value : 'point';
  const read = taken.map((one) => columnCells(one, filled, sign, text, options));
  // A saved table has as many cells in each row as it has columns: a number in two would make one more.
  const isSaved = sorted.calculated.size > 0 && filled.every(({ cells }) => cells.length === width);
  const lengths = new Set(
    taken.flatMap(({ column }, at) =>
      unitOfColumn(column, text.registry)?.dimension.key === 'L' ? [at] : [],
    ),
  );
  const kinds = rowKinds(filled, taken, read, { isSaved, lengths });
  problems.push(...unansweredRows(filled, kinds, options, ledger));
  const keeps = filled.map((row) => isKept(kinds.get(row), options));
  const rows = filled.filter((_, index) => keeps[index]);
  if (rows.length === 0 && options.noRows !== true) problems.push(problem('table-no-rows', NOWHERE, {}));
  const limit = options.rowLimit ?? ROW_LIMIT;
  if (rows.length > limit)
    problems.push(problem('table-too-many-rows', NOWHERE, { rows: rows.length, limit }));

  for (const row of filled) if (!isKept(kinds.get(row), options)) ledger.writeRow(row.at, 'out');
  const kept = read.map((cells) => cells.filter((_, index) => keeps[index]));
  for (const one of taken) {
    if (one.unitsAt !== undefined)
      problems.push(...rowUnitProblems(one, one.unitsAt, rows, sign, text, ledger));
  }
  const unsaid = notesLeftOut(kinds, options, text, headed);
  const start = rows[0]?.at ?? Number.POSITIVE_INFINITY;
  const notes = unsaid.filter(({ line }) => !text.skipped.has(line));
  problems.push(...leftOutMultiples(notes, taken, text.registry, ledger));
  problems.push(...leftOutUnits(unsaid, taken, kept, start, text.registry, ledger));
  problems.push(...ignoredUnits(sorted, found, kept, rows, text.registry, ledger));
  const items = rows.filter((row) => kinds.get(row) !== 'numbering');
  const unclear = unclearCells(taken, items, options, ledger);
  problems.push(...unclear.asked);
  if (decimal.ok) problems.push(...bareBesideUnits(taken, items, sign, text, options, ledger));
  const remarks = remarksOn(text, taken, kept, rows, width, options, ledger, decimal.ok);
  for (const [row, position] of unclear.cells) ledger.write(row, position, 'marked');
  const even = rows.filter(({ cells }) => cells.length <= width);
  if (options.thousands !== 'plain' && !isSaved)
    problems.push(...refuseSplits(even, sorted, width, text, options, remarks, ledger));
  const percents = decimal.ok ? shares(taken, kept, rows, text, ledger) : [];
  problems.push(...percents.filter(({ severity }) => severity === 'error'));
  writeColumns(text, headed, sorted, ledger, rows);

  const account = accountOf(sorted, rows, blank, ledger, problems.length > 0 ? remarks : undefined);
  const [first, ...more] = problems;
  if (first !== undefined || !decimal.ok) {
    const refusals = first === undefined ? [] : [first, ...more];
    return { ok: false, problems: [...refusals, ...remarks.errors], account };
  }
  return {
    ok: true,
    account,
    value: {
      length: rows.length,
      cells: Object.fromEntries(taken.map(({ column }, at) => [column.name, kept[at] ?? []])),
      units: Object.fromEntries(
        taken
          .filter(({ unit }) => unit !== '' && unit !== '-')
          .map(({ column, unit }) => [column.name, unit]),
      ),
      delimiter: text.delimiter,
      decimal: decimal.value,
      problems: [
        ...sorted.warnings,
        ...leftOutRows(kinds, blank, options, text, headed),
        ...calledTotals(kinds),
        ...sumsApart(filled, kinds, taken, read, text.registry, options),
        ...(repeats.length > 0
          ? [problem('rows-heading', NOWHERE, { lines: repeats.map(({ line }) => line) })]
          : []),
        ...(text.unseen.count > 0 ? [problem('signs-unseen', NOWHERE, { ...text.unseen })] : []),
        ...unclear.told,
        ...remarks.errors,
        ...remarks.warnings,
        ...percents,
      ],
    },
  };
}

/** The blank rows behind the first that is filled and before the last. */
function rowsBetween(rows: readonly TextRow[]): readonly TextRow[] {
  const first = rows.findIndex((row) => !isBlankRow(row));
  const last = rows.findLastIndex((row) => !isBlankRow(row));
  return rows.slice(Math.max(0, first), last + 1).filter(isBlankRow);
}

function columnCells(
  one: TakenColumn,
  rows: readonly TextRow[],
  decimal: Decimal,
  text: TableText,
  consents: Consents,
): readonly TableCell[] {
  if (one.unitsAt !== undefined) return rowUnitCells(one, one.unitsAt, rows, decimal, text, consents);
  const cellOf = cellReader(one, decimal, text, consents);
  return rows.map(({ cells }) => cellOf(cells[one.position]?.trim() ?? ''));
}

/** What is wrong with cells or remarkable in them, and which lie beyond the range of their column. */
interface Remarks {
  readonly errors: readonly Problem[];
  readonly warnings: readonly Problem[];
  readonly odd: ReadonlySet<string>;
  /** The cells with errors, which count as refused where the whole is. */
  readonly unread: readonly (readonly [row: number, position: number])[];
}

/**
 * Looks at every cell that is taken and writes what becomes of it. Where it is not settled how decimals are written,
 * numbers with a point or a comma are not looked at. A cell that its column does not read is kept as it was written.
 */
function remarksOn(
  { delimiter }: TableText,
  taken: readonly TakenColumn[],
  kept: readonly TableCell[][],
  rows: readonly TextRow[],
  width: number,
  { check, short: shortMeans }: ReadOptions,
  ledger: Ledger,
  isDecimalSettled: boolean,
): Remarks {
  const errors: Problem[] = [];
  const warnings: Problem[] = [];
  const odd = new Set<string>();
  const unread: (readonly [number, number])[] = [];
  const ended: number[] = [];
  for (const [index, row] of rows.entries()) {
    const short = isBlankRow(row) ? undefined : shortRow(row, width, delimiter);
    if (short?.code === 'row-short' && shortMeans === 'blank') ended.push(row.line);
    else if (short !== undefined) errors.push(short);
    for (const [at, { column, position, header }] of taken.entries()) {
      const cell = kept[at]?.[index] ?? null;
      if (cell === null || ledger.fateAt(row.at, position) === 'refused') continue;
      if (!isDecimalSettled && isNumeric(column) && /[.,]/.test(row.cells[position] ?? '')) continue;
      const shown = check?.(column.name, cell);
      const found =
        shown?.severity === 'error' && check ? realTrouble(shown, column.name, `${cell}`, check) : shown;
      ledger.write(row.at, position, found === undefined ? 'taken' : 'marked');
      if (found === undefined) continue;
      const written = unguardText(row.cells[position]?.trim() ?? '');
      if (found.severity === 'error' && check?.(column.name, written)?.severity === 'error')
        kept[at]?.splice(index, 1, written);
      const isWarning = found.severity === 'warning';
      if (isWarning) odd.add(`${row.at} ${position}`);
      else unread.push([row.at, position]);
      const slip = isNumeric(column) && !isWarning ? slipIn(written, found) : undefined;
      const list = isWarning ? warnings : errors;
      if ((isWarning ? odd.size : unread.length) > CELLS_TOLD) continue;
      list.push(
        problem(isWarning ? 'cell-remarkable' : 'cell-unread', NOWHERE, {
          line: row.line,
          letter: columnLetters(position),
          header,
          column: column.name,
          text: row.cells[position]?.trim() ?? '',
          // As the text has it, not as its decimals were read.
          reason: found.message.replaceAll(`“${cell}”`, `“${written}”`),
          remedy: found.hints.join('; '),
          ...(slip && { slip: { ...slip, unit: column.unit ?? '' } }),
        }),
      );
    }
  }
  if (unread.length > CELLS_TOLD)
    errors.push(problem('cells-unread-more', NOWHERE, { more: unread.length - CELLS_TOLD }));
  if (ended.length > 0) warnings.unshift(problem('rows-ended', NOWHERE, { lines: ended }));
  if (odd.size > CELLS_TOLD)
    warnings.push(problem('cells-remarkable-more', NOWHERE, { more: odd.size - CELLS_TOLD }));
  return { errors, warnings, odd, unread };
}

/** Cells that may be one number that its own comma parted in two. */
function refuseSplits(
  rows: readonly TextRow[],
  sorted: SortedColumns,
  width: number,
  { delimiter, source, registry }: TableText,
  { decimal }: ReadOptions,
  { odd }: Remarks,
  ledger: Ledger,
): readonly Problem[] {
  if (delimiter !== ',') return [];
  const isOdd = ({ at }: TextRow, position: number): boolean => odd.has(`${at} ${position}`);
  const numeric = sorted.taken.filter(({ column }) => isNumeric(column)).map(({ position }) => position);
  const left = sorted.out.filter(({ position }) => !sorted.calculated.has(position));
  const from = [...numeric, ...left.map(({ position }) => position)];
  const thousands = splitNumbers(rows, { from, numeric: new Set(numeric), width }, source, isOdd);
  // A cell that is told already is not told with its other neighbour, too.
  const known = new Set(
    thousands.flatMap(({ row, position }) => [-1, 0, 1].map((by) => `${row.at} ${position + by}`)),
  );
  const decimals = decimal === 'point' ? [] : splitDecimals(rows, sorted, width, source, registry);
  const found = [
    ...thousands,
    ...decimals.filter(({ row, position }) => !known.has(`${row.at} ${position}`)),
  ].sort((a, b) => a.position - b.position || a.row.at - b.row.at);
  const told = found.map(({ row, position, joined }) => {
    ledger.write(row.at, position, 'refused');
    ledger.write(row.at, position + 1, 'refused');
    const [first = '', second = ''] = [row.cells[position], row.cells[position + 1]];
    const letter = columnLetters(position);
    return { line: row.line, letter, first: first.trim(), second: second.trim(), joined };
  });
  const shown = told.slice(0, CELLS_TOLD).map((facts) => problem('cells-split', NOWHERE, facts));
  const more = told.length - shown.length;
  return more > 0 ? [...shown, problem('cells-split-more', NOWHERE, { more })] : shown;
}

/** Columns of per cent whose numbers, without a sign or a stated unit, are all shares of one, or some of them. */
function shares(
  taken: readonly TakenColumn[],
  kept: readonly (readonly TableCell[])[],
  rows: readonly TextRow[],
  { registry }: TableText,
  ledger: Ledger,
): readonly Problem[] {
  return taken.flatMap(({ column, position, header, unit }, at) => {
    if (unit !== '' || !isNumeric(column) || unitOfColumn(column, registry)?.text !== '%') return [];
    const bare = (kept[at] ?? []).flatMap((cell, index) => {
      const x = cell === null ? Number.NaN : Number(cell);
      return Number.isNaN(x) || x === 0 ? [] : [{ x, index }];
    });
    const small = bare.filter(({ x }) => Math.abs(x) <= 1);
    const [first] = small;
    if (first === undefined) return [];
    const isMixed = small.length < bare.length;
    const lines = small.flatMap(({ index }) => {
      const row = rows[index];
      if (row === undefined) return [];
      if (ledger.fateAt(row.at, position) !== 'refused')
        ledger.write(row.at, position, isMixed ? 'marked' : 'refused');
      return [row.line];
    });
    const row = rows[first.index];
    const facts = {
      line: row?.line ?? 0,
      letter: columnLetters(position),
      header,
      column: column.name,
      text: row?.cells[position]?.trim() ?? '',
      share: `${Number((first.x * 100).toPrecision(15))} %`,
    };
    return [
      isMixed
        ? problem('cells-share', NOWHERE, { ...facts, lines })
        : problem('column-share', NOWHERE, facts),
    ];
  });
}

/** Writes what becomes of headers, rows of units and columns that are not taken. */
function writeColumns(
  text: TableText,
  headed: boolean,
  { taken, out, units, refused }: SortedColumns,
  ledger: Ledger,
  rows: readonly TextRow[],
): void {
  const heads = headed ? [text.top, text.more, text.units].flatMap((row) => row?.at ?? []) : [];
  for (const { position } of taken) for (const at of heads) ledger.write(at, position, 'heading');
  for (const { text: column } of units) {
    for (const at of heads) ledger.write(at, column.position, 'heading');
    for (const { at } of rows) {
      if (ledger.fateAt(at, column.position) === 'held') ledger.write(at, column.position, 'taken');
    }
  }
  for (const [columns, fate] of [
    [out, 'out'],
    [refused, 'refused'],
  ] as const) {
    for (const { position } of columns) {
      for (const at of heads) ledger.write(at, position, fate);
      for (const { at } of rows) {
        if (ledger.fateAt(at, position) === 'held') ledger.write(at, position, fate);
      }
    }
  }
}

function accountOf(
  { taken, out, units, refused }: SortedColumns,
  rows: readonly TextRow[],
  blank: readonly TextRow[],
  ledger: Ledger,
  refusedWith: Remarks | undefined,
): Account {
  if (refusedWith !== undefined) {
    ledger.holdBack();
    for (const [row, position] of refusedWith.unread) ledger.write(row, position, 'refused');
  }
  const counts = ledger.counts();
  if (refusedWith === undefined && counts.held > 0)
    throw new Error(`${counts.held} cells of a text are not accounted for`);
  const columns = [
    ...taken.map(({ position, header, column, unit }) => ({ position, header, column: column.name, unit })),
    ...units.map(({ text: { position, header }, of }) => ({ position, header, unit: '', unitOf: of })),
    ...[...out, ...refused].map(({ position, header, unit }) => ({ position, header, unit })),
  ];
  return {
    cells: Object.values(counts).reduce((sum, count) => sum + count, 0),
    counts,
    columns: columns.sort((a, b) => a.position - b.position),
    lines: rows.map(({ line }) => line),
    blankRows: blank.length,
    fateAt: ledger.fateAt,
  };
}
