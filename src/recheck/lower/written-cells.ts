import type { GridCell, OpenSheet } from '../grid.ts';

/**
 * Where helper cells stand, by their formulas, so that formulas which need the same ones have them in common. What was
 * written for a formula that was given up later is gone from the grid: nothing is found that does not stand there.
 */
export interface WrittenCells {
  /** The column from which on a line of a sheet holds these formulas (without `=`) side by side. */
  readonly inLine: (line: readonly GridCell[], formulas: readonly string[]) => number | undefined;
  readonly addInLine: (line: readonly GridCell[], formulas: readonly string[], column: number) => void;
  /** The row from which on a column of a sheet holds these formulas below one another. */
  readonly inColumn: (sheet: OpenSheet, column: number, formulas: readonly string[]) => number | undefined;
  readonly addInColumn: (formulas: readonly string[], row: number) => void;
}

export function createWrittenCells(): WrittenCells {
  /** The columns at which a line has cells that begin with a formula. */
  const lines = new WeakMap<readonly GridCell[], Starts>();
  const rows: Starts = new Map();
  return {
    inLine: (line, formulas) =>
      startsAt(lines.get(line), formulas, (column, formula) => holds(line[column], formula)),
    addInLine: (line, formulas, column) => {
      const starts: Starts = lines.get(line) ?? new Map();
      lines.set(line, starts);
      addStart(starts, formulas, column);
    },
    inColumn: ({ rows: cells }, column, formulas) =>
      startsAt(rows, formulas, (row, formula) => holds(cells[row]?.[column], formula)),
    addInColumn: (formulas, row) => addStart(rows, formulas, row),
  };
}

/** Where runs of cells begin, by the formula of the first. */
type Starts = Map<string, number[]>;

function startsAt(
  starts: Starts | undefined,
  formulas: readonly string[],
  isThere: (place: number, formula: string) => boolean,
): number | undefined {
  const known = starts?.get(formulas[0] ?? '');
  return known?.find((start) => formulas.every((formula, at) => isThere(start + at, formula)));
}

function addStart(starts: Starts, [first = '']: readonly string[], place: number): void {
  const known = starts.get(first);
  if (known) known.push(place);
  else starts.set(first, [place]);
}

function holds(cell: GridCell | undefined, formula: string): boolean {
  return typeof cell === 'string' && cell.length === formula.length + 1 && cell.endsWith(formula);
}
