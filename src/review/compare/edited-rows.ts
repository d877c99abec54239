import {
  type CalcColumn,
  type Cell,
  cellsOfColumn,
  type GivenColumn,
  rowIdsOf,
  rowWithId,
  type Statement,
  type Table,
} from '../../document/index.ts';
import type { Notebook } from '../../notebook/index.ts';
import { readColumn } from './column-values.ts';
import type { Difference, Place, RowCell, RowMatching, Subject } from './difference.ts';
import { fieldChanges } from './fields.ts';
import { type LocatedColumn, type LocatedPart, placeOf, subjectOf } from './located.ts';
import type { RowPairs } from './match-rows.ts';
import type { NamesSaid } from './names-said.ts';
import type { Pair } from './pairs.ts';
import { sizeOfValues } from './values.ts';

/** A table that is in both books, with its columns and rows paired. */
export interface TablePair extends Pair<LocatedPart> {
  readonly tables: Pair<Table>;
  readonly columns: readonly Pair<LocatedColumn>[];
  readonly rows: RowPairs;
  /** Whether a series makes the rows in one of the books: then nobody entered them. */
  readonly isMade: boolean;
}

/** Whether rows came, went or moved. */
export function hasOtherRows({ rows }: TablePair): boolean {
  return rows.added.length > 0 || rows.removed.length > 0 || rows.moved.length > 0;
}

/** How the rows of a table were told apart. */
export function rowMatching(pair: TablePair): RowMatching {
  const { by, key } = pair.rows;
  return {
    table: subjectOf(pair),
    by,
    ...(by === 'key' && key && { key: { before: key.before.name, after: key.after.name } }),
  };
}

/** Rows that came, went or moved. */
export function editedRows(pair: TablePair): readonly Difference[] {
  if (pair.isMade) return [];
  const { rows, tables } = pair;
  const cells = { before: cellsByColumn(tables.before), after: cellsByColumn(tables.after) };
  return [
    ...rows.moved.map(
      (row): Difference => ({ kind: 'moved', subject: rowSubject(pair, 'row', row), within: true }),
    ),
    ...rows.added.map(
      (after): Difference => ({
        kind: 'added',
        subject: rowSubject(pair, 'row', { after }),
        cells: cellsOfRow(cells.after, after),
      }),
    ),
    ...rows.removed.map(
      (before): Difference => ({
        kind: 'removed',
        subject: rowSubject(pair, 'row', { before }),
        cells: cellsOfRow(cells.before, before),
      }),
    ),
  ];
}

/** Cells of one column that are others: entered ones, or values stated in calculated ones. */
export function editedCells(
  pair: TablePair,
  columns: Pair<LocatedColumn>,
  notebooks: Pair<Notebook>,
  said: NamesSaid,
): readonly Difference[] {
  const [before, after] = [columns.before.column, columns.after.column];
  if (before.kind === 'given' && after.kind === 'given')
    return enteredCells(pair, columns, { before, after }, notebooks);
  if (before.kind === 'calc' && after.kind === 'calc')
    return statedCells(pair, columns, { before, after }, said);
  return [];
}

function enteredCells(
  pair: TablePair,
  columns: Pair<LocatedColumn>,
  given: Pair<GivenColumn>,
  notebooks: Pair<Notebook>,
): readonly Difference[] {
  const cells = { before: cellsOfColumn(given.before), after: cellsOfColumn(given.after) };
  const others = pair.rows.both.filter((row) => cells.before[row.before] !== cells.after[row.after]);
  if (others.length === 0) return [];
  const old = readColumn(notebooks.before, columns.before.id);
  const next = readColumn(notebooks.after, columns.after.id);
  const { registry } = notebooks.after.model;
  return others.map((row): Difference => {
    const size = sizeOfValues(old.valueAt(row.before), next.valueAt(row.after), registry);
    return {
      kind: 'cell',
      subject: cellSubject(pair, columns, row),
      from: cells.before[row.before] ?? null,
      to: cells.after[row.after] ?? null,
      ...(size && { size }),
    };
  });
}

const ANYWHERE = { before: { sheet: '' }, after: { sheet: '' } };
const ROW: ReadonlySet<string> = new Set(['row']);

function statedCells(
  pair: TablePair,
  columns: Pair<LocatedColumn>,
  calculated: Pair<CalcColumn>,
  said: NamesSaid,
): readonly Difference[] {
  const stated = {
    before: statedByRow(calculated.before, pair.tables.before),
    after: statedByRow(calculated.after, pair.tables.after),
  };
  if (stated.before.size === 0 && stated.after.size === 0) return [];
  return pair.rows.both.flatMap((row) => {
    const [a, b] = [stated.before.get(row.before), stated.after.get(row.after)];
    const fields = (one: Statement | undefined): object => (one ? { stated: withoutRow(one) } : {});
    return fieldChanges(fields(a), fields(b), NO_FIELDS, {}, said, ANYWHERE).map(
      (change): Difference => ({ kind: 'field', subject: cellSubject(pair, columns, row), ...change }),
    );
  });
}

const NO_FIELDS: ReadonlySet<string> = new Set();

function withoutRow(statement: Statement): object {
  return Object.fromEntries(Object.entries(statement).filter(([field]) => !ROW.has(field)));
}

function statedByRow({ stated = [] }: CalcColumn, table: Table): ReadonlyMap<number, Statement> {
  const ids = rowIdsOf(table);
  return new Map(
    stated.flatMap((one) => {
      const row = rowWithId(ids, one.row);
      return row === undefined ? [] : [[row, one] as const];
    }),
  );
}

type Cells = readonly { readonly column: string; readonly cells: readonly Cell[] }[];

function cellsByColumn({ columns }: Table): Cells {
  return columns.flatMap((column) =>
    column.kind === 'given' ? [{ column: column.name, cells: cellsOfColumn(column) }] : [],
  );
}

function cellsOfRow(all: Cells, row: number): readonly RowCell[] {
  return all.flatMap(({ column, cells }) => {
    const cell = cells[row] ?? null;
    return cell === null ? [] : [{ column, cell }];
  });
}

function rowSubject(pair: TablePair, kind: 'row', row: Partial<Pair<number>>): Subject {
  return subjectInRow(pair.rows, kind, { before: placeOf(pair.before), after: placeOf(pair.after) }, row);
}

function cellSubject({ rows }: TablePair, columns: Pair<LocatedColumn>, row: Pair<number>): Subject {
  return subjectInRow(rows, 'cell', { before: placeOf(columns.before), after: placeOf(columns.after) }, row);
}

function subjectInRow(
  { nameBefore, nameAfter }: RowPairs,
  kind: 'row' | 'cell',
  places: Pair<Place>,
  row: Partial<Pair<number>>,
): Subject {
  const at = (place: Place, index: number, rowName: string | undefined): Place => ({
    ...place,
    index,
    ...(rowName !== undefined && { rowName }),
  });
  return {
    kind,
    ...(row.before !== undefined && { before: at(places.before, row.before, nameBefore(row.before)) }),
    ...(row.after !== undefined && { after: at(places.after, row.after, nameAfter(row.after)) }),
  };
}
