import type { Problem } from '../diagnostics/index.ts';
import { problem } from '../diagnostics/index.ts';
import { cellsOfColumn } from '../document/index.ts';
import {
  fromSI,
  isBareNumber,
  isPerCent,
  mayBeShare,
  PLAIN_UNIT,
  shareText,
  type UnitRegistry,
} from '../units/index.ts';
import { rangeWarning } from './load-column.ts';
import type { FormulaColumnItem, InputColumnItem } from './model.ts';

/** What is pointed out of the cells of a given column, whose values are computed with all the same. */
export function columnWarnings(
  item: InputColumnItem,
  values: Float64Array,
  registry: UnitRegistry,
): readonly Problem[] {
  return [rangeWarning(item, values, registry), percentWarning(item, values)].filter(
    (found) => found !== undefined,
  );
}

/** A warning where cells of a calculated column, computed or stated, lie beyond its permitted range. */
export function rangeWarnings(
  { unit, column, type }: FormulaColumnItem,
  values: Float64Array,
  registry: UnitRegistry,
): readonly Problem[] {
  if (column.kind !== 'calc' || !column.range) return [];
  const own = unit ?? (type.kind === 'number' && type.dimension.key === '' ? PLAIN_UNIT : undefined);
  const limit = column.range.min ?? column.range.max ?? '';
  const found = own
    ? rangeWarning({ unit: own, column }, values, registry)
    : problem(
        'range-without-unit',
        { from: 0, to: 0 },
        { limit, value: 'the cells of a column without a unit' },
      );
  return found ? [found] : [];
}

/** A warning where bare numbers of a column of per cent may have been meant as parts of one. */
function percentWarning({ column, unit }: InputColumnItem, values: Float64Array): Problem | undefined {
  if (unit === undefined || !isPerCent(unit)) return undefined;
  const found: number[] = [];
  for (const [row, cell] of cellsOfColumn(column).entries()) {
    const isBare = typeof cell === 'number' || (typeof cell === 'string' && isBareNumber(cell));
    if (isBare && mayBeShare(percentAt(values, row, unit))) found.push(row);
  }
  const [first] = found;
  if (first === undefined) return undefined;
  const percent = percentAt(values, first, unit);
  const facts = { rows: found.length, first: first + 1, asRead: `${percent} %`, asShare: shareText(percent) };
  return problem('column-bare-percent', { from: 0, to: 0 }, facts);
}

/** A value in per cent, or NaN where a row has none. */
function percentAt(values: Float64Array, row: number, unit: NonNullable<InputColumnItem['unit']>): number {
  return Number(fromSI(values[row] ?? Number.NaN, unit).toPrecision(15));
}
