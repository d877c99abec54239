import { inCell, type Problem, problem } from '../../diagnostics/index.ts';
import type { Sheet } from '../schema/book.ts';
import type { Table } from '../schema/parts.ts';

type Bearer = 'row' | 'table' | 'column';

/**
 * The rules of names on one sheet: rows and tables share no name, columns differ within their table and share no
 * name with a row or table, and no table has the key of a sheet of the book.
 */
export function nameProblems(sheet: Sheet, sheetKeys: ReadonlySet<string>): Problem[] {
  const problems: Problem[] = [];
  const bearers = new Map<string, Bearer>();
  const tables: Table[] = [];
  const claim = (name: string, what: Bearer): void => {
    const first = bearers.get(name);
    if (first === undefined) bearers.set(name, what);
    else problems.push(nameTwice(sheet, name, what, first));
  };
  for (const part of sheet.parts) {
    if (part.kind === 'rows') for (const row of part.rows) claim(row.name, 'row');
    if (part.kind !== 'table') continue;
    claim(part.name, 'table');
    tables.push(part);
    if (sheetKeys.has(part.name)) {
      problems.push(
        inCell(
          problem('book-table-named-as-sheet', { from: 0, to: 0 }, { sheet: sheet.key, name: part.name }),
          `${sheet.key}.${part.name}`,
        ),
      );
    }
  }
  for (const table of tables) {
    const columns = new Set<string>();
    for (const { name } of table.columns) {
      const first = columns.has(name) ? 'column' : bearers.get(name);
      if (first !== undefined) problems.push(nameTwice(sheet, name, 'column', first));
      columns.add(name);
    }
  }
  return problems;
}

function nameTwice(sheet: Sheet, name: string, what: Bearer, first: Bearer): Problem {
  const facts = { sheet: sheet.key, name, what, first };
  return inCell(problem('book-name-twice', { from: 0, to: 0 }, facts), `${sheet.key}.${name}`);
}
