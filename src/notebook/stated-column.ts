import type { Problem } from '../diagnostics/index.ts';
import { type CalcColumn, rowIdsOf, rowWithId, type Table } from '../document/index.ts';
import type { ColumnReading, Engine, Reading } from '../engine/index.ts';
import { type Axis, findFunction, onAxes, type Type, type Typed, truthType } from '../language/index.ts';
import type { Unit, UnitRegistry } from '../units/index.ts';
import { firstError } from './first-error.ts';
import { computedId, readStated, type Stated } from './stated.ts';

/** The stated cells of a calculated column by their rows, counted from 0, in that order. */
export type StatedCells = ReadonlyMap<number, Stated>;

/** The engine's columns with the stated values of a calculated one, and with where there are any. */
export const statedId = (id: string): string => `${id}#stated`;
export const whereStatedId = (id: string): string => `${id}#where-stated`;

/** The stated cells of a column, understood; one whose row is gone is passed over, for it comes back with its row. */
export function readStatedCells(
  { stated = [] }: CalcColumn,
  table: Table,
  type: Type,
  unit: Unit | undefined,
  registry: UnitRegistry,
): StatedCells {
  const ids = rowIdsOf(table);
  const cells = stated.flatMap(({ row: id, ...statement }): (readonly [number, Stated])[] => {
    const row = rowWithId(ids, id);
    return row === undefined ? [] : [[row, readStated(statement, type, unit, registry)]];
  });
  return new Map(cells.toSorted(([a], [b]) => a - b));
}

/** Gives the engine the stated cells of a column whose table has `length` rows. */
export function syncStatedCells(
  engine: Engine,
  id: string,
  table: string,
  length: number,
  cells: StatedCells,
  type: Type,
): void {
  const values = new Float64Array(length).fill(Number.NaN);
  const where = new Float64Array(length);
  const failed = new Map<number, Problem>();
  for (const [row, { entry, problems }] of cells) {
    where[row] = 1;
    const own = firstError(problems);
    if (own || !entry) {
      if (own) failed.set(row, own);
    } else if (entry.kind === 'text') values[row] = engine.texts.codeOf(entry.text);
    else values[row] = entry.kind === 'truth' ? Number(entry.value) : entry.si;
  }
  const holds = type.kind === 'text' || type.kind === 'truth' ? type.kind : 'number';
  engine.setColumn(statedId(id), table, values, { holds, failed });
  engine.setColumn(whereStatedId(id), table, where, { holds: 'truth' });
}

/** Takes away what the engine has beside a column with stated cells. */
export function removeStatedCells(engine: Engine, id: string): void {
  for (const beside of [computedId(id), statedId(id), whereStatedId(id)]) engine.remove(beside);
}

/** What a column with stated cells is: the stated value where there is one, else the computed one. */
export function statedOrComputed(id: string, table: string, { type, from, to }: Typed): Typed {
  const fn = findFunction('IF');
  if (!fn) throw new Error('there is no function IF');
  const row: readonly Axis[] = [{ table, fresh: false }];
  const cell = (of: string, name: string, as: Type): Typed => ({
    kind: 'cell',
    id: of,
    name,
    type: onAxes(as, row),
    from,
    to,
  });
  const when = cell(whereStatedId(id), 'is stated', truthType);
  const value = cell(statedId(id), 'stated', type);
  const otherwise = cell(computedId(id), 'computed', type);
  const args = [when, value, otherwise];
  return { kind: 'branch', fn, args, arms: [{ when, value }], otherwise, type: onAxes(type, row), from, to };
}

/** A column with stated cells as it is read: rows without a value say why as its formula does, or as their statement. */
export function readingWithStated(
  values: ColumnReading,
  computed: ColumnReading,
  cells: StatedCells,
): ColumnReading {
  const at = (row: number): Reading => {
    const read = values.at(row);
    if (read.status === 'ok') return read;
    const own = cells.get(row);
    if (!own) return computed.at(row);
    const wrong = firstError(own.problems);
    return wrong ? { status: 'problem', problem: wrong } : read;
  };
  const problemOf = (read: Reading) => ('problem' in read ? read.problem : undefined);
  const { problem } = computed;
  return {
    ...values,
    at,
    statusAt: (row) => at(row).status,
    problemAt: (row) => problemOf(at(row)),
    ...(problem && { problem }),
  };
}
