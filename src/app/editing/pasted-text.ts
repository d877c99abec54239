import { type Outcome, succeed } from '../../diagnostics/index.ts';
import { type TableColumn, type TableText, tableText } from '../../tables/index.ts';
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
 * commas and semicolons are in doubt where they cut every line into as many cells: they may part cells, or stand
 * within them.
 */
export function pastedText(
  text: string,
  columns: readonly TableColumn[],
  registry: UnitRegistry,
): Outcome<PastedText> {
  const parted =
    text.includes('\t') || !/[,;]/.test(text) ? undefined : tableText(text, columns, { registry });
  if (parted?.ok === false) return parted;
  const rows = parted?.value.rows ?? [];
  const width = rows[0]?.cells.length ?? 0;
  const even = width > 1 && rows.every(({ cells }) => cells.length === width);
  const cells = readCells(text)
    .map(([cell = '']) => cell.trim())
    .filter((cell) => cell !== '');
  if (even && parted && !cells.every((cell) => COMMA_NUMBER.test(cell)))
    return succeed({ text: parted.value, doubtful: true });
  const block = tableText(text, columns, { registry, delimiter: '\t' });
  if (!block.ok) return block;
  return succeed({ text: block.value, doubtful: even && !cells.some((cell) => POINT_DECIMALS.test(cell)) });
}
