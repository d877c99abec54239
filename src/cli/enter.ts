import { type Problem, problem } from '../diagnostics/index.ts';
import {
  blankMeanings,
  type Column,
  type Edit,
  emptiedColumns,
  replaceTableRows,
  statedInRows,
  statedInWords,
  type Table,
} from '../document/index.ts';
import {
  columnNamed,
  type FormulaColumnItem,
  type Notebook,
  setNamed,
  settableNamed,
  tableNamed,
  tryCells,
} from '../notebook/index.ts';
import { type ReadTable, readMapped, textColumns } from '../tables/index.ts';
import { directedMapping } from './columns-option.ts';
import { enterCells } from './enter-cells.ts';
import { splitAssignment } from './options.ts';
import type { Reasons } from './reasons.ts';
import { Refused, refusedBy, valueOrRefuse } from './refused.ts';
import { type PrintedTable, printTable, RefusedTable } from './table-account.ts';
import { partedFile, readTableFile } from './table-file.ts';
import type { TableOptions } from './table-options.ts';
import { withRemedy } from './table-remedies.ts';

/** What was entered: the ids of the lines and columns, and an account of each table by its id. */
export interface Entered {
  readonly ids: ReadonlySet<string>;
  readonly tables: Readonly<Record<string, PrintedTable>>;
  /** What there is to know of the tables, each with the file it stands in. */
  readonly remarks: readonly string[];
}

/** How files are read, and why values are stated. */
export interface EnterOptions extends TableOptions {
  readonly reasons: Reasons;
}

/**
 * Enters what `--table NAME=FILE.csv` and `--set NAME=VALUE` say into a notebook, tables first. An entry or a cell
 * that cannot be read is refused, all cells of a file at once; a blank one is not, for what needs it says so.
 */
export function enterOptions(
  notebook: Notebook,
  tables: readonly string[],
  sets: readonly string[],
  options: EnterOptions,
): Entered {
  const { reasons } = options;
  const ids = new Set<string>();
  const printed: Record<string, PrintedTable> = {};
  const remarks: string[] = [];
  for (const text of tables) {
    const [name, path] = splitAssignment('table', text, 'FILE.csv');
    const column = calculatedColumn(notebook, name);
    if (column) {
      if (ids.has(column.id)) throw new Refused(`--table ${name} is given twice`);
      ids.add(column.id);
      if (path.trim() === '') throw new Refused(`--table ${name} needs a file after the equals sign`);
      enterCells(notebook, column, path, options, reasons.of(name, column.id));
      continue;
    }
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
    const { id, line } = enterLine(notebook, name, entry, reasons);
    if (ids.has(id)) throw new Refused(`--set ${name} is given twice`);
    ids.add(id).add(line);
  }
  reasons.refuseUnused();
  return { ids, tables: printed, remarks };
}

/** The calculated column of a name, where that is none of a table. */
function calculatedColumn(notebook: Notebook, name: string): FormulaColumnItem | undefined {
  if (tableNamed(notebook.book, name).ok) return undefined;
  const found = columnNamed(notebook.model, name);
  return found.ok && found.value.kind === 'formula column' ? found.value : undefined;
}

function enterLine(
  notebook: Notebook,
  written: string,
  entry: string,
  reasons: Reasons,
): { readonly id: string; readonly line: string } {
  const about = `--set ${written}`;
  const found = valueOrRefuse(settableNamed(notebook.book, written), '--set');
  const { row, side } = found;
  const id = side ? `${found.id}.${side}` : found.id;
  const reason = row.kind === 'calc' || side ? reasons.of(written, id) : '';
  apply(notebook, valueOrRefuse(setNamed(notebook.book, id, entry, reason), '--set'), about);
  const item = notebook.model.items.get(found.id);
  if (!item) throw new Error(`${id} was set and is nowhere`);
  const stated = item.kind === 'formula' ? (side ? item.sides?.[side] : item.stated) : undefined;
  const wrong = (stated ?? item).problems.filter(({ severity }) => severity === 'error');
  if (wrong.length > 0) throw refusedBy(wrong, about);
  return { id, line: found.id };
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
  const decoded = readTableFile(path);
  if (!decoded.ok) throw unreadTable(path, id, undefined, decoded.problems);
  const file = decoded.value;
  const outcome = partedFile(file, columns, registry, options);
  if (!outcome.ok) throw unreadTable(path, id, file.encoding, outcome.problems);
  const parted = outcome.value;
  const mapping = directedMapping(parted, columns, options.columns, options.header);
  const headers = textColumns(parted, mapping.headed).map(({ header }) => header);
  const read = readMapped(parted, columns, mapping, {
    ...options.consents,
    ...(options.decimal && { decimal: options.decimal }),
    check: tryCells(notebook, id),
  });
  const blanked = read.ok ? blankedColumns(table, read.value, options) : [];
  const gone = read.ok ? statedGone(table) : [];
  const found = [
    ...file.problems,
    ...(read.ok ? read.value.problems : read.problems),
    ...blanked,
    ...gone,
  ].map((one) => withRemedy(one, columns, headers));
  const isTaken = read.ok && found.every(({ severity }) => severity !== 'error');
  const problems = isTaken ? [...found, ...unitsAssumed(table, read.value)] : found;
  const printed = printTable(path, file.encoding, read, problems, table.length ?? 0);
  if (!isTaken) throw refusedTable(path, id, printed);
  const { length, cells } = read.value;
  apply(notebook, replaceTableRows(place, table, { length, cells }), path);
  return { id, columns: Object.keys(cells).map((column) => `${id}.${column}`), printed };
}

/** A table file that cannot be parted into cells, with an account of none. */
function unreadTable(
  path: string,
  id: string,
  encoding: string | undefined,
  problems: readonly Problem[],
): RefusedTable {
  const read = { ok: false, problems, account: undefined } as const;
  return refusedTable(path, id, printTable(path, encoding, read, problems, 0));
}

function refusedTable(path: string, id: string, printed: PrintedTable): RefusedTable {
  const words = told(printed.problems).map((found) => saidOf(path, found));
  return new RefusedTable(words.join('\n'), id, printed);
}

/** That numbers have no unit in the text, nor were said to have one: they are read in that of their column. */
function unitsAssumed({ columns }: Table, { cells, units }: ReadTable): readonly Problem[] {
  const assumed = columns.flatMap((column) => {
    const unit = column.unit ?? '';
    const isBare = cells[column.name]?.some((cell) => typeof cell === 'number') === true;
    return isBare && unit !== '' && unit !== '-' && units[column.name] === undefined
      ? [`${column.name} in ${unit}`]
      : [];
  });
  return assumed.length === 0 ? [] : [problem('units-assumed', { from: 0, to: 0 }, { columns: assumed })];
}

/** What is said of columns with values that the file lacks, so that they become blank: refused unless consented to. */
function blankedColumns(table: Table, rows: ReadTable, { blankMissing }: TableOptions): readonly Problem[] {
  const emptied = emptiedColumns(table, rows);
  const columns = emptied.map(({ name }) => name);
  if (columns.length === 0) return [];
  const code = blankMissing ? 'table-columns-blank' : 'table-columns-emptied';
  return [
    problem(code, { from: 0, to: 0 }, { rows: table.length ?? 0, columns, meanings: blankMeanings(emptied) }),
  ];
}

/** What is said of values that are stated for the rows that others take the place of. */
function statedGone(table: Table): readonly Problem[] {
  const values = statedInRows(table).map((one) => statedInWords(table, one));
  return values.length === 0 ? [] : [problem('table-stated-gone', { from: 0, to: 0 }, { values })];
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
