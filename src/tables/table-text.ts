import { fail, type Outcome, problem, succeed } from '../diagnostics/index.ts';
import type { TableColumn } from './column.ts';
import { headerColumn } from './headers.ts';
import { DELIMITERS, type Delimiter, firstRow, plainText, type TextRow, textRows } from './records.ts';

/** A text as rows of cells, before it is settled what its columns go to. It has at least one row. */
export interface TableText {
  readonly delimiter: Delimiter;
  readonly top: TextRow;
  /** All rows, the first among them. */
  readonly rows: readonly TextRow[];
}

/**
 * Parts CSV or clipboard text meant for the given columns into rows. Refused: an empty text, quotation marks that are
 * open or stray.
 *
 * @param delimiter found out if not said
 */
export function tableText(
  text: string,
  columns: readonly TableColumn[],
  delimiter?: Delimiter,
): Outcome<TableText> {
  const plain = plainText(text);
  const parted = delimiter ?? likelyDelimiter(plain, columns);
  const read = textRows(plain, parted);
  if (!read.ok) return read;
  const [top] = read.value;
  if (top === undefined) return fail(problem('table-empty', { from: 0, to: 0 }, {}));
  return succeed({ delimiter: parted, top, rows: read.value });
}

/** The delimiter with which the first row names the most columns, or else has the most cells. */
function likelyDelimiter(text: string, columns: readonly TableColumn[]): Delimiter {
  const ranked = DELIMITERS.map((delimiter) => {
    const cells = firstRow(text, delimiter);
    const named = cells.filter((cell) => headerColumn(cell, columns) !== undefined).length;
    return { delimiter, named, cells: cells.length };
  });
  ranked.sort((a, b) => b.named - a.named || b.cells - a.cells);
  const [best] = ranked;
  return best === undefined || best.cells === 1 ? ',' : best.delimiter;
}
