import { partsOf, type Typed } from '../../language/index.ts';
import type { Grid, GridCell, GridLabel, OpenSheet } from '../grid.ts';
import type { EngineValues, RecheckCell, RecheckProgram } from '../program.ts';
import { type TextCodes, textCodes } from '../text-codes.ts';
import { factorReader } from '../unit-factor.ts';
import { createBudget } from './budget.ts';
import { createConstants } from './constants.ts';
import { fill, valueCell, writeEntries } from './entries.ts';
import { lowerFormula, type RowCount } from './formula.ts';
import { layOut } from './layout.ts';
import type { BookPlan, TableSheet, ValuePlace } from './plan.ts';
import { createSearches } from './search.ts';
import type { WatchedCell } from './watched.ts';
import { createWrittenCells } from './written-cells.ts';

/** A book as an A1 grid, and where everything stands on it. */
export interface LoweredBook {
  readonly grid: Grid;
  /** Where the value of each cell stands, or those of a column below one another. */
  readonly places: ReadonlyMap<string, ValuePlace>;
  /** Cells that could not be lowered: the engine's own value stands on the grid in their place. */
  readonly borrowed: ReadonlyMap<string, string>;
  readonly watched: readonly WatchedCell[];
  /** Where the number of rows stands that the series of a table makes. */
  readonly rowCounts: readonly RowCount[];
  /** The numbers that stand for the texts of the book. */
  readonly texts: TextCodes;
}

/** Values of formulas that were computed before, as cells: of a line, or of a row of a column from 0. */
export interface KnownCells {
  readonly has: (id: string) => boolean;
  readonly at: (id: string, row: number | undefined) => GridCell;
}

/**
 * Lays a book out as plain spreadsheet cells: a sheet of its lines, one for each table, one of constants, one of unit
 * factors, and one of helper cells. A formula whose values are `known` already is not written again: they stand in its
 * cells.
 */
export function lowerBook(program: RecheckProgram, values: EngineValues, known?: KnownCells): LoweredBook {
  const labels: GridLabel[] = [];
  const sheetOf = (name: string): OpenSheet => ({ name, rows: [] });
  const [cells, work, numbers, units] = ['Cells', 'Work', 'Numbers', 'Units'].map(sheetOf) as [
    OpenSheet,
    OpenSheet,
    OpenSheet,
    OpenSheet,
  ];
  const tables = new Map<string, TableSheet>(
    program.tables.map((table, at) => [table.id, { table, sheet: sheetOf(`Table${at + 1}`) }]),
  );
  const places = layOut(program, cells, tables, labels);
  const texts = textCodes(textsOf(program, values));
  const constants = createConstants(numbers, units, labels, factorReader(program.units ?? []));
  const plan: BookPlan = {
    tables,
    places,
    work,
    constants,
    texts,
    values,
    labels,
    budget: createBudget(),
    searches: createSearches(),
    written: createWrittenCells(),
  };

  const borrowed = new Map<string, string>();
  const watched: WatchedCell[] = [];
  const rowCounts: RowCount[] = [];
  for (const cell of shortestFirst(program.cells, places)) {
    if (known && cell.kind === 'formula' && known.has(cell.id)) {
      fill(plan, cell.id, (row) => known.at(cell.id, row));
      continue;
    }
    const lowered = cell.kind === 'formula' ? lowerFormula(plan, cell) : writeEntries(plan, cell);
    if (typeof lowered === 'string') borrowed.set(cell.id, lowered);
    else if (lowered) {
      for (const hazard of lowered.watched) watched.push(hazard);
      if (lowered.rowCount) rowCounts.push(lowered.rowCount);
    }
  }
  for (const id of borrowed.keys()) fill(plan, id, (row) => valueCell(values(id, row), texts.codeOf));
  const sheets = [
    cells,
    ...Array.from(tables.values(), ({ sheet }) => sheet),
    work,
    plan.searches.sheet,
    numbers,
    units,
  ];
  return { grid: { sheets, labels }, places, borrowed, watched, rowCounts, texts };
}

/** Lines, then columns by their rows: where there is too much, the longest tables are left out. */
function shortestFirst(
  cells: readonly RecheckCell[],
  places: ReadonlyMap<string, ValuePlace>,
): readonly RecheckCell[] {
  const rows = ({ id }: RecheckCell): number => places.get(id)?.count ?? 0;
  return [...cells].sort((a, b) => rows(a) - rows(b));
}

function* textsOf(program: RecheckProgram, values: EngineValues): Iterable<string> {
  for (const cell of program.cells) {
    if (cell.kind === 'formula') {
      yield* textLiterals(cell.tree);
      if (cell.tree.type.kind !== 'text') continue;
      const rows = program.tables.find(({ id }) => id === cell.table)?.rows;
      const found =
        rows === undefined
          ? [values(cell.id)]
          : Array.from({ length: rows }, (_, row) => values(cell.id, row));
      for (const value of found) if (typeof value === 'string') yield value;
    } else {
      for (const entry of cell.kind === 'input' ? [cell.entry] : cell.entries)
        if (entry.kind === 'text') yield entry.text;
    }
  }
}

function* textLiterals(node: Typed): Iterable<string> {
  if (node.kind === 'text') yield node.text;
  for (const part of partsOf(node)) yield* textLiterals(part);
}
