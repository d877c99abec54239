import { type Problem, problem } from '../diagnostics/index.ts';
import { isBareNumber, type UnitRegistry } from '../units/index.ts';
import type { Ledger } from './account.ts';
import { columnLetters, isNumeric, type TableCell } from './column.ts';
import { unitOfHeader } from './header-unit.ts';
import { unitOfColumn } from './headers.ts';
import type { TakenColumn } from './mapping.ts';
import type { TextRow } from './records.ts';
import { isSameUnit, statedUnit } from './stated-unit.ts';

const NOWHERE = { from: 0, to: 0 };

/** What begins like a number is a cell, and its unit is its own. */
const LIKE_NUMBER = /^[\s$€£(+\-−.,~]*\d/;

/** A word that may be a unit, not behind a number, whose own unit it would be. */
const WORDS = /(?<![\d½¼¾]\s*)(?<![\p{L}\d])[\p{L}%‰°][\p{L}\d²³^/.%‰°]*/gu;

/**
 * Units that lines say which are left out, where numbers would be read in another: a note above about all quantities, or
 * a line among the rows that names their columns again. Where it was said what unit a column has, only the latter speaks
 * against it.
 *
 * @param kept the cells of the taken columns
 * @param start the place in the text of the first row that is taken
 */
export function leftOutUnits(
  rows: readonly TextRow[],
  taken: readonly TakenColumn[],
  kept: readonly (readonly TableCell[])[],
  start: number,
  registry: UnitRegistry,
  ledger: Ledger,
): readonly Problem[] {
  return taken.flatMap((one, at) => {
    const isBare = (cell: TableCell): boolean => typeof cell === 'number' || isBareNumber(cell ?? '');
    const isSaid = one.unit !== '' && one.assumed !== true;
    if (!isNumeric(one.column) || one.unitsAt !== undefined) return [];
    const hasBare = isSaid || (kept[at] ?? []).some(isBare) || one.unit !== '';
    if (!hasBare) return [];
    for (const row of rows) {
      const isAmong = row.at > start;
      if (isSaid && !isAmong) continue;
      const found = otherUnit(row, one, isSaid, registry);
      if (found === undefined) continue;
      ledger.write(row.at, found.position, 'refused');
      const facts = {
        line: row.line,
        letter: columnLetters(one.position),
        header: one.header,
        position: one.position + 1,
        column: one.column.name,
        text: (row.cells[found.position] ?? '').trim(),
        unit: one.unit === '' ? (one.column.unit ?? '') : one.unit,
        stated: found.unit,
      };
      return [problem(isAmong && isSaid ? 'unit-left-out-among' : 'unit-left-out', NOWHERE, facts)];
    }
    return [];
  });
}

/** A unit of the kind of a column that a line says and its numbers are not read in; above the column itself, or anywhere. */
function otherUnit(
  { cells }: TextRow,
  one: TakenColumn,
  isSaid: boolean,
  registry: UnitRegistry,
): { readonly unit: string; readonly position: number } | undefined {
  const { column, position } = one;
  const wanted = unitOfColumn(column, registry);
  // A plain number has no unit that a word could be.
  if (wanted === undefined || (wanted.dimension.key === '' && wanted.factor === 1)) return undefined;
  const now = one.unit === '' ? (column.unit ?? '') : one.unit;
  const other = (written: string): string | undefined => {
    const { unit } = statedUnit(written, registry, wanted);
    return unit === undefined || isSameUnit(unit, now, registry, wanted) ? undefined : unit;
  };
  const own = (cells[position] ?? '').trim();
  if (own !== '' && !LIKE_NUMBER.test(own)) {
    const unit = other(
      unitOfHeader({ position, header: own, unit: '', below: '', first: undefined }, column, registry),
    );
    if (unit !== undefined) return { unit, position };
  }
  if (isSaid) return undefined;
  for (const [at, cell] of cells.entries()) {
    if (LIKE_NUMBER.test(cell)) continue;
    for (const [word] of cell.matchAll(WORDS)) {
      if (word.length < 2 || /^(?:in|to|is|at|as)$/i.test(word)) continue;
      const unit = other(word);
      if (unit !== undefined) return { unit, position: at };
    }
  }
  return undefined;
}
