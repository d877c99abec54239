/** A cell of the open book: where the person is, and where undo brings them back to. */
export interface CellPlace {
  /** The key of the sheet. */
  readonly sheet: string;
  /** The id of the part. */
  readonly part: string;
  /** The id of a row, `r0`, `r1`… for a row of a table, `head` for a table's heading, empty for prose. */
  readonly item: string;
  /** `reference`, `name`, `label`, `value`, `unit` of a line; the id of a column of a table; `text` of prose. */
  readonly field: string;
}

export function samePlace(a: CellPlace | undefined, b: CellPlace | undefined): boolean {
  if (!a || !b) return a === b;
  return a.sheet === b.sheet && a.part === b.part && a.item === b.item && a.field === b.field;
}
