import type { LoweredColumn } from '../../language/index.ts';
import {
  address,
  columnRange,
  type GridCell,
  type GridPlace,
  isAddress,
  type OpenSheet,
  rowRange,
} from '../grid.ts';
import { giveUp } from './obstacle.ts';
import { VALUE_COLUMN } from './plan.ts';
import type { WrittenCells } from './written-cells.ts';

/** A row of the grid to whose right helper cells are put. */
export interface Line {
  readonly sheet: OpenSheet;
  readonly row: number;
}

/** Where an aggregate stands on a table while its elements are written one by one. */
export interface FreshRow {
  /** From 0. */
  readonly row: number;
  /** Whether the formulas of neighbouring elements stand below one another, so that their references move along. */
  readonly moving: boolean;
}

/** Where a part of a formula is written: whose row it reads, and where its helper cells go. */
export interface Site {
  /** Without one, every helper cell gets a line of its own on the work sheet. */
  readonly line?: Line;
  /** The row of the formula's own table, from 0. */
  readonly row?: number;
  readonly fresh: ReadonlyMap<string, FreshRow>;
}

/** The site of what depends on no row. */
export const ROOT: Site = { fresh: new Map() };

/** The most cells beside one row; a workbook has 16,384 columns. */
const MOST_ASIDE = 16_000;

/**
 * Puts helper cells on the grid: beside a row what differs from row to row, and on the work sheet what does not. Each is
 * written once where it stands: the same formula is found again.
 */
export interface Helpers {
  /** A cell with this formula (without `=`). */
  readonly cell: (formula: string, site: Site) => HelperCell;
  /** Cells below one another or side by side. At a root site each formula is written for a site of its own. */
  readonly block: (count: number, formula: (at: number, site: Site) => string, site: Site) => LoweredColumn;
}

/** A cell, and its address in formulas of the site it was put there for. */
interface HelperCell {
  readonly place: GridPlace;
  readonly at: string;
}

/** `one` is the address of a cell that holds 1; `spend` gives up where too many cells are taken. */
export function createHelpers(
  work: OpenSheet,
  written: WrittenCells,
  one: () => string,
  spend: (count: number) => void,
): Helpers {
  /** The column from which on a line holds formulas side by side, those that stood there already or new ones. */
  const aside = ({ sheet, row }: Line, formulas: readonly string[]): number => {
    const cells = sheet.rows[row] as GridCell[];
    const known = written.inLine(cells, formulas);
    if (known !== undefined) return known;
    spend(formulas.length);
    const column = cells.length;
    if (column + formulas.length > MOST_ASIDE)
      giveUp(`it would take more than ${MOST_ASIDE} cells beside one row`);
    for (const formula of formulas) cells.push(`=${formula}`);
    written.addInLine(cells, formulas, column);
    return column;
  };
  /** The first line of the work sheet that holds formulas below one another, as there already or on new lines. */
  const atRoot = (formulas: readonly string[]): number => {
    const known = written.inColumn(work, VALUE_COLUMN, formulas);
    if (known !== undefined) return known;
    spend(formulas.length);
    const row = work.rows.length;
    for (const formula of formulas) work.rows.push([null, `=${formula}`]);
    written.addInColumn(formulas, row);
    return row;
  };

  return {
    cell: (formula, { line }) => {
      const { sheet, row, column } =
        line && moves(formula)
          ? { ...line, column: aside(line, [formula]) }
          : { sheet: work, row: atRoot([formula]), column: VALUE_COLUMN };
      const place = { sheet: sheet.name, row, column };
      return { place, at: address(place.sheet, row, column, sheet === line?.sheet && row === line.row) };
    },
    block: (count, formula, site) => {
      if (count === 0) return belowOneAnother(work.name, 0, 0, 0, false);
      const { line } = site;
      if (line) {
        // All are written before any has its place, so that their own helper cells are found again too.
        const formulas = Array.from({ length: count }, (_, at) => formula(at, site));
        return formulas.some(moves)
          ? besideOneAnother(line, aside(line, formulas), count, one)
          : belowOneAnother(work.name, atRoot(formulas), VALUE_COLUMN, count, false);
      }
      spend(count);
      const first = work.rows.length;
      for (let at = 0; at < count; at += 1) work.rows.push([null, null]);
      for (let at = 0; at < count; at += 1) {
        const own: Site = { ...site, line: { sheet: work, row: first + at } };
        const text = formula(at, own);
        (work.rows[first + at] as GridCell[])[VALUE_COLUMN] = `=${text}`;
      }
      return belowOneAnother(work.name, first, VALUE_COLUMN, count, true);
    },
  };
}

const unpinned = /\$[A-Z]+\d/;

/** Whether a formula reads a row that is another where it stands in another row. */
export function moves(formula: string): boolean {
  return unpinned.test(formula);
}

/** Cells below one another as a gathered argument. */
export function belowOneAnother(
  sheet: string,
  row: number,
  column: number,
  count: number,
  moving: boolean,
): LoweredColumn {
  // Of no rows: a cell that is always empty.
  const range = count === 0 ? address(sheet, 0, 0) : columnRange(sheet, row, column, count);
  return {
    count,
    range,
    cell: (index) => address(sheet, row + index, column, moving),
    pick: (place) => `INDEX(${range},${place})`,
  };
}

function besideOneAnother(
  { sheet, row }: Line,
  column: number,
  count: number,
  one: () => string,
): LoweredColumn {
  const range = rowRange(sheet.name, row, column, count);
  return {
    count,
    range,
    cell: (index) => address(sheet.name, row, column + index, true),
    pick: (place) => `INDEX(${range},${one()},${place})`,
  };
}

/** One value as a gathered argument. */
export function onlyOne(cell: string): LoweredColumn {
  if (!isAddress(cell)) throw new Error('a gathered value stands in no cell');
  return { count: 1, range: cell, cell: () => cell, pick: (place) => `INDEX(${cell},${place})` };
}
