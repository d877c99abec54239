import {
  type Book,
  type Calc,
  type CalcColumn,
  type Check,
  type ColumnPlace,
  type Edit,
  idOfRow,
  type RowPlace,
  rowIdsOf,
  type StatedCell,
  type Statement,
  setRowField,
  stateCells,
  stateRow,
  stateSide,
} from '../../../document/index.ts';
import { SIDES, type Side, type StatedPlace } from '../../../notebook/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { findPlace } from '../find-place.ts';
import { confirmReason } from './carry-reason.ts';

interface TargetBase {
  /** The id of the line or column in the model. */
  readonly id: string;
  /** What a person calls it: the name of the line, a side of a check, the column with the number of the row. */
  readonly called: string;
  /** What stands there in place of the computed value. */
  readonly statement?: Statement;
}

/** Something whose computed value another can be stated for: a line, a side of a check, a cell of a column. */
export type StateTarget =
  | (TargetBase & { readonly kind: 'line'; readonly place: RowPlace; readonly row: Calc })
  | (TargetBase & {
      readonly kind: 'side';
      readonly place: RowPlace;
      readonly row: Check;
      readonly side: Side;
    })
  | (TargetBase & {
      readonly kind: 'cell';
      readonly place: ColumnPlace;
      readonly column: CalcColumn;
      /** The identity of the row, and where it stands, from 0. */
      readonly row: number;
      readonly index: number;
    });

/**
 * What a value can be stated for at a place: the calculated line, both sides of a check, the cell of a calculated
 * column. Nothing where a value is entered, and in a table whose rows a series makes.
 */
export function targetsAt(book: Book, place: CellPlace): readonly StateTarget[] {
  const found = findPlace(book, place);
  const { sheet, part } = place;
  if (found?.kind === 'row') {
    const { row } = found;
    if (place.field !== 'value' || (row.kind !== 'calc' && row.kind !== 'check')) return [];
    const at = { sheet, part, row: row.id };
    const id = `${sheet}.${row.name}`;
    if (row.kind === 'calc') {
      const { name, stated } = row;
      return [{ kind: 'line', id, called: name, place: at, row, ...(stated && { statement: stated }) }];
    }
    return SIDES.map((side) => {
      const statement = row.stated?.[side];
      const called = `the ${side} of ${row.name}`;
      return { kind: 'side', id, called, place: at, row, side, ...(statement && { statement }) };
    });
  }
  if (found?.kind !== 'cell' || found.column.kind !== 'calc' || found.part.length === undefined) return [];
  const { column, part: table } = found;
  const row = idOfRow(rowIdsOf(table), found.row);
  if (row === undefined) return [];
  const known = column.stated?.find((one) => one.row === row);
  return [
    {
      kind: 'cell',
      id: `${sheet}.${table.name}.${column.name}`,
      called: `${column.name} in row ${found.row + 1}`,
      place: { sheet, table: part, column: column.id },
      column,
      row,
      index: found.row,
      ...(known && { statement: statementIn(known) }),
    },
  ];
}

/** What is stated in a cell, without its row. */
export function statementIn({ row: _, ...statement }: StatedCell): Statement {
  return statement;
}

/** What the notebook knows a target by. */
export function statedPlaceOf(target: StateTarget): StatedPlace {
  const { id } = target;
  if (target.kind === 'side') return { id, side: target.side };
  return target.kind === 'cell' ? { id, row: target.index } : { id };
}

/** What is stated at a place. */
export function statedAt(book: Book, place: CellPlace): readonly (StateTarget & TargetStated)[] {
  return targetsAt(book, place).filter((one): one is StateTarget & TargetStated => 'statement' in one);
}

interface TargetStated {
  readonly statement: Statement;
}

/**
 * The one target at a place: of a check the `side` asked for, else the one that is stated. Undefined where a check leaves
 * both open.
 */
export function targetAt(book: Book, place: CellPlace, side?: Side): StateTarget | undefined {
  const targets = targetsAt(book, place);
  const [first] = targets;
  if (first?.kind !== 'side') return first;
  const meant = targets.filter((one) =>
    side ? one.kind === 'side' && one.side === side : one.statement !== undefined,
  );
  return meant.length === 1 ? meant[0] : undefined;
}

/** The one statement that a place shows, or that of a side of a check; undefined where none is, and where it could be two. */
export function statementAt(book: Book, place: CellPlace, side?: Side): Statement | undefined {
  return targetAt(book, place, side)?.statement;
}

/** The edit that states a value, or with `undefined` gives the computed one back. */
export function statementEdit(target: StateTarget, statement: Statement | undefined): Edit {
  const label = statement ? `state ${target.called}` : `use the computed value of ${target.called}`;
  switch (target.kind) {
    case 'line':
      return { ...stateRow(target.place, statement), label };
    case 'side':
      return { ...stateSide(target.place, target.row, target.side, statement), label };
    case 'cell':
      return { ...stateCells(target.place, target.column, new Map([[target.row, statement]])), label };
  }
}

/** The edit that confirms each reason of a column that was given for another value or cell; undefined where none was. */
export function confirmReasonsEdit({
  place,
  column,
}: Extract<StateTarget, { kind: 'cell' }>): Edit | undefined {
  const carried = (column.stated ?? []).filter(({ reasonFor }) => reasonFor !== undefined);
  if (carried.length === 0) return undefined;
  const changes = new Map(carried.map((one) => [one.row, confirmReason(statementIn(one))]));
  return { ...stateCells(place, column, changes), label: `confirm the reasons of ${column.name}` };
}

/** The edit that gives back whatever is computed at a place; undefined where nothing is stated. */
export function unstateEdit(book: Book, place: CellPlace): Edit | undefined {
  const [first, second] = statedAt(book, place);
  if (!first) return undefined;
  if (!second || first.kind !== 'side') return statementEdit(first, undefined);
  const label = `use the computed sides of ${first.row.name}`;
  return { ...setRowField(first.place, 'stated', undefined), label };
}
