import { nearest, type Problem, problem } from '../../../diagnostics/index.ts';
import {
  type Chart,
  type Column,
  findSheet,
  type Option,
  type Sheet,
  type Table,
} from '../../../document/index.ts';
import type { Notebook } from '../../../notebook/index.ts';

/** What a chart draws, and how. */
export type Drawn = Pick<Chart, 'form' | 'table' | 'x' | 'y'>;

const nowhere = { from: 0, to: 0 };

/** The tables of a sheet that a chart can be drawn from: those with columns. */
export function chartTables(sheet: Sheet | undefined): readonly Table[] {
  return (sheet?.parts ?? []).filter((part) => part.kind === 'table').filter((one) => one.columns.length > 0);
}

/** The columns of a table that can be a series: of numbers or dates; one whose type is not known yet may be. */
function drawnColumns({ model }: Notebook, sheet: string, table: Table): readonly Column[] {
  return table.columns.filter(({ name }) => {
    const kind = model.items.get(`${sheet}.${table.name}.${name}`)?.type.kind;
    return kind !== 'text' && kind !== 'truth';
  });
}

/** Whether some row of a column has a value, or it is not known yet whether one has. */
function hasValues(notebook: Notebook, sheet: string, table: Table, { name }: Column): boolean {
  const result = notebook.column(`${sheet}.${table.name}.${name}`);
  return result.status !== 'ok' || result.reading.gaps < result.reading.length;
}

/**
 * The columns a chart takes of a table unless it is told others: the second column with numbers over the first; over
 * the first column of all where only one has numbers. One that is blank is not taken for the axis, nor before others
 * for the series.
 */
export function usualColumns(notebook: Notebook, sheet: string, table: Table): Pick<Chart, 'x' | 'y'> {
  const numbers = drawnColumns(notebook, sheet, table);
  const filled = numbers.filter((one) => hasValues(notebook, sheet, table, one));
  const [first, second] = filled.length > 0 ? filled : numbers;
  const others = table.columns.filter((one) => one !== first && hasValues(notebook, sheet, table, one));
  const [x, y] = second ? [first, second] : [others[0] ?? table.columns[0], first];
  return { x: x?.name ?? '', y: y ? [y.name] : [] };
}

/** Why a chart cannot be drawn as it is told, whatever the values are; undefined if it can. */
export function chartTrouble(notebook: Notebook, sheet: string, drawn: Drawn): Problem | undefined {
  const tables = chartTables(findSheet(notebook.book, sheet));
  const table = tables.find(({ name }) => name === drawn.table);
  if (!table) return unknown(drawn.table, tables);
  const absent = [drawn.x, ...drawn.y].find((name) => !table.columns.some((one) => one.name === name));
  if (absent !== undefined) return unknown(absent, table.columns, `${table.name}.`);
  if (drawn.y.length === 0 && drawn.form !== 'histogram')
    return problem('chart-without-columns', nowhere, { table: table.name });
  const numbers = drawnColumns(notebook, sheet, table).map(({ name }) => name);
  const series = drawn.y.length === 0 ? [drawn.x] : drawn.y;
  const words = series.find((name) => !numbers.includes(name));
  if (words === undefined) return undefined;
  const facts = { name: `${table.name}.${words}`, what: 'a series', wanted: 'a column of numbers' };
  return problem('figure-cell-kind', nowhere, facts);
}

function unknown(name: string, known: readonly { readonly name: string }[], before = ''): Problem {
  const near = nearest(name, new Set(known.map((one) => one.name)));
  return problem('figure-name-unknown', nowhere, { name: `${before}${name}`, near });
}

/** What a chart may be told to draw: the tables of its sheet, and the columns of the one it has. */
export interface ChartChoices {
  readonly table: readonly Option[];
  readonly x: readonly Option[];
  readonly y: readonly Option[];
}

/** What a chart may draw; what it draws now is among it even where it is not there any more. */
export function chartChoices(notebook: Notebook, sheet: string, drawn: Drawn): ChartChoices {
  const tables = chartTables(findSheet(notebook.book, sheet));
  const table = tables.find(({ name }) => name === drawn.table);
  const titled = tables.map(({ name, title }) => option(name, title));
  const columns = table?.columns ?? [];
  const series = table ? drawnColumns(notebook, sheet, table) : [];
  return {
    table: withNow(titled, [drawn.table]),
    x: withNow(columns.map(columnOption), [drawn.x]),
    y: withNow(series.map(columnOption), drawn.y),
  };
}

const option = (value: string, label = ''): Option =>
  label === '' || label === value ? { value } : { value, label };

const columnOption = ({ name, label }: Column): Option => option(name, label);

function withNow(options: readonly Option[], now: readonly string[]): readonly Option[] {
  const absent = now.filter((name) => !options.some(({ value }) => value === name));
  return [...options, ...absent.map((value) => ({ value }))];
}
