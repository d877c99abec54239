import { HyperFormula, type RawCellContent } from 'hyperformula';

/** A sheet of cells, row by row, in the other engine: its own rounding and its undo off, as in the recheck. */
export function hyperFormulaOf(rows: RawCellContent[][]): HyperFormula {
  return HyperFormula.buildFromArray(rows, {
    licenseKey: 'gpl-v3',
    smartRounding: false,
    undoLimit: 0,
    maxRows: 200_000,
  });
}

/** The number in a cell; throws on anything else. */
export function numberIn(engine: HyperFormula, row: number, col: number): number {
  const value = engine.getCellValue({ sheet: 0, row, col });
  if (typeof value !== 'number') throw new Error(`no number in row ${row + 1}, column ${col + 1}`);
  return value;
}
