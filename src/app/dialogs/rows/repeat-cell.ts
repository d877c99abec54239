import type { Outcome } from '../../../diagnostics/index.ts';
import type { Edit } from '../../../document/index.ts';
import type { Notebook } from '../../../notebook/index.ts';
import type { Extent } from '../../editing/clipboard/block.ts';
import { pasteIntoTable } from '../../editing/clipboard/paste-cells.ts';
import { findPlace } from '../../editing/find-place.ts';
import type { CellPlace } from '../../view-model/place.ts';
import type { FoundRows } from './find-rows.ts';

/**
 * The edit that repeats a text of one cell over the cells it was pasted over, from `place` on, as the cell is read for
 * the first of them; undefined for any other text, and where the cell goes elsewhere.
 */
export function repeatCell(
  notebook: Notebook,
  place: CellPlace,
  over: Extent,
  { columns, mapping, read }: Pick<FoundRows, 'columns' | 'mapping' | 'read'>,
): Outcome<Edit> | undefined {
  const at = findPlace(notebook.book, place);
  if (over.rows * over.columns < 2 || mapping.headed || columns.length !== 1) return undefined;
  if (!read.ok || read.value.length !== 1 || at?.kind !== 'cell') return undefined;
  const [cell = null] = read.value.cells[at.column.name] ?? [];
  return cell === null ? undefined : pasteIntoTable(notebook, place, { cells: [[`${cell}`]] }, over);
}
