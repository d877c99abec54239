import { type Problem, problem } from '../diagnostics/index.ts';
import type { Cell } from '../document/index.ts';
import { PLAIN_UNIT, type Unit, writeQuantity } from '../units/index.ts';
import { readCell } from './columns.ts';
import { signCheck } from './excluded-sign.ts';
import { columnLimits } from './load-column.ts';
import type { InputColumnItem } from './model.ts';
import type { Notebook } from './notebook.ts';

/**
 * What a table of a notebook (`sheet.table`) makes of cells, by their columns' names, without entering them: what is
 * wrong with a cell, a warning where its value is beyond the permitted range, or nothing.
 */
export function tryCells(
  { model }: Notebook,
  table: string,
): (column: string, cell: Cell) => Problem | undefined {
  const columns = new Map<string, (cell: Cell) => Problem | undefined>();
  return (name, cell) => {
    const known = columns.get(name);
    if (known !== undefined) return known(cell);
    const item = model.items.get(`${table}.${name}`);
    if (item?.kind !== 'input column') throw new Error(`${table}.${name} is no given column`);
    const check = columnCheck(item, model.registry);
    columns.set(name, check);
    return check(cell);
  };
}

/**
 * The numbers that cells of a column of a table (`sheet.table`) come to, in SI, without entering them; undefined where a
 * cell is blank or not read. The whole is undefined for a column that holds no numbers.
 */
export function numbersOf(
  { model }: Notebook,
  table: string,
  name: string,
  cells: readonly Cell[],
): { readonly unit: Unit; readonly values: readonly (number | undefined)[] } | undefined {
  const item = model.items.get(`${table}.${name}`);
  if (item?.kind !== 'input column') throw new Error(`${table}.${name} is no given column`);
  const { column, unit } = item;
  if ((column.type ?? 'number') !== 'number') return undefined;
  const values = cells.map((cell) => {
    const value = readCell(cell, column, unit, model.registry);
    return typeof value === 'number' ? value : undefined;
  });
  return { unit: unit ?? PLAIN_UNIT, values };
}

function columnCheck(
  item: InputColumnItem,
  registry: Notebook['model']['registry'],
): (cell: Cell) => Problem | undefined {
  const { column, unit } = item;
  const { least, most } = columnLimits(item, registry);
  const signOf = signCheck(column.range, unit, registry, column.note);
  return (cell) => {
    const value = readCell(cell, column, unit, registry);
    if (typeof value === 'object') return value;
    const sign = typeof value === 'number' && signOf?.(value);
    if (sign) return sign;
    if (typeof value !== 'number' || (value >= least && value <= most)) return undefined;
    const isLow = value < least;
    return problem(
      'out-of-range',
      { from: 0, to: 0 },
      {
        value: writeQuantity(value, unit ?? PLAIN_UNIT),
        limit: (isLow ? column.range?.min : column.range?.max) ?? '',
        end: isLow ? 'least' : 'most',
      },
    );
  };
}
