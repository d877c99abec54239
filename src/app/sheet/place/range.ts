import type { CellPlace } from '../../view-model/place.ts';
import type { GridMap } from './grid-map.ts';

/** A block of selected cells: rows of the grid from `top` to `bottom`, fields from `left` to `right`, all included. */
export interface CellRange {
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}

/** The block between two cells; one cell if they are the same; undefined if the sheet has not both. */
export function rangeBetween(map: GridMap, a: CellPlace, b: CellPlace): CellRange | undefined {
  const [ai, bi] = [map.indexOf(a), map.indexOf(b)];
  const [ra, rb] = [map.rowAt(ai), map.rowAt(bi)];
  if (!ra || !rb) return undefined;
  const [ac, bc] = [Math.max(ra.fields.indexOf(a.field), 0), Math.max(rb.fields.indexOf(b.field), 0)];
  // From a row that is one cell a range reaches across whole lines.
  const whole = ra.fields.length === 1 || rb.fields.length === 1;
  return {
    top: Math.min(ai, bi),
    bottom: Math.max(ai, bi),
    left: whole ? 0 : Math.min(ac, bc),
    right: whole ? Number.POSITIVE_INFINITY : Math.max(ac, bc),
  };
}

/** The cells of one row that a range holds; rows of one field are held whole. */
export function fieldsInRange(range: CellRange, fields: readonly string[]): readonly string[] {
  return fields.length === 1 ? fields : fields.slice(range.left, range.right + 1);
}

/** All cells of a range, row by row. */
export function cellsInRange(map: GridMap, range: CellRange): readonly (readonly CellPlace[])[] {
  const rows: CellPlace[][] = [];
  for (let index = range.top; index <= range.bottom; index += 1) {
    const row = map.rowAt(index);
    if (!row) continue;
    rows.push(
      fieldsInRange(range, row.fields).map((field) => ({
        sheet: map.sheet,
        part: row.part,
        item: row.item,
        field,
      })),
    );
  }
  return rows;
}

/** Whether a range holds every field of all its rows. */
export function isWholeRows(map: GridMap, range: CellRange): boolean {
  for (let index = range.top; index <= range.bottom; index += 1) {
    const row = map.rowAt(index);
    if (row && fieldsInRange(range, row.fields).length < row.fields.length) return false;
  }
  return true;
}
