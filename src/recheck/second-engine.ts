import type { HyperFormula as Engine, Sheets } from 'hyperformula';
import type { Grid, GridCell, GridPlace } from './grid.ts';
import { sharedRanges } from './shared-ranges.ts';
import { spreadReaders } from './spread-readers.ts';

/** What the second engine makes of a cell: a number, a truth value, or the name of an error (`#DIV/0!`). */
export type GridValue = number | boolean | { readonly error: string };

/** A grid computed by the second engine. */
export interface ComputedGrid {
  readonly read: (place: GridPlace) => GridValue;
  /** Puts other contents into cells and computes what depends on them. */
  readonly write: (cells: readonly { readonly place: GridPlace; readonly contents: GridCell }[]) => void;
  /** Frees its memory; nothing is read afterwards. */
  readonly close: () => void;
}

/** Computes a grid with HyperFormula, which is loaded when first needed. */
export async function computeGrid(grid: Grid): Promise<ComputedGrid> {
  const { HyperFormula } = await import('hyperformula');
  const spread = spreadReaders(grid.sheets);
  const sheets = [sharedRanges(spread), ...spread];
  const longest = Math.max(...sheets.map(({ rows }) => rows.length));
  const engine: Engine = HyperFormula.buildFromSheets(
    Object.fromEntries(sheets.map((sheet) => [sheet.name, sheet.rows])) as Sheets,
    {
      licenseKey: 'gpl-v3',
      // Results as they are computed, comparisons without a tolerance of its own.
      smartRounding: false,
      useArrayArithmetic: false,
      undoLimit: 0,
      maxRows: Math.max(longest, 1_000),
    },
  );
  const numbers = new Map(grid.sheets.map((sheet) => [sheet.name, engine.getSheetId(sheet.name) as number]));
  const at = ({ sheet, row, column }: GridPlace) => {
    const number = numbers.get(sheet);
    if (number === undefined) throw new Error(`the grid has no sheet ${sheet}`);
    return { sheet: number, row, col: column };
  };
  return {
    read: (place) => {
      const value = engine.getCellValue(at(place));
      if (typeof value === 'number' || typeof value === 'boolean') return value;
      if (value === null || typeof value === 'string')
        throw new Error(`${place.sheet} holds no number in row ${place.row + 1}, column ${place.column + 1}`);
      return { error: value.value };
    },
    write: (cells) => {
      engine.batch(() => {
        for (const { place, contents } of cells) engine.setCellContents(at(place), contents);
      });
    },
    close: () => engine.destroy(),
  };
}
