import type { Column, Sheet, Table } from '../../document/index.ts';
import { type Content, element, type Markup, none } from '../../markup/index.ts';
import { type Notebook, statedIn } from '../../notebook/index.ts';
import { unitInPrint, writeNumber } from '../../units/index.ts';
import { type PrintedRow, type RowsOnPaper, rowsOnPaper } from '../tables/rows-on-paper.ts';
import { type ColumnView, columnSum, columnView } from '../values/cell-view.ts';
import { columnSummed } from '../values/column-summed.ts';
import { problemInWords } from '../values/persons-words.ts';
import { statedWords, whyNotComputed } from '../values/stated-words.ts';
import { symbol } from './formulas.ts';
import { columnRow, lineHeads } from './lines.ts';
import type { RecordSource } from './source.ts';
import { table } from './tables.ts';

/** So many rows of a table are written; the book within the record has all. */
const MOST_ROWS = 1000;

/** So many columns stand side by side on a page; more go on below. */
const MOST_COLUMNS = 8;

/** So many stated cells are listed. */
const MOST_STATED = 500;

/** A table of a sheet: its rows, what is stated in them, what its columns add to, and how each is computed. */
export function tablePart(source: RecordSource, sheet: Sheet, part: Table): Content {
  const { notebook, units } = source;
  const id = `${sheet.key}.${part.name}`;
  const title = part.title?.trim() || part.name;
  const length = notebook.rowsOf(id);
  const views = part.columns.map((column) => columnView(notebook, `${id}.${column.name}`, column, units));
  const rows = length === undefined ? [] : writtenRows(notebook, id, part.columns, length);
  const bands = bandsOf(views);
  return [
    element('h3', {}, title),
    length === undefined ? noRows(source, id, part) : limitWords(length, rows),
    length === 0 ? element('p', { class: 'quiet' }, 'This table has no rows.') : none,
    rows.length === 0
      ? none
      : bands.map((band, at) =>
          bandTable(
            source,
            bands.length === 1 ? title : `${title}, part ${at + 1} of ${bands.length}`,
            id,
            band,
            rows,
          ),
        ),
    statedCells(source, sheet, id, part.columns),
    table(
      `Columns of ${title}`,
      lineHeads,
      part.columns.map((column) => columnRow(source, id, column)),
      { class: 'lines', level: 'h4' },
    ),
  ];
}

function noRows({ notebook }: RecordSource, id: string, { columns }: Table): Content {
  const found = columns
    .map(({ name }) => notebook.column(`${id}.${name}`))
    .find(({ status }) => status !== 'ok');
  if (!found || found.status === 'ok') return none;
  const { message } = problemInWords(found.problem, notebook, id.slice(0, id.indexOf('.')));
  return element('p', { class: 'problem' }, message);
}

/** The rows of a table that are written: all, or of a long calculated one those that matter, as on paper. */
function writtenRows(
  notebook: Notebook,
  id: string,
  columns: readonly Column[],
  length: number,
): readonly PrintedRow[] {
  const rows = rowsOnPaper(notebook, id, columns, length).flatMap((run): readonly PrintedRow[] =>
    run.kind === 'left out' ? [run] : Array.from({ length: run.to - run.from + 1 }, (_, at) => run.from + at),
  );
  return rows.slice(0, MOST_ROWS);
}

function limitWords(length: number, rows: readonly PrintedRow[]): Content {
  const written = rows.filter((row) => typeof row === 'number').length;
  if (written === length) return none;
  const isShort = rows.some((row) => typeof row !== 'number');
  const which = isShort
    ? 'the first and the last, those that a line takes its value from, and those that are stated or have no value'
    : 'the first ones';
  return element(
    'p',
    { class: 'quiet' },
    `This table has ${writeNumber(length)} rows; ${writeNumber(written)} are written here: ${which}. The book that this record carries has all.`,
  );
}

function bandsOf(views: readonly ColumnView[]): readonly (readonly ColumnView[])[] {
  return Array.from({ length: Math.ceil(views.length / MOST_COLUMNS) }, (_, at) =>
    views.slice(at * MOST_COLUMNS, (at + 1) * MOST_COLUMNS),
  );
}

function bandTable(
  { notebook, units }: RecordSource,
  title: string,
  id: string,
  band: readonly ColumnView[],
  rows: readonly PrintedRow[],
): Markup {
  const isText = ({ column }: ColumnView): boolean =>
    column.kind === 'given' && column.type !== undefined && column.type !== 'number';
  const heads = band.map((view) => ({
    head: [
      view.column.label ? element('span', {}, `${view.column.label} `) : none,
      symbol(view.column.name),
      view.unit === '' ? none : ` ${unitInPrint(view.unit)}`,
    ],
    ...(isText(view) ? {} : { class: 'number' as const }),
  }));
  const summed = columnsSummed(notebook);
  const sums = band.map(({ column: { name } }) =>
    summed.has(`${id}.${name}`) ? (columnSum(notebook, `${id}.${name}`, units) ?? '') : '',
  );
  const written = rows.map((row) =>
    typeof row === 'number'
      ? { cells: [`${row + 1}`, ...band.map((view) => cell(view, row))] }
      : { class: 'gap', cells: [gap(row), ...band.map(() => '')] },
  );
  const total = sums.some((sum) => sum !== '') ? [{ class: 'total', cells: ['sum', ...sums] }] : [];
  return table(title, [{ head: 'Row', class: 'number' }, ...heads], [...written, ...total], {
    class: 'cells',
    level: 'h4',
  });
}

/** The columns that a line is the sum of: only of these is it known that they may be added. */
function columnsSummed({ model }: Notebook): ReadonlySet<string> {
  return new Set([...model.items.values()].flatMap((item) => columnSummed(item) ?? []));
}

const gap = ({ from, to }: RowsOnPaper): string => `${from + 1} to ${to + 1} left out`;

function cell({ at }: ColumnView, row: number): Content {
  const { text, state } = at(row);
  if (state === 'stated') return `${text} (stated)`;
  return state === 'bad' ? [text, element('b', { class: 'fails' }, ' problem')] : text;
}

/** What is stated in the cells of a table: for each its value, the computed one, how far apart they are, and why. */
function statedCells(source: RecordSource, { key }: Sheet, id: string, columns: readonly Column[]): Content {
  const { notebook, units } = source;
  const all = columns.flatMap((column) => {
    const item = notebook.model.items.get(`${id}.${column.name}`);
    return item ? statedIn(notebook, item).map((one) => ({ one, column })) : [];
  });
  if (all.length === 0) return none;
  const rows = all.slice(0, MOST_STATED).map(({ one, column }) => {
    const { stated, typed, computed, difference, reason, reasonFor } = statedWords(notebook, one, units);
    const why = whyNotComputed(notebook, one, key);
    return {
      cells: [
        `${(one.row ?? 0) + 1}`,
        symbol(column.name),
        `${stated}${typed === undefined ? '' : ` (as typed: ${typed})`}`,
        `${computed}${why === undefined ? '' : `: ${why}`}`,
        difference ?? '',
        `${reason || 'reason open'}${reasonFor === undefined ? '' : `, given for ${reasonFor}, to be confirmed`}`,
      ],
    };
  });
  const heads = ['Row', 'Symbol', 'Stated', 'Computed', 'Difference', 'Reason'].map((head) => ({ head }));
  const more = all.length - rows.length;
  return [
    table('Stated in place of computed cells', heads, rows, { level: 'h4' }),
    more > 0
      ? element('p', { class: 'quiet' }, `${writeNumber(more)} more stated cells are in the book only.`)
      : none,
  ];
}
