import type { HyperFormula, RawCellContent } from 'hyperformula';
import { hyperFormulaOf, numberIn } from './hyperformula.ts';
import { RATE, ROWS, type Takeoff, type Totals } from './takeoff.ts';

/** The takeoff as spreadsheet rows: three given columns, three of formulas; rate and totals beside the first rows. */
export function takeoffRows({ quantity, waste, price }: Takeoff): RawCellContent[][] {
  const rows = Array.from({ length: ROWS }, (_, at): RawCellContent[] => {
    const row = at + 1;
    const givens = [quantity[at] ?? 0, waste[at] ?? 0, price[at] ?? 0];
    return [...givens, `=A${row}*(1+B${row})`, `=D${row}*C${row}`, `=D${row}/$H$1`];
  });
  const beside: RawCellContent[] = [RATE, `=SUM(D1:D${ROWS})`, `=SUM(E1:E${ROWS})`, `=SUM(F1:F${ROWS})`];
  for (const [at, content] of beside.entries()) rows[at]?.push('', content);
  return rows;
}

/** Builds and computes the spreadsheet. */
export function buildTakeoff(rows: RawCellContent[][]): HyperFormula {
  return hyperFormulaOf(rows);
}

/** Changes the quantity in one row. */
export function editSpreadsheet(engine: HyperFormula, row: number, quantity: number): void {
  engine.setCellContents({ sheet: 0, row, col: 0 }, quantity);
}

/** Replaces the column of quantities by one call, in a batch, which is its fastest way. */
export function replaceInSpreadsheet(engine: HyperFormula, cells: RawCellContent[][]): void {
  engine.batch(() => {
    engine.setCellContents({ sheet: 0, row: 0, col: 0 }, cells);
  });
}

export function spreadsheetTotals(engine: HyperFormula): Totals {
  return { net: numberIn(engine, 1, 7), cost: numberIn(engine, 2, 7), time: numberIn(engine, 3, 7) };
}
