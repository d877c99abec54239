import { type Problem, problem } from '../diagnostics/index.ts';
import { columnWords, type TableColumn } from './column.ts';
import { type Mapping, namedMapping } from './mapping.ts';
import { readRows } from './read-rows.ts';
import type { ReadOptions, TableReading } from './reading.ts';
import { type PartOptions, type TableText, tableText } from './table-text.ts';
import { columnFacts, looksLikeData, type TextColumn } from './text-columns.ts';

const NOWHERE = { from: 0, to: 0 };

/**
 * Reads CSV or clipboard text into the given columns of a table. Headers name columns by name or label, in any case,
 * with a unit after them if they like: `thickness (m)`, `Thickness, ft`, or in a row of units below; a number alone
 * under such a header becomes an entry with that unit. Any other cell stays as written, without outer spaces; a plain
 * number under no unit is a number.
 *
 * Refused as a whole, with all there is to say: an empty text, a missing header, headers that name no column, a
 * calculated one or one twice, units that cannot be read, open quotation marks, rows with too many cells, numbers that
 * can be read two ways, totals and notes among the rows without a word on them, too many rows. Kept and pointed out:
 * rows with too few cells, cells that their column does not read. Left out and told: blank rows.
 */
export function readTable(
  text: string,
  columns: readonly TableColumn[],
  options: ReadOptions & PartOptions = {},
): TableReading {
  const parted = tableText(text, columns, options);
  if (!parted.ok) return { ...parted, account: undefined };
  const mapping = namedMapping(parted.value, columns);
  const given = columns.filter(({ kind }) => kind === 'given').map(columnWords);
  return readRows(parted.value, columns, mapping, options, (open) =>
    unknownHeaders(open, given, parted.value, mapping),
  );
}

/**
 * Reads a text whose columns go where a mapping says, and otherwise like {@link readTable}. Columns it does not
 * settle refuse the whole.
 */
export function readMapped(
  text: TableText,
  columns: readonly TableColumn[],
  mapping: Mapping,
  options: ReadOptions = {},
): TableReading {
  return readRows(text, columns, mapping, options, (open) => {
    // Words of a row of data may be names of columns, as “volume” is; most of them are not.
    const data = mapping.headed && mapping.goes.size <= open.length && looksLikeData(text);
    return problem('column-undecided', NOWHERE, { columns: open.map(columnFacts), data });
  });
}

/** What is wrong with headers that name no column, where nobody is there to say what they go to. */
function unknownHeaders(
  open: readonly [TextColumn, ...TextColumn[]],
  columns: readonly string[],
  text: TableText,
  { goes }: Mapping,
): Problem {
  if (goes.size === 0 && looksLikeData(text)) {
    return problem('table-header-missing', NOWHERE, { first: text.top.cells.join(', '), columns });
  }
  const headers = open.map(({ header }) => header).filter((header) => header !== '');
  if (headers.length > 0) return problem('column-unknown', NOWHERE, { headers, columns });
  const [{ position, first }] = open;
  if (first === undefined) throw new Error('a column without a header is found by its values');
  return problem('column-without-header', NOWHERE, { position: position + 1, ...first });
}
