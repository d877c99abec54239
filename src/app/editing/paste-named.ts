import { type Outcome, succeed } from '../../diagnostics/index.ts';
import { type Book, type Edit, insertTableRows, joinEdits, setCells } from '../../document/index.ts';
import { readTable } from '../../tables/index.ts';
import type { CellPlace } from '../session/place.ts';
import { findPlace } from './find-place.ts';

/**
 * The edit that puts a text with headers, CSV or from a spreadsheet, into the columns it names, from the row of a place
 * on; it grows the table past its end. Undefined where the place is in no table or the first line names none of its
 * columns, which then is an ordinary block of cells. Rows with too few or too many cells refuse the whole.
 */
export function pasteNamed(book: Book, place: CellPlace, text: string): Outcome<Edit> | undefined {
  const found = findPlace(book, place);
  if (found?.kind !== 'cell' || !/[\r\n]\s*\S/.test(text)) return undefined;
  const { part, row } = found;
  const read = readTable(text, part.columns);
  if (!read.ok) return undefined;
  const { length, cells, problems } = read.value;
  const faults = problems.filter(({ severity }) => severity === 'error');
  if (faults.length > 0) return { ok: false, problems: faults };
  const at = { sheet: place.sheet, table: part.id };
  const before = part.length ?? 0;
  const grown = row + length - before;
  const growth = grown > 0 ? [insertTableRows(at, part, before, { length: grown, cells: {} })] : [];
  const filled = Object.entries(cells).flatMap(([name, values]) => {
    const column = part.columns.find((one) => one.name === name);
    return column ? [setCells({ ...at, column: column.id }, row, values)] : [];
  });
  return succeed(joinEdits(`paste ${length} ${length === 1 ? 'row' : 'rows'}`, [...growth, ...filled]));
}
