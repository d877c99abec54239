import { type Outcome, succeed } from '../../../diagnostics/index.ts';
import {
  isBlankRow,
  namedMapping,
  type TableColumn,
  type TableText,
  tableText,
} from '../../../tables/index.ts';
import type { UnitRegistry } from '../../../units/index.ts';

/** A text from the clipboard as rows of cells, and whether something else could part them, and if only spaces do. */
export interface PastedText {
  readonly text: TableText;
  readonly doubtful: boolean;
  readonly spaced: boolean;
}

/**
 * Parts a text from the clipboard into cells for the columns of a table. Programs put tabs between cells; without any,
 * commas, semicolons and vertical bars are in doubt where they part most lines, or one that names columns: they may
 * part cells, or stand within them. So are spaces that set columns apart.
 */
export function pastedText(
  text: string,
  columns: readonly TableColumn[],
  registry: UnitRegistry,
): Outcome<PastedText> {
  const parted = text.includes('\t') ? undefined : tableText(text, columns, { registry });
  const unclear =
    parted === undefined || parted.ok
      ? undefined
      : parted.problems.find(({ code }) => code === 'table-parting-unclear');
  if (parted?.ok === false && unclear === undefined) return parted;
  if (parted?.ok && isParted(parted.value, columns))
    return succeed({ text: parted.value, doubtful: true, spaced: false });
  const block = tableText(text, columns, { registry, delimiter: '\t' });
  if (!block.ok) return block;
  const spaced = unclear?.data.by === 'spaces';
  return succeed({ text: block.value, doubtful: unclear !== undefined, spaced });
}

/** Whether most rows of a text have several cells, or one of them names columns. */
function isParted(text: TableText, columns: readonly TableColumn[]): boolean {
  const filled = text.rows.filter((row) => !isBlankRow(row));
  const several = filled.filter(({ cells }) => cells.length > 1);
  const named = text.top.cells.length > 1 && namedMapping(text, columns).goes.size > 0;
  return several.length * 2 > filled.length || (named && filled.length > 1);
}
