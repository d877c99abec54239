import type { CheckedFormula } from '../../language/index.ts';
import { type FormulaColumnItem, type FormulaItem, formulaInForce, statedIn } from '../../notebook/index.ts';
import { unitInPrint } from '../../units/index.ts';
import { type SetFormula, typesetNumbers } from '../math/formula-set.ts';
import { columnView } from '../values/cell-view.ts';
import { quantityText } from '../values/format-quantity.ts';
import { wordsOfValue } from '../values/stated-words.ts';
import { type GoverningRow, governingRow } from './governing-row.ts';
import { hasNumbers } from './has-numbers.ts';
import { type Shown, type WorkedFormula, workFormula } from './worked-formula.ts';

/** The numbers of a line put into its formula; `set` is absent where they say nothing new, and only the notes do. */
export interface LineNumbers {
  readonly worked: WorkedFormula;
  readonly set: SetFormula | undefined;
}

/** The numbers of one row put into the formula of a column. */
export interface RowNumbers extends LineNumbers {
  /** From 0. */
  readonly row: number;
  /** Why this row and no other, where nobody asked for it. */
  readonly governing: GoverningRow | undefined;
  /** What the formula comes to in that row, with its unit; absent where it has no value. */
  readonly computed?: string;
  /** What is stated there in its place. */
  readonly stated?: string;
}

/** The formula of a line with its numbers put in, set within `most` em; undefined where that says nothing new. */
export function lineNumbers(
  shown: Shown,
  item: FormulaItem,
  checked: CheckedFormula,
  most: number,
): LineNumbers | undefined {
  if (!checked.whole || !hasNumbers(checked.syntax)) return undefined;
  const worked = workFormula(shown, { item, checked });
  const set = typesetNumbers(checked, most, worked);
  return set || worked.notes.length > 0 ? { worked, set } : undefined;
}

/**
 * The formula of a column with the numbers of one row put in; undefined where the row has none. Without a row the one that
 * governs.
 */
export function rowNumbers(
  shown: Shown,
  item: FormulaColumnItem,
  chosen: number | undefined,
  most: number,
): RowNumbers | undefined {
  const { notebook, units } = shown;
  const governing = chosen === undefined ? governingRow(notebook, item) : undefined;
  const row = chosen ?? governing?.row;
  // The place may still be a row that an edit took away.
  if (row === undefined || row >= (notebook.rowsOf(item.table) ?? 0)) return undefined;
  const checked = formulaInForce(notebook, item, row)?.checked;
  if (!checked?.whole || !hasNumbers(checked.syntax) || item.column.kind === 'series') return undefined;
  const view = columnView(notebook, item.id, item.column, units);
  const { text, state } = view.at(row);
  if (text === '') return undefined;
  const worked = workFormula(shown, { item, checked, row });
  const shownText = quantityText({ number: text, unit: unitInPrint(view.unit) });
  const isStated = state === 'stated';
  const computed = isStated ? computedIn(shown, item, row) : shownText;
  return {
    row,
    governing,
    worked,
    set: typesetNumbers(checked, most, worked),
    ...(computed !== undefined && { computed }),
    ...(isStated && { stated: shownText }),
  };
}

/** What the formula comes to in a row in which a value is stated; undefined where it fails. */
function computedIn({ notebook, units }: Shown, item: FormulaColumnItem, row: number): string | undefined {
  const found = statedIn(notebook, item).find((one) => one.row === row)?.computed;
  return found?.status === 'ok' ? wordsOfValue(notebook, found.value, units) : undefined;
}
