import type { UnitRegistry } from '../units/index.ts';
import { isNumeric } from './column.ts';
import { bracketedUnit, unitOfColumn } from './headers.ts';
import type { SortedColumns } from './mapping.ts';
import { isBlankRow, type TextRow } from './records.ts';
import { countsRows, endsAreWritten, isQuoted, type SplitNumber, saysWords } from './split-numbers.ts';
import { statedUnit } from './stated-unit.ts';

/** The whole part of a number, with what may stand in front of it. */
const HEAD = /^[+\-−~≈]?\s*[$€£]?\s*[+\-−]?\d+$/;
/** Its decimals, and maybe its unit. */
const TAIL = /^(\d+)\s*(\D\S*)?$/;
/** A number that shows how decimals are written: with a point, or with a comma that quotation marks keep in its cell. */
const SHOWS_DECIMALS = /^[^.,\d]*(?:\d{4,}\.\d+|\d{0,3}\.(?:\d{1,2}|\d{4,})|\d+,\d+)(?!\d)/;

/** So many rows that count one more each are no decimals. */
const COUNTED_ROWS = 3;

/**
 * The cells of a text with commas that may be one number in two, parted by its own decimal comma. Such a number makes its
 * row longer by one, as one with a comma between thousands does, and nothing of it shows where the blank cells at the end
 * of the row were not written and its decimals end in a column that is left out or takes any text; or where other rows
 * are shorter by one. It is two cells where quotation marks say so, where other numbers show how decimals are written,
 * where the rows show that blank cells at the end are written, or where the second column has numbers of its own by its
 * heading or counts its rows.
 */
export function splitDecimals(
  rows: readonly TextRow[],
  { taken, out, calculated }: SortedColumns,
  width: number,
  source: readonly string[],
  registry: UnitRegistry,
): readonly SplitNumber[] {
  const numbers = new Map(
    taken.flatMap(({ position, column }) => (isNumeric(column) ? [[position, column] as const] : [])),
  );
  const isShown = rows.some(({ cells }) =>
    [...numbers.keys()].some((position) => SHOWS_DECIMALS.test(cells[position]?.trim() ?? '')),
  );
  if (isShown) return [];
  const left = out.filter(({ position }) => !calculated.has(position));
  const unseen = new Set([
    ...taken.flatMap(({ position, column }) =>
      (column.type ?? 'number') === 'text' && column.options === undefined ? [position] : [],
    ),
    ...left.flatMap(({ position, header }) =>
      statedUnit(bracketedUnit(header), registry).unit === undefined ? [position] : [],
    ),
  ]);
  const numeric = new Set(numbers.keys());
  const lengths = new Set(rows.filter((row) => !isBlankRow(row)).map(({ cells }) => cells.length));

  const isPair = ({ cells }: TextRow, position: number): boolean => {
    const [, digits, unit] = TAIL.exec(cells[position + 1]?.trim() ?? '') ?? [];
    if (digits === undefined || !HEAD.test(cells[position]?.trim() ?? '')) return false;
    if (unit === undefined) return true;
    const column = numbers.get(position);
    return (
      column !== undefined && statedUnit(unit, registry, unitOfColumn(column, registry)).unit !== undefined
    );
  };
  const from = [...numeric, ...left.map(({ position }) => position)].sort((a, b) => a - b);
  const isFull = endsAreWritten(rows, width, (row) => from.some((position) => isPair(row, position)));
  return from.flatMap((position) => {
    const alike = rows.filter((row) => isPair(row, position));
    if (alike.length === 0) return [];
    const goesUnseen =
      numeric.has(position) && unseen.has(position + 1) && !countsRows(rows, position + 1, COUNTED_ROWS);
    return alike
      .filter((row) => {
        if (isQuoted(row, position, source) || saysWords(row, position, numeric, width)) return false;
        const isLonger = lengths.has(row.cells.length - 1);
        return isLonger || (goesUnseen && !(isFull && row.cells.length === width));
      })
      .map((row) => ({
        row,
        position,
        joined: `${row.cells[position]?.trim()},${row.cells[position + 1]?.trim()}`,
      }));
  });
}
