import { type Problem, problem } from '../diagnostics/index.ts';
import type { UnitRegistry } from '../units/index.ts';
import type { Ledger } from './account.ts';
import { isNumeric } from './column.ts';
import { unitOfColumn } from './headers.ts';
import type { TakenColumn } from './mapping.ts';
import { multipleOf } from './multiples.ts';
import type { TextRow } from './records.ts';

const NOWHERE = { from: 0, to: 0 };

/** A currency as its code or its sign. */
const CURRENCY = /(?<![\p{L}\d])(?:[A-Z]{3})(?![\p{L}\d])|[€£¥$]/gu;

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
  return multipleOf(cell, registry) ?? otherCurrency(cell, numeric, registry);
}

/** A currency that a note says, where a column has another one. */
function otherCurrency(
  cell: string,
  numeric: readonly TakenColumn[],
  registry: UnitRegistry,
): string | undefined {
  const codeOf = (text: string): string | undefined => {
    const info = registry.infos.get(registry.units.get(text)?.text ?? text) ?? registry.infos.get(text);
    return info?.source === 'ISO 4217' ? registry.units.get(text)?.dimension.key : undefined;
  };
  const kinds = numeric.flatMap(({ column, unit }) => {
    const wanted = unit === '' ? unitOfColumn(column, registry) : registry.units.get(unit);
    return wanted === undefined ? [] : [wanted.dimension.key];
  });
  for (const [written] of cell.matchAll(CURRENCY)) {
    const code = codeOf(written);
    if (code === undefined) continue;
    const money = kinds.filter((kind) => /[A-Z]{3}/.test(kind));
    if (money.length > 0 && !money.some((kind) => kind.includes(code))) return written;
  }
  return undefined;
}
