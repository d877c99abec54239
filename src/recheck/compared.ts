import { encodeValue, type Verdict, verdictOf } from './agreement.ts';
import type { GridPlace } from './grid.ts';
import type { LoweredBook } from './lower/book.ts';
import type { ValuePlace } from './lower/plan.ts';
import type { EngineValues } from './program.ts';
import type { ComputedGrid } from './second-engine.ts';

/** One value to compare: a line's, or one row's of a column (from 0). */
export interface Compared {
  readonly id: string;
  readonly row: number | undefined;
  readonly place: GridPlace;
}

/** One text for each value. */
export function keyOf({ id, row }: Compared): string {
  return row === undefined ? id : `${id} ${row}`;
}

/** Every value that was computed a second time, in the order of the program. */
export function* valuesOf({ places, borrowed }: LoweredBook): Iterable<Compared> {
  for (const [id, place] of places) {
    if (borrowed.has(id)) continue;
    for (let at = 0; at < (place.count ?? 1); at += 1) yield valueAt(place, at);
  }
}

/** The value of a line, or of one row of a column. */
export function valueAt({ cell, sheet, row, column, count }: ValuePlace, at: number): Compared {
  const place = { sheet: sheet.name, row: row + at, column };
  return { id: cell.id, row: count === undefined ? undefined : at, place };
}

/** How the two engines stand on a value. */
export function compare(
  { id, row, place }: Compared,
  book: LoweredBook,
  computed: ComputedGrid,
  values: EngineValues,
): Verdict {
  return verdictOf(encodeValue(values(id, row), book.texts.codeOf), computed.read(place));
}
