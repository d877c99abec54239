import { fail, nearest, type Outcome, type Problem, problem, succeed } from '../../diagnostics/index.ts';
import type { Chart } from '../../document/index.ts';
import type { Notebook } from '../../notebook/index.ts';
import { fromSI, toSI, type Unit, writeIn } from '../../units/index.ts';
import { unitWords } from '../cells/amount.ts';
import { readAmounts, readTexts, waitsOn } from '../cells/read-column.ts';
import type { FigureView } from '../drawing.ts';
import { symbol, text, type Words } from '../svg/words.ts';

/** A column of numbers to draw, already in its unit; NaN where a row has no value. */
export interface Series {
  readonly name: string;
  readonly label: string;
  readonly unit: Unit;
  readonly values: Float64Array;
}

/** The column along the chart: numbers, or words of which every row is a place of its own. */
export type Along =
  | ({ readonly kind: 'numbers' } & Series)
  | {
      readonly kind: 'words';
      readonly name: string;
      readonly label: string;
      readonly values: readonly string[];
    };

/** What a chart is drawn from. */
export interface ChartData {
  readonly id: string;
  readonly table: string;
  readonly rows: number;
  readonly along: Along;
  readonly series: readonly Series[];
  /** A sentence for each column that could not be drawn. */
  readonly notes: readonly string[];
}

const nowhere = { from: 0, to: 0 };

/** Reads the columns of a chart. Problems where the table, the column along it or every series is not to be had. */
export function chartData(
  notebook: Notebook,
  sheet: string,
  part: Chart,
  view: FigureView,
): Outcome<ChartData> {
  const { tables, items } = notebook.model;
  const table = tables.get(`${sheet}.${part.table}`) ?? tables.get(part.table);
  if (!table) {
    const near = nearest(part.table, new Set(tables.keys()));
    return fail(problem('figure-name-unknown', nowhere, { name: part.table, near }));
  }
  const column = (name: string): Outcome<Along> => {
    const item = items.get(`${table.id}.${name}`);
    if (item?.kind !== 'input column' && item?.kind !== 'formula column') {
      const near = nearest(name, new Set(table.part.columns.map((one) => one.name)));
      return fail(problem('figure-name-unknown', nowhere, { name: `${part.table}.${name}`, near }));
    }
    if (item.type.kind === 'text' || item.type.kind === 'truth') {
      const read = readTexts(notebook, item);
      if (!read.ok) return read;
      const values = read.value.values.map((value) => value ?? '');
      return succeed({ kind: 'words', name: read.value.name, label: read.value.label, values });
    }
    const read = readAmounts(notebook, item, view);
    if (!read.ok) return read;
    const { unit, values } = read.value;
    const numbers = Float64Array.from(values, (si) => (Number.isNaN(si) ? si : fromSI(si, unit)));
    return succeed({
      kind: 'numbers',
      name: read.value.name,
      label: read.value.label,
      unit,
      values: numbers,
    });
  };

  const along = column(part.x);
  if (!along.ok) return along;
  const wanted = part.form === 'histogram' && part.y.length === 0 ? [part.x] : part.y;
  const series: Series[] = [];
  const problems: Problem[] = [];
  for (const name of wanted) {
    const read = column(name);
    if (!read.ok) problems.push(...read.problems);
    else if (read.value.kind === 'numbers') series.push(read.value);
    else {
      const facts = { name: `${part.table}.${name}`, what: 'a series', wanted: 'a column of numbers' };
      problems.push(problem('figure-cell-kind', nowhere, facts));
    }
  }
  const [first, ...others] = problems;
  if (series.length === 0)
    return first ? fail(first, ...others) : fail(waitsOn(table.id, 'no column is chosen to be drawn'));
  const rows = along.value.values.length;
  if (rows === 0) return fail(waitsOn(table.id, 'it has no rows'));
  if (series.every((one) => one.values.every(Number.isNaN)))
    return fail(waitsOn(`${table.id}.${series[0]?.name}`, 'no row has a value'));
  return succeed({
    id: part.id,
    table: table.id,
    rows,
    along: along.value,
    series,
    notes: problems.map(({ message }) => `Left out: ${message}.`),
  });
}

/** A column's title: symbol, description, unit. */
export function columnTitle(column: Titled): Words {
  return [...symbol(column.name), ...text(titleTail(column))];
}

/** The same in plain letters, the name as it is written. */
export function plainTitle(column: Titled): string {
  return column.name + titleTail(column);
}

interface Titled {
  readonly name: string;
  readonly label: string;
  readonly unit?: Unit;
}

function titleTail({ name, label, unit }: Titled): string {
  const units = unit ? unitWords(unit) : '';
  return `${label === '' || label === name ? '' : ` ${label}`}${units === '' ? '' : `, ${units}`}`;
}

/** A number of a column as a table or a mark has it. */
export function numberText(value: number, unit: Unit): string {
  return Number.isNaN(value) ? '' : writeIn(toSI(value, unit), unit);
}

/** The least and the greatest of some numbers, those that are none left out. */
export function spanOf(...lists: readonly ArrayLike<number>[]): [least: number, greatest: number] {
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  for (const list of lists)
    for (let at = 0; at < list.length; at += 1) {
      const value = list[at] as number;
      if (value < least) least = value;
      if (value > greatest) greatest = value;
    }
  return [least, greatest];
}
