import { type Problem, problem } from '../diagnostics/index.ts';
import type { Cell, Range } from '../document/index.ts';
import type { Engine } from '../engine/index.ts';
import { areEqual, readEntry, type Unit, type UnitRegistry, writeQuantity } from '../units/index.ts';
import { readCell } from './columns.ts';
import { signCheck } from './excluded-sign.ts';
import type { InputColumnItem } from './model.ts';

/** The cells of a given column as the engine takes them: values by row, NaN where there is none, and why. */
export interface LoadedColumn {
  readonly values: Float64Array;
  readonly failed: ReadonlyMap<number, Problem>;
}

/** Reads cells of a column in row order; texts become codes of the engine's pool. */
export function loadCells(
  cells: readonly Cell[],
  item: InputColumnItem,
  registry: UnitRegistry,
  texts: Engine['texts'],
): LoadedColumn {
  const values = new Float64Array(cells.length);
  const failed = new Map<number, Problem>();
  const signOf = signCheck(item.column.range, item.unit, registry, item.column.note);
  for (let row = 0; row < cells.length; row += 1) {
    const read = readCell(cells[row] ?? null, item.column, item.unit, registry);
    const value = (typeof read === 'number' && signOf?.(read)) || read;
    if (typeof value === 'number') values[row] = value;
    else if (typeof value === 'string') values[row] = texts.codeOf(value);
    else {
      values[row] = Number.NaN;
      if (value) failed.set(row, value);
    }
  }
  return { values, failed };
}

/** A column that may have a permitted range. */
interface Ranged {
  readonly unit?: Unit;
  readonly column: { readonly range?: Range };
}

/** A warning where cells of a column lie beyond its permitted range. */
export function rangeWarning(
  { unit, column }: Ranged,
  values: Float64Array,
  registry: UnitRegistry,
): Problem | undefined {
  if (!column.range || !unit) return undefined;
  const { least, most } = columnLimits({ unit, column }, registry);
  let rows = 0;
  let first = 0;
  for (let row = 0; row < values.length; row += 1) {
    const value = values[row] as number;
    const end = value < least ? least : most;
    if (!(value < least || value > most) || areEqual(value, end)) continue;
    if (rows === 0) first = row + 1;
    rows += 1;
  }
  if (rows === 0) return undefined;
  const words = [
    Number.isFinite(least) ? `at least ${writeQuantity(least, unit)}` : '',
    Number.isFinite(most) ? `at most ${writeQuantity(most, unit)}` : '',
  ];
  const limits = words.filter((text) => text !== '').join(', ');
  return problem('column-out-of-range', { from: 0, to: 0 }, { rows, first, limits });
}

/** The ends of the permitted range of a column in SI, infinite where there are none. */
export function columnLimits(
  { column, unit }: Ranged,
  registry: UnitRegistry,
): { readonly least: number; readonly most: number } {
  const limit = (text: string | undefined): number | undefined => unit && limitOf(text, unit, registry);
  return {
    least: limit(column.range?.min) ?? Number.NEGATIVE_INFINITY,
    most: limit(column.range?.max) ?? Number.POSITIVE_INFINITY,
  };
}

function limitOf(text: string | undefined, unit: Unit, registry: UnitRegistry): number | undefined {
  if (text === undefined) return undefined;
  const read = readEntry(text, registry, unit);
  return read.ok && (read.value.kind === 'number' || read.value.kind === 'point') ? read.value.si : undefined;
}
