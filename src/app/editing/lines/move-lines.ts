import { applyEdit, type Book, type Edit, findSheet, joinEdits } from '../../../document/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { findPlace } from '../find-place.ts';
import { moveLine } from './line-edits.ts';

/** The edit that moves several lines, and where a place on one of them is afterwards. */
export interface MovedLines {
  readonly edit: Edit;
  readonly follow: (place: CellPlace) => CellPlace;
}

/**
 * Moves lines of a sheet, or neighbouring rows of one table, by one, across the edges of blocks; an edit without patches
 * where they are at an edge. Undefined for places that are neither all lines nor all rows of one table.
 */
export function moveLinesBy(book: Book, places: readonly CellPlace[], by: -1 | 1): MovedLines | undefined {
  const [first] = places;
  if (!first) return undefined;
  const found = places.map((place) => findPlace(book, place));
  if (found.every((one) => one?.kind === 'row')) return moveRows(book, places, by);
  const sameTable = places.every(({ part }) => part === first.part);
  return sameTable && found.every((one) => one?.kind === 'cell')
    ? moveTableRows(book, places, by)
    : undefined;
}

const unmoved: MovedLines = { edit: { label: '', patches: [] }, follow: (place) => place };

/** One line after the other, the one in front first. */
function moveRows(book: Book, places: readonly CellPlace[], by: -1 | 1): MovedLines {
  const edits: Edit[] = [];
  let now = book;
  for (const place of by < 0 ? places : [...places].reverse()) {
    const change = moveLine(now, place, by);
    const applied = change && applyEdit(now, change.edit);
    if (!change || !applied?.ok) return unmoved;
    edits.push(change.edit);
    now = applied.value.book;
  }
  const after = now;
  return {
    edit: joinEdits(`move ${places.length} lines`, edits),
    follow: (place) => {
      const parts = findSheet(after, place.sheet)?.parts ?? [];
      const part = parts.find((one) => one.kind === 'rows' && one.rows.some(({ id }) => id === place.item));
      return part ? { ...place, part: part.id } : place;
    },
  };
}

/** The row beside them goes to their other side. */
function moveTableRows(book: Book, places: readonly CellPlace[], by: -1 | 1): MovedLines {
  const rows = places.map(({ item }) => Number(item.slice(1)));
  const beside = by < 0 ? Math.min(...rows) - 1 : Math.max(...rows) + 1;
  const [first] = places;
  const passed = first && moveLine(book, { ...first, item: `r${beside}` }, by < 0 ? 1 : -1, places.length);
  if (!passed) return unmoved;
  return {
    edit: { ...passed.edit, label: `move ${places.length} rows` },
    follow: (place) => ({ ...place, item: `r${Number(place.item.slice(1)) + by}` }),
  };
}
