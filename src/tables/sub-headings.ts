import { bracketedUnit } from './headers.ts';
import { saysNone } from './nil-words.ts';
import type { TextRow } from './records.ts';
import { kindBelow } from './unit-row.ts';

/** What begins like a number, or has one among its words, is a cell and no part of a heading. */
const HAS_NUMBER = /(?:^|\s)[$€£(+\-−.,~<>]*\d/;

/**
 * Whether a row under the headers goes on with them, as under a heading over several columns: it has words above columns
 * of numbers, and nothing above those of words.
 */
export function isSubHeading(row: TextRow, top: TextRow, below: readonly TextRow[]): boolean {
  const filled = row.cells.flatMap((cell, position) => (cell.trim() === '' ? [] : [{ cell, position }]));
  if (filled.length === 0 || top.cells.some((cell) => HAS_NUMBER.test(cell))) return false;
  // One cell of words alone is as well the heading of the rows below it.
  if (filled.length === 1 && bracketedUnit(filled[0]?.cell ?? '') === '') return false;
  // So are the same columns filled with words again further down.
  const positions = filled.map(({ position }) => position);
  const first = below.findIndex(({ cells }) => cells.some((cell) => HAS_NUMBER.test(cell)));
  if (below.slice(first).some((other) => isLikeSection(other, positions))) return false;
  return filled.every(
    ({ cell, position }) =>
      /\p{L}/u.test(cell) &&
      !HAS_NUMBER.test(cell) &&
      !saysNone(cell.trim()) &&
      isOverNumbers(cell, kindBelow(position, below)),
  );
}

/** Of columns with nothing below a unit alone tells that a cell goes on with their heading. */
function isOverNumbers(cell: string, below: ReturnType<typeof kindBelow>): boolean {
  return below === 'numbers' || (below === 'nothing' && bracketedUnit(cell) !== '');
}

/** Whether a row has words, and no number, in these of its cells and nothing in the others. */
function isLikeSection({ cells }: TextRow, positions: readonly number[]): boolean {
  const filled = cells.flatMap((cell, position) => (cell.trim() === '' ? [] : [position]));
  return (
    filled.length === positions.length &&
    positions.every((position) => {
      const cell = cells[position] ?? '';
      return /\p{L}/u.test(cell) && !HAS_NUMBER.test(cell) && !saysNone(cell.trim());
    })
  );
}

/** The headers with what goes on under them: `Volume` over `gross (m³)` and `net (m³)` is above both. */
export function withSubHeading(top: TextRow, under: TextRow): TextRow {
  let over = '';
  const width = Math.max(top.cells.length, under.cells.length);
  const cells = Array.from({ length: width }, (_, position) => {
    const own = (top.cells[position] ?? '').trim();
    const more = (under.cells[position] ?? '').trim();
    if (own !== '') over = own;
    return more === '' ? own : `${over} ${more}`.trim();
  });
  return { ...top, cells };
}
