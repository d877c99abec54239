import { type Column, type Edit, replaceTableRows } from '../document/index.ts';
import { type Notebook, setNamed, tableNamed } from '../notebook/index.ts';
import { readTable } from '../tables/index.ts';
import { readText } from './books.ts';
import { splitAssignment } from './options.ts';
import { refusedBy, valueOrRefuse } from './refused.ts';

/** Enters what `--table NAME=FILE.csv` and `--set NAME=VALUE` say into a notebook, tables first. */
export function enterOptions(notebook: Notebook, tables: readonly string[], sets: readonly string[]): void {
  for (const text of tables) {
    const [name, path] = splitAssignment('table', text);
    apply(notebook, tableEdit(notebook, name, path), `--table ${name}`);
  }
  for (const text of sets) {
    const [name, entry] = splitAssignment('set', text);
    apply(notebook, valueOrRefuse(setNamed(notebook.book, name, entry), '--set'), `--set ${name}`);
  }
}

function apply(notebook: Notebook, edit: Edit, about: string): void {
  valueOrRefuse(notebook.apply(edit), about);
}

function tableEdit(notebook: Notebook, name: string, path: string): Edit {
  const { place, table } = valueOrRefuse(tableNamed(notebook.book, name), '--table');
  const columns: readonly Column[] = table.columns;
  const read = valueOrRefuse(readTable(readText(path), columns), path);
  const wrong = read.problems.filter((found) => found.severity === 'error');
  if (wrong.length > 0) throw refusedBy(wrong, path);
  return replaceTableRows(place, table, { length: read.length, cells: read.cells });
}
