import { type Outcome, succeed } from '../../diagnostics/index.ts';
import { isBlankRow, namedMapping, type TableColumn, type TableText, tableText } from '../../tables/index.ts';
import type { UnitRegistry } from '../../units/index.ts';
import { readCells } from './clipboard-text.ts';

/** A text from the clipboard as rows of cells, and whether something else could part them. */
export interface PastedText {
  readonly text: TableText;
  readonly doubtful: boolean;
}

/** One number, maybe with commas in it; and one that shows that its decimals come after a point. */
const COMMA_NUMBER = /^[-+−]?[$€£]?\s?\d[\d.,]*$/;
const POINT_DECIMALS = /^\D*(?:\d{1,3}(?:,\d{3})+\.\d+|\d+\.(?:\d{1,2}|\d{4,}))$/;

/**
 * Parts a text from the clipboard into cells for the columns of a table. Programs put tabs between cells; without any,
 * commas, semicolons and vertical bars are in doubt where they part most lines, or one that names columns: they may
 * part cells, or stand within them.
 */
export function pastedText(
  text: string,
  columns: readonly TableColumn[],
  registry: UnitRegistry,
): Outcome<PastedText> {
  const parted =
    text.includes('\t') || !/[,;|]/.test(text) ? undefined : tableText(text, columns, { registry });
  if (parted?.ok === false) return parted;
  const doubtful = parted !== undefined && isParted(parted.value, columns);
  const cells = readCells(text)
    .map(([cell = '']) => cell.trim())
    .filter((cell) => cell !== '');
  if (doubtful && !cells.every((cell) => COMMA_NUMBER.test(cell)))
    return succeed({ text: parted.value, doubtful });
  const block = tableText(text, columns, { registry, delimiter: '\t' });
  if (!block.ok) return block;
  return succeed({
    text: block.value,
    doubtful: doubtful && isEven(parted.value) && !cells.some((cell) => POINT_DECIMALS.test(cell)),
  });
}

/** Whether most rows of a text have several cells, or one of them names columns. */
function isParted(text: TableText, columns: readonly TableColumn[]): boolean {
  const filled = text.rows.filter((row) => !isBlankRow(row));
  const several = filled.filter(({ cells }) => cells.length > 1);
  const named = text.top.cells.length > 1 && namedMapping(text, columns).goes.size > 0;
  return several.length * 2 > filled.length || (named && filled.length > 1);
}

function isEven({ rows }: TableText): boolean {
  const width = rows[0]?.cells.length ?? 0;
  return rows.every(({ cells }) => cells.length === width);
}
