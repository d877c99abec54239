import { type Outcome, type Problem, succeed } from '../diagnostics/index.ts';
import {
  type Book,
  type Cell,
  type Edit,
  joinEdits,
  replaceTableRows,
  rowIdsOf,
  type Statement,
  stateCells,
} from '../document/index.ts';
import { setNamed, tableNamed } from './find-by-name.ts';

/**
 * One edit that enters all the values, each named alone or with its sheet, or states them in place of calculated lines for
 * the reason given; every name that cannot be set is said.
 */
export function enterValues(
  book: Book,
  values: Readonly<Record<string, string>>,
  reason: string,
): Outcome<Edit> {
  return joined(
    'enter values',
    Object.entries(values).map(([name, entry]) => setNamed(book, name, entry, reason)),
  );
}

/**
 * One edit that replaces all rows of a table by rows given cell by cell. Columns no row has stay blank. A value for a
 * calculated column is stated in place of its cell for the reason given, a bare number in the column’s unit; rows without
 * one are computed. A name that is no column of the table is refused by the edit.
 */
export function enterRows(
  book: Book,
  name: string,
  rows: readonly Readonly<Record<string, Cell>>[],
  reason: string,
): Outcome<Edit> {
  const found = tableNamed(book, name);
  if (!found.ok) return found;
  const { place, table } = found.value;
  const cellOf = (row: Readonly<Record<string, Cell>>, column: string): Cell =>
    Object.hasOwn(row, column) ? (row[column] ?? null) : null;
  const calculated = table.columns.filter((column) => column.kind === 'calc');
  const columns = new Set(rows.flatMap((row) => Object.keys(row)));
  for (const column of calculated) columns.delete(column.name);
  const cells = Object.fromEntries(
    [...columns].map((column) => [column, rows.map((row) => cellOf(row, column))]),
  );
  // Rows that are put in get the identities that come next.
  const { next } = rowIdsOf(table);
  const statements = calculated.flatMap((column) => {
    const changes = new Map<number, Statement>();
    for (const [at, row] of rows.entries()) {
      const cell = cellOf(row, column.name);
      if (cell !== null && cell !== '') changes.set(next + at, { entry: String(cell), reason });
    }
    return changes.size > 0 ? [stateCells({ ...place, column: column.id }, column, changes)] : [];
  });
  const replaced = replaceTableRows(place, table, { length: rows.length, cells });
  return succeed(joinEdits(replaced.label, [replaced, ...statements]));
}

/** The edits as one, or the problems of all that failed. */
function joined(label: string, outcomes: readonly Outcome<Edit>[]): Outcome<Edit> {
  const problems: Problem[] = [];
  const edits: Edit[] = [];
  for (const outcome of outcomes) {
    if (outcome.ok) edits.push(outcome.value);
    else problems.push(...outcome.problems);
  }
  return problems.length > 0 ? { ok: false, problems } : succeed(joinEdits(label, edits));
}
