import { type Problem, problem } from '../diagnostics/index.ts';
import { type Unit, type UnitRegistry, volumeState } from '../units/index.ts';
import type { Ledger } from './account.ts';
import { cellReader, ownUnit } from './cell-entry.ts';
import { columnLetters, type TableCell } from './column.ts';
import type { Decimal } from './decimals.ts';
import { headedUnit, unitOfColumn } from './headers.ts';
import type { TakenColumn } from './mapping.ts';
import type { Consents } from './reading.ts';
import type { TextRow } from './records.ts';
import { isSameUnit, statedUnit } from './stated-unit.ts';
import type { TableText } from './table-text.ts';
import { unclearIn } from './unclear-cells.ts';

const NOWHERE = { from: 0, to: 0 };

/** The cells of a column of numbers, each in the unit that stands in its own row. */
export function rowUnitCells(
  one: TakenColumn,
  unitsAt: number,
  rows: readonly TextRow[],
  decimal: Decimal,
  text: TableText,
  consents: Consents,
): readonly TableCell[] {
  const readers = new Map<string, (written: string) => TableCell>();
  return rows.map(({ cells }) => {
    const unit = cells[unitsAt]?.trim() ?? '';
    const reader =
      readers.get(unit) ??
      cellReader({ ...one, unit: headedUnit(unit, one.column, text.registry) }, decimal, text, consents);
    readers.set(unit, reader);
    return reader(cells[one.position]?.trim() ?? '');
  });
}

/** What is wrong with a unit that stands in the row of a number. */
type Trouble =
  | { readonly code: 'row-unit-unread'; readonly choices: readonly string[] }
  | { readonly code: 'row-unit-contradicted'; readonly other: string };

/** A trouble with one text of a unit, and all rows that have it. */
interface Found {
  readonly trouble: Trouble;
  readonly text: string;
  readonly rows: TextRow[];
}

/**
 * Numbers whose unit, in the same row, cannot be read for their column, is missing, or is another one than their
 * header or they themselves state. Each text of a unit is told once, with the lines that have it.
 */
export function rowUnitProblems(
  one: TakenColumn,
  unitsAt: number,
  rows: readonly TextRow[],
  decimal: Decimal,
  { registry }: TableText,
  ledger: Ledger,
): readonly Problem[] {
  const { column, position, unit: headed } = one;
  const wanted = unitOfColumn(column, registry);
  const troubles = new Map<string, Found>();
  for (const row of rows) {
    const written = row.cells[position]?.trim() ?? '';
    if (written === '' || unclearIn(written) === 'nil') continue;
    const text = row.cells[unitsAt]?.trim() ?? '';
    const own = ownUnit(written, decimal);
    const trouble = troubleOf(text, [headed, own], registry, wanted);
    if (trouble === undefined) continue;
    ledger.write(row.at, position, 'refused');
    ledger.write(row.at, unitsAt, 'refused');
    const key = `${trouble.code} ${text} ${trouble.code === 'row-unit-contradicted' ? trouble.other : ''}`;
    const found = troubles.get(key);
    if (found === undefined) troubles.set(key, { trouble, text, rows: [row] });
    else found.rows.push(row);
  }
  return [...troubles.values()].map(({ trouble, text, rows: [first, ...more] }) => {
    const facts = {
      lines: [first, ...more].flatMap((row) => row?.line ?? []),
      letter: columnLetters(unitsAt),
      text,
      number: first?.cells[position]?.trim() ?? '',
      column: column.name,
    };
    return trouble.code === 'row-unit-unread'
      ? problem(trouble.code, NOWHERE, {
          ...facts,
          wants: column.unit ?? '',
          choices: trouble.choices,
          state: volumeState(text)?.words ?? '',
        })
      : problem(trouble.code, NOWHERE, { ...facts, other: trouble.other });
  });
}

function troubleOf(
  text: string,
  others: readonly string[],
  registry: UnitRegistry,
  wanted: Unit | undefined,
): Trouble | undefined {
  const [headed = '', own = ''] = others;
  if (text === '') {
    return own === '' ? { code: 'row-unit-unread', choices: [] } : undefined;
  }
  const isPlain = text === '-' && wanted?.dimension.key === '' && !wanted.angle;
  const stated = isPlain ? { unit: '-', choices: [] } : statedUnit(text, registry, wanted);
  if (stated.unit === undefined) return { code: 'row-unit-unread', choices: stated.choices };
  const { unit } = stated;
  const other = [headed, own].find((one) => one !== '' && !isSameUnit(one, unit, registry, wanted));
  return other === undefined ? undefined : { code: 'row-unit-contradicted', other };
}
