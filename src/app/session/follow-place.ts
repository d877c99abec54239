import type { Book, Edit, Patch } from '../../document/index.ts';
import { findPlace } from '../editing/find-place.ts';
import type { CellPlace } from '../view-model/place.ts';

/**
 * Where a place of a book stands after an edit: lines, parts and columns keep their ids wherever they move, rows of a
 * table are counted anew. Undefined where the edit took it away.
 */
export function placeAfter(place: CellPlace, edit: Edit, before: Book, after: Book): CellPlace | undefined {
  const found = findPlace(before, place);
  if (!found) return undefined;
  if (found.kind === 'row') {
    for (const { key, parts } of after.sheets)
      for (const part of parts)
        if (part.kind === 'rows' && part.rows.some(({ id }) => id === found.row.id))
          return { ...place, sheet: key, part: part.id };
    return undefined;
  }
  const sheet = after.sheets.find(({ parts }) => parts.some(({ id }) => id === place.part));
  if (!sheet) return undefined;
  const item = found.kind === 'cell' ? rowAfter(found.row, found.part.id, edit.patches) : place.item;
  const moved = item === undefined ? undefined : { ...place, sheet: sheet.key, item };
  return moved && findPlace(after, moved)?.kind === found.kind ? moved : undefined;
}

/** The item of a table's row after rows came and went; undefined where it went itself. */
function rowAfter(row: number, table: string, patches: readonly Patch[]): string | undefined {
  let at = row;
  for (const patch of patches) {
    const [sheets, , parts, part] = patch.at;
    if (patch.kind !== 'splice' || sheets !== 'sheets' || parts !== 'parts' || part !== table) continue;
    const { from, remove, insert } = patch;
    if (at >= from + remove) at += insert - remove;
    else if (at >= from) return undefined;
  }
  return `r${at}`;
}
