import { type Outcome, type Problem, succeed } from '../diagnostics/index.ts';
import { type Book, type Cell, type Edit, joinEdits, replaceTableRows } from '../document/index.ts';
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
 * One edit that replaces all rows of a table by rows given cell by cell. Columns no row has stay blank; a name that is
 * no column of the table is refused by the edit.
 */
export function enterRows(
  book: Book,
  name: string,
  rows: readonly Readonly<Record<string, Cell>>[],
): Outcome<Edit> {
  const found = tableNamed(book, name);
  if (!found.ok) return found;
  const { place, table } = found.value;
  const columns = new Set(rows.flatMap((row) => Object.keys(row)));
  const cells = Object.fromEntries(
    [...columns].map((column) => [
      column,
      rows.map((row) => (Object.hasOwn(row, column) ? (row[column] ?? null) : null)),
    ]),
  );
  return succeed(replaceTableRows(place, table, { length: rows.length, cells }));
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
