import { type Problem, problem } from '../diagnostics/index.ts';
import { type Column, type Edit, emptiedColumns, replaceTableRows, type Table } from '../document/index.ts';
import { type Item, type Notebook, setNamed, spelledName, tableNamed, tryCells } from '../notebook/index.ts';
import { type ReadTable, readMapped, tableText } from '../tables/index.ts';
import { directedMapping } from './columns-option.ts';
import { splitAssignment } from './options.ts';
import { Refused, refusedBy, valueOrRefuse } from './refused.ts';
import { type PrintedTable, printTable, RefusedTable } from './table-account.ts';
import { readTableFile } from './table-file.ts';
import type { TableOptions } from './table-options.ts';
import { withRemedy } from './table-remedies.ts';

/** What was entered: the ids of the lines and columns, and an account of each table by its id. */
export interface Entered {
  readonly ids: ReadonlySet<string>;
  readonly tables: Readonly<Record<string, PrintedTable>>;
  /** What there is to know of the tables, each with the file it stands in. */
  readonly remarks: readonly string[];
}

/**
 * Enters what `--table NAME=FILE.csv` and `--set NAME=VALUE` say into a notebook, tables first. An entry or a cell
 * that cannot be read is refused, all cells of a file at once; a blank one is not, for what needs it says so.
 */
export function enterOptions(
  notebook: Notebook,
  tables: readonly string[],
  sets: readonly string[],
  options: TableOptions,
): Entered {
  const ids = new Set<string>();
  const printed: Record<string, PrintedTable> = {};
  const remarks: string[] = [];
  for (const text of tables) {
    const [name, path] = splitAssignment('table', text, 'FILE.csv');
    const entered = enterTable(notebook, name, path, options);
    printed[entered.id] = entered.printed;
    remarks.push(...entered.printed.problems.map((found) => saidOf(path, found)));
    for (const id of entered.columns) {
      if (ids.has(id)) throw new Refused(`--table ${name} is given twice`);
      ids.add(id);
    }
  }
  for (const text of sets) {
    const [name, entry] = splitAssignment('set', text);
    const id = enterLine(notebook, name, entry);
    if (ids.has(id)) throw new Refused(`--set ${name} is given twice`);
    ids.add(id);
  }
  return { ids, tables: printed, remarks };
}

function enterLine(notebook: Notebook, written: string, entry: string): string {
  apply(
    notebook,
    valueOrRefuse(setNamed(notebook.book, written, entry, SET_REASON), '--set'),
    `--set ${written}`,
  );
  const name = spelledName(written);
  const item = [...notebook.model.items.values()].find(
    (one) => (one.id === name || one.id === `${one.sheet}.${name}`) && isSet(one),
  );
  if (!item) throw new Error(`${name} was set and is nowhere`);
  const found = item.kind === 'formula' && item.stated ? item.stated.problems : item.problems;
  const wrong = found.filter(({ severity }) => severity === 'error');
  if (wrong.length > 0) throw refusedBy(wrong, `--set ${written}`);
  return item.id;
}

/** Why a line is stated where nobody says more. */
const SET_REASON = 'set on the command line';

/** Whether a line has an entry, of its own or stated in place of what it comes to. */
function isSet(item: Item): boolean {
  return item.kind === 'input' || (item.kind === 'formula' && item.stated?.statement.reason === SET_REASON);
}

interface EnteredTable {
  readonly id: string;
  readonly columns: readonly string[];
  readonly printed: PrintedTable;
}

function enterTable(notebook: Notebook, name: string, path: string, options: TableOptions): EnteredTable {
  if (path.trim() === '') throw new Refused(`--table ${name} needs a file after the equals sign`);
  const { place, table } = valueOrRefuse(tableNamed(notebook.book, name), '--table');
  const id = `${place.sheet}.${table.name}`;
  const columns: readonly Column[] = table.columns;
  const { registry } = notebook.model;
  const { text, encoding } = readTableFile(path);
  const parted = valueOrRefuse(tableText(text, columns, { registry, skipped: options.skipped }), path);
  const mapping = directedMapping(parted, columns, options.columns, options.header);
  const read = readMapped(parted, columns, mapping, {
    ...options.consents,
    ...(options.decimal && { decimal: options.decimal }),
    check: tryCells(notebook, id),
  });
  const guessed = encoding === 'windows-1252' ? [guessedEncoding(text)] : [];
  const blanked = read.ok ? blankedColumns(table, read.value, options) : [];
  const problems = [...guessed, ...(read.ok ? read.value.problems : read.problems), ...blanked].map((found) =>
    withRemedy(found, columns),
  );
  const printed = printTable(path, encoding, read, problems, table.length ?? 0);
  const wrong = problems.filter(({ severity }) => severity === 'error');
  if (!read.ok || wrong.length > 0)
    throw new RefusedTable(
      told(problems)
        .map((found) => saidOf(path, found))
        .join('\n'),
      id,
      printed,
    );
  const { length, cells } = read.value;
  apply(notebook, replaceTableRows(place, table, { length, cells }), path);
  return { id, columns: Object.keys(cells).map((column) => `${id}.${column}`), printed };
}

/** What is said of columns with values that the file lacks, so that they become blank: refused unless consented to. */
function blankedColumns(table: Table, rows: ReadTable, { blankMissing }: TableOptions): readonly Problem[] {
  const columns = emptiedColumns(table, rows).map(({ name }) => name);
  if (columns.length === 0) return [];
  const code = blankMissing ? 'table-columns-blank' : 'table-columns-emptied';
  return [problem(code, { from: 0, to: 0 }, { rows: table.length ?? 0, columns })];
}

/** That a text is read in an encoding that nothing in it confirms, with the first word that shows it. */
function guessedEncoding(text: string): Problem {
  const lines = text.split(/\r\n?|\n/);
  const at = lines.findIndex((line) => /[^\0-\x7f]/.test(line));
  const [word = ''] = /\S*[^\s\0-\x7f]\S*/.exec(lines[at] ?? '') ?? [];
  return problem('table-encoding-guessed', { from: 0, to: 0 }, { line: at + 1, text: word });
}

/** Everything there is to say of a file that is refused: first why, then what else will have to be looked at. */
function told(problems: readonly Problem[]): readonly Problem[] {
  const isError = ({ severity }: Problem): boolean => severity === 'error';
  return [...problems.filter(isError), ...problems.filter((found) => !isError(found))];
}

function saidOf(path: string, { message, hints }: Problem): string {
  return `${path}: ${[message, ...hints].join('; ')}`;
}

function apply(notebook: Notebook, edit: Edit, about: string): void {
  valueOrRefuse(notebook.apply(edit), about);
}
