import { CHUNK_CELLS } from '../schema/columns.ts';
import type { Patch } from './patch.ts';

/**
 * What an edit changed, so that nobody has to compare books. Sheets are told by key, all else by id.
 *
 * - `book`: the title block, the settings, what it is about, or the list of sheets;
 * - `review`: what the checker says, on which nothing is computed;
 * - `sheet`: a field of a sheet, such as its title;
 * - `structure`: parts, rows or columns of a sheet came, went, moved or were replaced;
 * - `part`, `row`, `column`: one field of one of them; `entry`: the entry of a given or choice;
 * - `cells`: cells of one chunk of a column; `rows`: the rows of a table, whose length may be another.
 */
export type Touched =
  | { readonly kind: 'book'; readonly field: string }
  | { readonly kind: 'review'; readonly field: string }
  | { readonly kind: 'sheet'; readonly sheet: string; readonly field: string }
  | { readonly kind: 'structure'; readonly sheet: string }
  | { readonly kind: 'part'; readonly sheet: string; readonly part: string; readonly field: string }
  | { readonly kind: 'entry'; readonly sheet: string; readonly part: string; readonly row: string }
  | {
      readonly kind: 'row';
      readonly sheet: string;
      readonly part: string;
      readonly row: string;
      readonly field: string;
    }
  | {
      readonly kind: 'column';
      readonly sheet: string;
      readonly table: string;
      readonly column: string;
      readonly field: string;
    }
  | {
      readonly kind: 'cells';
      readonly sheet: string;
      readonly table: string;
      readonly column: string;
      readonly chunk: number;
    }
  | { readonly kind: 'rows'; readonly sheet: string; readonly table: string };

/** What a patch that was applied touched. */
export function touchedBy(patch: Patch): readonly Touched[] {
  const [top, sheetKey, parts, partId, items, itemId, fieldName, index] = patch.at;
  if (top === 'review') return [{ kind: 'review', field: String(sheetKey) }];
  if (top !== 'sheets' || sheetKey === undefined) return [{ kind: 'book', field: String(top) }];
  const sheet = String(sheetKey);
  if (parts === undefined || parts === 'key') return [{ kind: 'book', field: 'sheets' }];
  if (parts !== 'parts') return [{ kind: 'sheet', sheet, field: String(parts) }];
  const part = String(partId);
  if (patch.kind === 'splice') return [{ kind: 'rows', sheet, table: part }];
  if (partId === undefined || items === undefined) return [{ kind: 'structure', sheet }];
  if (items !== 'rows' && items !== 'columns') return [{ kind: 'part', sheet, part, field: String(items) }];
  const item = String(itemId);
  if (patch.kind === 'cells') return chunksOf(patch.from, patch.values.length, sheet, part, item);
  if (itemId === undefined || fieldName === undefined) return [{ kind: 'structure', sheet }];
  const field = String(fieldName);
  if (items === 'columns') {
    if (field !== 'chunks') return [{ kind: 'column', sheet, table: part, column: item, field }];
    return typeof index === 'number'
      ? [{ kind: 'cells', sheet, table: part, column: item, chunk: index }]
      : [{ kind: 'rows', sheet, table: part }];
  }
  if (field === 'entry') return [{ kind: 'entry', sheet, part, row: item }];
  return [{ kind: 'row', sheet, part, row: item, field }];
}

function chunksOf(from: number, count: number, sheet: string, table: string, column: string): Touched[] {
  const touched: Touched[] = [];
  for (let chunk = Math.floor(from / CHUNK_CELLS); chunk * CHUNK_CELLS < from + count; chunk++) {
    touched.push({ kind: 'cells', sheet, table, column, chunk });
  }
  return touched;
}
