import { type Problem, problem } from '../diagnostics/index.ts';
import { idOfRow, rowIdsOf, type Statement, stateCells } from '../document/index.ts';
import { type FormulaColumnItem, type Notebook, readAsStated } from '../notebook/index.ts';
import { readMapped, type TableCell, type TableColumn, textColumns } from '../tables/index.ts';
import { PLAIN_UNIT, type Unit, writeNumber } from '../units/index.ts';
import { directedMapping } from './columns-option.ts';
import { Refused, refusedBy, valueOrRefuse } from './refused.ts';
import { partedFile, readTableFile } from './table-file.ts';
import type { TableOptions } from './table-options.ts';
import { withRemedy } from './table-remedies.ts';

/** The column of the file that says which row a value is stated for, from 1 as they are printed. */
const ROW = 'row';

/**
 * States the cells of a calculated column that a file lists, each with the number of its row; the others stay computed,
 * and so does a row whose value is blank. What is wrong with a cell refuses the whole file.
 */
export function enterCells(
  notebook: Notebook,
  item: FormulaColumnItem,
  path: string,
  options: TableOptions,
  reason: string,
): void {
  const { id, column } = item;
  const table = notebook.model.tables.get(item.table)?.part;
  if (column.kind !== 'calc' || table?.length === undefined)
    throw new Refused(
      `--table ${id}: the rows of this table are made by a series, so no cell of it can be stated`,
    );
  const columns: readonly TableColumn[] = [{ name: ROW, kind: 'given', unit: '-' }, valueColumn(item)];
  const { registry } = notebook.model;
  const file = valueOrRefuse(readTableFile(path), path);
  const parted = valueOrRefuse(partedFile(file, columns, registry, options), path);
  const mapping = directedMapping(parted, columns, options.columns, options.header);
  const read = readMapped(parted, columns, mapping, {
    ...options.consents,
    ...(options.decimal && { decimal: options.decimal }),
    check: (name, cell) =>
      name === ROW ? rowProblem(cell, table.length ?? 0) : cellProblem(cell, item, notebook),
  });
  const found = read.ok ? read.value.problems : read.problems;
  const headers = textColumns(parted, mapping.headed).map(({ header }) => header);
  const wrong = found
    .filter(({ severity }) => severity === 'error')
    .map((one) => withRemedy(one, columns, headers));
  if (!read.ok || wrong.length > 0) throw refusedBy(wrong, path);
  const { [ROW]: rows, [column.name]: values } = read.value.cells;
  if (!rows || !values)
    throw new Refused(
      `${path}: to state cells of ${id}, the file needs a column “${ROW}” and a column “${column.name}”`,
    );
  const ids = rowIdsOf(table);
  const changes = new Map<number, Statement>();
  for (const [at, value] of values.entries()) {
    if (value === null || value === '') continue;
    const row = idOfRow(ids, Number(rows[at]) - 1);
    if (row === undefined) throw new Refused(`${path}: a value of “${column.name}” stands beside no row`);
    if (changes.has(row)) throw new Refused(`${path}: row ${rows[at]} stands there twice`);
    changes.set(row, { entry: entryOf(value, item.unit), reason });
  }
  const [sheet = ''] = id.split('.');
  const place = { sheet, table: table.id, column: column.id };
  valueOrRefuse(notebook.apply(stateCells(place, column, changes)), path);
}

function valueColumn({ id, column, unit, type }: FormulaColumnItem): TableColumn {
  const named = {
    name: column.name,
    kind: 'given',
    ...(column.label !== undefined && { label: column.label }),
  } as const;
  if (type.kind === 'text' || type.kind === 'truth') return { ...named, type: type.kind };
  if (type.kind === 'point' && type.of === 'date') return { ...named, type: 'date' };
  if (unit) return { ...named, unit: unit.text };
  if (type.kind === 'number' && type.dimension.powers.length === 0)
    return { ...named, unit: PLAIN_UNIT.text };
  throw new Refused(
    `--table ${id}: the column states no unit, so numbers in a file would not say what they are; give the column its unit first`,
  );
}

function rowProblem(cell: TableCell, rows: number): Problem | undefined {
  const row = typeof cell === 'number' ? cell : Number.NaN;
  if (Number.isInteger(row) && row >= 1 && row <= rows) return undefined;
  return problem('stated-row-unknown', { from: 0, to: 0 }, { written: `${cell ?? ''}`, rows });
}

function cellProblem(
  cell: TableCell,
  { id, unit }: FormulaColumnItem,
  notebook: Notebook,
): Problem | undefined {
  if (cell === null || cell === '') return undefined;
  return readAsStated(notebook, { id }, entryOf(cell, unit)).problems.find(
    ({ severity }) => severity === 'error',
  );
}

/** A cell as an entry, a number with the unit it was read in: the column may have another one day. */
function entryOf(cell: TableCell, unit: Unit | undefined): string {
  if (typeof cell !== 'number') return cell ?? '';
  const number = writeNumber(cell, { digits: 'full', grouping: 'none' });
  return unit && unit.text !== '' && unit.text !== PLAIN_UNIT.text ? `${number} ${unit.text}` : number;
}
