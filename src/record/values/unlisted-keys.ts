import { type FactsOf, type Problem, problem } from '../../diagnostics/index.ts';
import type { Notebook } from '../../notebook/index.ts';

type ByRow = ReadonlyMap<number, Problem>;

const NONE: ByRow = new Map();

// One state of a book has one list of problems, and tables ask for each of their columns.
const known = new WeakMap<readonly Problem[], ReadonlyMap<string, ByRow>>();

/**
 * The entries of a column that stand in no row of the list in which they are looked for: the problem by row, from 0, without
 * the row in its words. */
export function unlistedKeys(notebook: Notebook, column: string): ByRow {
  const problems = notebook.problems();
  const all = known.get(problems) ?? byColumn(problems);
  known.set(problems, all);
  return all.get(column) ?? NONE;
}

function byColumn(problems: readonly Problem[]): ReadonlyMap<string, ByRow> {
  const columns = new Map<string, Map<number, Problem>>();
  for (const found of problems) {
    const { code, cell, data } = found;
    if (code !== 'key-not-found' || cell === undefined || typeof data.row !== 'number') continue;
    const rows = columns.get(cell) ?? new Map<number, Problem>();
    const facts = { ...data, row: null } as unknown as FactsOf<'key-not-found'>;
    columns.set(cell, rows.set(data.row - 1, problem(code, found, facts)));
  }
  return columns;
}
