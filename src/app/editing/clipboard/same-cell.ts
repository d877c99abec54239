import type { Cell, GivenColumn } from '../../../document/index.ts';
import { readEntry, readUnit, standardUnits } from '../../../units/index.ts';
import { folded } from './new-rows.ts';

/** Closer than a digit that people write down. */
const CLOSE = 1e-9;

/** Whether two cells of a column say the same: the same words, or the same number in whatever unit. */
export function isSameCell(column: GivenColumn, a: Cell, b: Cell): boolean {
  if (a === b || (a !== null && b !== null && folded(a) === folded(b))) return true;
  if (a === null || b === null || (column.type ?? 'number') !== 'number') return false;
  const [one, other] = [numberIn(column, a), numberIn(column, b)];
  if (one === undefined || other === undefined) return false;
  return Math.abs(one - other) <= CLOSE * Math.max(Math.abs(one), Math.abs(other));
}

/** A number in SI; undefined where it cannot be read, also one in a unit of the book’s own. */
function numberIn({ unit = '' }: GivenColumn, cell: Cell): number | undefined {
  const own = readUnit(unit, standardUnits);
  const read = readEntry(`${cell}`, standardUnits, own.ok ? own.value : undefined);
  return read.ok && (read.value.kind === 'number' || read.value.kind === 'point') ? read.value.si : undefined;
}
