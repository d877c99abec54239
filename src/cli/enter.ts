import { type Column, type Edit, replaceTableRows } from '../document/index.ts';
import { type Notebook, setNamed, spelledName, tableNamed, tryCells } from '../notebook/index.ts';
import { readTable } from '../tables/index.ts';
import { splitAssignment } from './options.ts';
import { readText } from './read-text.ts';
import { Refused, refusedBy, valueOrRefuse } from './refused.ts';

/**
 * Enters what `--table NAME=FILE.csv` and `--set NAME=VALUE` say into a notebook, tables first. An entry or a cell
 * that cannot be read is refused; a blank one is not, for what needs it says so. Gives the ids of the lines and
 * columns entered.
 */
export function enterOptions(
  notebook: Notebook,
  tables: readonly string[],
  sets: readonly string[],
): ReadonlySet<string> {
  const entered = new Set<string>();
  for (const text of tables) {
    for (const id of enterTable(notebook, ...splitAssignment('table', text, 'FILE.csv'))) {
      if (entered.has(id)) throw new Refused(`--table ${splitAssignment('table', text)[0]} is given twice`);
      entered.add(id);
    }
  }
  for (const text of sets) {
    const [name, entry] = splitAssignment('set', text);
    const id = enterLine(notebook, name, entry);
    if (entered.has(id)) throw new Refused(`--set ${name} is given twice`);
    entered.add(id);
  }
  return entered;
}

function enterLine(notebook: Notebook, written: string, entry: string): string {
  apply(notebook, valueOrRefuse(setNamed(notebook.book, written, entry), '--set'), `--set ${written}`);
  const name = spelledName(written);
  const item = [...notebook.model.items.values()].find(
    ({ kind, id, sheet }) => kind === 'input' && (id === name || id === `${sheet}.${name}`),
  );
  if (item?.kind !== 'input') throw new Error(`${name} was set and is no given`);
  const wrong = item.problems.filter(({ severity }) => severity === 'error');
  if (wrong.length > 0) throw refusedBy(wrong, `--set ${written}`);
  return item.id;
}

function enterTable(notebook: Notebook, name: string, path: string): readonly string[] {
  if (path.trim() === '') throw new Refused(`--table ${name} needs a file after the equals sign`);
  const { place, table } = valueOrRefuse(tableNamed(notebook.book, name), '--table');
  const columns: readonly Column[] = table.columns;
  const read = valueOrRefuse(
    readTable(readText(path), columns, {
      registry: notebook.model.registry,
      check: tryCells(notebook, `${place.sheet}.${table.name}`),
    }),
    path,
  );
  const wrong = read.problems.filter((found) => found.severity === 'error');
  if (wrong.length > 0) throw refusedBy(wrong, path);
  apply(notebook, replaceTableRows(place, table, { length: read.length, cells: read.cells }), path);
  return Object.keys(read.cells).map((column) => `${place.sheet}.${table.name}.${column}`);
}

function apply(notebook: Notebook, edit: Edit, about: string): void {
  valueOrRefuse(notebook.apply(edit), about);
}
