import { type Problem, problem } from '../diagnostics/index.ts';
import { isMoney, type UnitRegistry } from '../units/index.ts';
import type { Ledger } from './account.ts';
import { isNumeric } from './column.ts';
import { unitOfColumn } from './headers.ts';
import type { TakenColumn } from './mapping.ts';
import { isOf, moneySaid } from './money-words.ts';
import { multipleOf } from './multiples.ts';
import type { TextRow } from './records.ts';

const NOWHERE = { from: 0, to: 0 };

/**
 * Lines that are left out as notes and say of the numbers what their headings do not: that they are in thousands, or in
 * another currency than the column they go to. Whatever unit was said of them, they would be read wrong; only who names such a
 * line as left out has seen it.
 */
export function leftOutMultiples(
  rows: readonly TextRow[],
  taken: readonly TakenColumn[],
  registry: UnitRegistry,
  ledger: Ledger,
): readonly Problem[] {
  const numeric = taken.filter(({ column }) => isNumeric(column));
  if (numeric.length === 0) return [];
  return rows.flatMap((row) => {
    const position = row.cells.findIndex((cell) => said(cell, numeric, registry) !== undefined);
    const cell = row.cells[position] ?? '';
    const found = said(cell, numeric, registry);
    if (found === undefined) return [];
    ledger.write(row.at, position, 'refused');
    return [problem('multiple-left-out', NOWHERE, { line: row.line, said: found, text: cell.trim() })];
  });
}

function said(cell: string, numeric: readonly TakenColumn[], registry: UnitRegistry): string | undefined {
  // Of a plain number in a note nothing is known; a multiple stands beside words or a unit.
  if (!/\p{L}/u.test(cell)) return undefined;
  for (const { column } of numeric) {
    const multiple = multipleOf(cell, registry, unitOfColumn(column, registry));
    if (multiple !== undefined) return multiple;
  }
  return otherCurrency(cell, numeric, registry);
}

/** A currency that a note says, where every column of money has another one. */
function otherCurrency(
  cell: string,
  numeric: readonly TakenColumn[],
  registry: UnitRegistry,
): string | undefined {
  const money = numeric.flatMap(({ column, unit }) => {
    const kind = unit === '' ? unitOfColumn(column, registry) : registry.units.get(unit);
    return kind !== undefined && isMoney(kind) ? [kind] : [];
  });
  return money.length === 0
    ? undefined
    : moneySaid(cell, registry).find((said) => !money.some((kind) => isOf(said, kind, registry)));
}
