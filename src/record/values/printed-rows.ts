import type { Notebook } from '../../notebook/index.ts';
import { fromSI, type Unit, writeIn, writeNumber } from '../../units/index.ts';
import { displayUnit } from './format-quantity.ts';
import { sharedDecimals } from './shared-decimals.ts';
import type { UnitsView } from './units-view.ts';

/** What the rows of a column add to as they are printed, with so many decimals; rounded, or as they were typed. */
interface PrintedRows {
  readonly added: number;
  readonly decimals: number;
  readonly isRounded: boolean;
}

/** With more decimals than these, nobody adds up numbers as they were typed. */
const MOST_TYPED = 6;

/**
 * Says what the rows of a column add to as they are printed, where that is not the number that is printed as their sum;
 * undefined where it is, and where the two stand in different units. `decimals` are those that the sum is printed with, if
 * it has not its own.
 */
export function printedRowsWords(
  notebook: Notebook,
  id: string,
  view: UnitsView,
  sum: { readonly si: number; readonly unit: Unit; readonly decimals?: number },
): string | undefined {
  const unit = displayUnit(sum.unit, view, notebook.model.registry);
  const rows = printedRows(notebook, id, view, unit);
  if (!rows) return undefined;
  const style = { grouping: 'none', ...(sum.decimals !== undefined && { decimals: sum.decimals }) } as const;
  const printed = writeIn(sum.si, unit, style);
  const decimals = Math.max(rows.decimals, printed.split('.')[1]?.length ?? 0);
  const same = writeNumber(rows.added, { decimals }) === writeNumber(Number(printed), { decimals });
  if (same || printed.includes('e')) return undefined;
  const words = rows.isRounded ? 'the rows as they are rounded add to' : 'the rows add to';
  return `rounded; ${words} ${writeNumber(rows.added, { decimals: rows.decimals })}`;
}

function printedRows(notebook: Notebook, id: string, view: UnitsView, unit: Unit): PrintedRows | undefined {
  const result = notebook.column(id);
  if (result.status !== 'ok' || result.reading.holds !== 'number' || result.reading.gaps > 0)
    return undefined;
  const shown = displayUnit(result.unit, view, notebook.model.registry);
  if (shown.text !== unit.text || shown.point !== undefined) return undefined;
  const { values, length } = result.reading;
  // What is typed stands as it was typed.
  if (view === 'written' && notebook.model.items.get(id)?.kind === 'input column') {
    const exact = (row: number) => Number(fromSI(values[row] ?? 0, shown).toPrecision(12));
    const decimals = mostDecimals(length, exact);
    return decimals > MOST_TYPED ? undefined : { added: sumOf(length, exact), decimals, isRounded: false };
  }
  const decimals = sharedDecimals(result, shown);
  if (decimals === undefined) return undefined;
  const plain = { decimals, grouping: 'none' } as const;
  const added = sumOf(length, (row) => Number(writeIn(values[row] ?? 0, shown, plain)));
  return { added, decimals, isRounded: true };
}

function mostDecimals(length: number, valueAt: (row: number) => number): number {
  let most = 0;
  for (let row = 0; row < length; row += 1) {
    const [digits = '', exponent = '0'] = `${valueAt(row)}`.split('e');
    most = Math.max(most, (digits.split('.')[1]?.length ?? 0) - Number(exponent));
  }
  return most;
}

/** A sum compensated as the language's own SUM is. */
export function sumOf(length: number, valueAt: (row: number) => number): number {
  let sum = 0;
  let lost = 0;
  for (let row = 0; row < length; row += 1) {
    const value = valueAt(row);
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
  }
  return sum + lost;
}
