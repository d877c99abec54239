import { HyperFormula, type RawCellContent } from 'hyperformula';
import { weigh } from './measure.ts';
import type { SheetContestant } from './sheet-contestant.ts';
import type { Graph } from './sheet-graph.ts';

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

/** The graph as one spreadsheet column, A1 downwards. */
export function graphColumn(graph: Graph): (number | string)[][] {
  return graph.cells.map((cell) => [typeof cell === 'number' ? cell : cell.sheet]);
}

/** The graph in the other engine, without units, computed. */
export function hyperFormulaSheet(graph: Graph): SheetContestant {
  const { built, mb } = weigh(() => hyperFormulaOf(graphColumn(graph)));
  return {
    name: 'HyperFormula',
    mb,
    edit: ({ at, value }) => {
      built.setCellContents({ sheet: 0, row: at, col: 0 }, value);
    },
    read: (at) => numberIn(built, at, 0),
  };
}
