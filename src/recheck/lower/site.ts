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

/** Puts helper cells on the grid, for one formula. */
export interface Helpers {
  /** A cell with this formula (without `=`). */
  readonly cell: (formula: string, site: Site) => GridPlace;
  /** Cells below one another at a root site, side by side in a line. Each formula is written for a site of its own. */
  readonly block: (count: number, formula: (at: number, site: Site) => string, site: Site) => LoweredColumn;
}

/** `one` is the address of a cell that holds 1; `spend` gives up where too many cells are taken. */
export function createHelpers(work: OpenSheet, one: () => string, spend: (count: number) => void): Helpers {
  const widen = ({ sheet, row }: Line, count: number): number => {
    const cells = sheet.rows[row] as GridCell[];
    const column = cells.length;
    if (column + count > MOST_ASIDE) giveUp(`it would take more than ${MOST_ASIDE} cells beside one row`);
    for (let at = 0; at < count; at += 1) cells.push(null);
    return column;
  };
  const lengthen = (count: number): number => {
    const row = work.rows.length;
    for (let at = 0; at < count; at += 1) work.rows.push([null, null]);
    return row;
  };
  const write = (sheet: OpenSheet, row: number, column: number, formula: string): void => {
    (sheet.rows[row] as GridCell[])[column] = `=${formula}`;
  };

  return {
    cell: (formula, { line }) => {
      spend(1);
      const sheet = line ? line.sheet : work;
      const row = line ? line.row : lengthen(1);
      const column = line ? widen(line, 1) : VALUE_COLUMN;
      write(sheet, row, column, formula);
      return { sheet: sheet.name, row, column };
    },
    block: (count, formula, site) => {
      if (count === 0) return belowOneAnother(work.name, 0, 0, 0, false);
      spend(count);
      const { line } = site;
      if (line) {
        const { sheet, row } = line;
        const first = widen(line, count);
        for (let at = 0; at < count; at += 1) write(sheet, row, first + at, formula(at, site));
        return besideOneAnother(line, first, count, one);
      }
      const first = lengthen(count);
      for (let at = 0; at < count; at += 1) {
        const own: Site = { ...site, line: { sheet: work, row: first + at } };
        write(work, first + at, VALUE_COLUMN, formula(at, own));
      }
      return belowOneAnother(work.name, first, VALUE_COLUMN, count, true);
    },
  };
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
