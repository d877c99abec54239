import { type Book, type Cell, type Edit, joinEdits, setCells } from '../../document/index.ts';
import type { CellPlace } from '../session/place.ts';
import { cellContent, cellOf } from './cell-content.ts';
import { enterText } from './cell-edits.ts';
import { findPlace } from './find-place.ts';

/** The edit that empties cells: entries, formulas, descriptions, references, units. Symbols stay. */
export function clearCells(book: Book, rows: readonly (readonly CellPlace[])[]): Edit | undefined {
  const edits: Edit[] = [];
  const columns = new Map<
    string,
    { readonly place: CellPlace; readonly column: string; from: number; to: number }
  >();
  for (const place of rows.flat()) {
    const found = findPlace(book, place);
    if (!found || cellContent(book, place).kind === 'name') continue;
    if (found.kind === 'cell') {
      if (found.column.kind !== 'given') continue;
      const key = `${place.part}/${found.column.id}`;
      const span = columns.get(key);
      if (span) [span.from, span.to] = [Math.min(span.from, found.row), Math.max(span.to, found.row)];
      else columns.set(key, { place, column: found.column.id, from: found.row, to: found.row });
      continue;
    }
    if (cellContent(book, place).text === '') continue;
    const edit = enterText(book, place, '');
    if (edit.ok) edits.push(edit.value);
  }
  for (const { place, column, from, to } of columns.values()) {
    const at = { sheet: place.sheet, table: place.part, column };
    edits.push(setCells(at, from, new Array<Cell>(to - from + 1).fill(null)));
  }
  if (edits.length === 0) return undefined;
  return joinEdits(edits.length === 1 ? 'clear a cell' : `clear ${edits.length} cells`, edits);
}

/** The edit that fills each cell of a range with what its first row holds. */
export function fillDown(book: Book, rows: readonly (readonly CellPlace[])[]): Edit | undefined {
  const [first = [], ...rest] = rows;
  const edits: Edit[] = [];
  for (const [at, source] of first.entries()) {
    const from = findPlace(book, source);
    if (from?.kind === 'cell') {
      if (from.column.kind !== 'given' || rest.length === 0) continue;
      const values = new Array<Cell>(rest.length).fill(cellOf(from.column, from.row));
      edits.push(
        setCells({ sheet: source.sheet, table: source.part, column: from.column.id }, from.row + 1, values),
      );
      continue;
    }
    const content = cellContent(book, source);
    if (content.kind === 'name' || content.kind === undefined) continue;
    for (const row of rest) {
      const target = row[at];
      if (!target || cellContent(book, target).kind !== content.kind) continue;
      const edit = enterText(book, target, content.text);
      if (edit.ok) edits.push(edit.value);
    }
  }
  return edits.length === 0 ? undefined : joinEdits('fill down', edits);
}
