import { type Problem, problem } from '../../../diagnostics/index.ts';
import type { AboveNode, BlankNode, RowNode, SeriesNode, Typed } from '../../../language/index.ts';
import {
  type ColumnCell,
  type Formula,
  makerOf,
  type ScalarCell,
  type TableCell,
} from '../../store/cells.ts';
import { type CauseFinder, firstCause, ownFault } from '../cause.ts';
import { blockStream, type ElementCompiler, type NodeKind } from '../context.ts';
import { MOST_ROWS, planSeries } from '../series-plan.ts';
import { axisOf, rowStream } from './references.ts';

function ownTable(compiler: ElementCompiler): TableCell {
  const { table } = compiler.formula;
  if (!table) throw new Error('a function of rows stands outside a table');
  return table;
}

/** The row above, `first` on the first row. */
export const above: NodeKind<AboveNode> = {
  scalar: (node, compiler, depth) => {
    const column = compiler.world.column(node.column.id, axisOf(node.column).table);
    const { table } = column;
    const first = compiler.scalar(node.first, depth);
    return () => (table.row === 0 ? first() : (column.values[table.row - 1] as number));
  },
  stream: (node, compiler, depth) => {
    const column = compiler.element.world.column(node.column.id, axisOf(node.column).table);
    const { table } = column;
    const first = compiler.element.scalar(node.first, depth + 1);
    return blockStream(compiler, depth, (out, from, count) => {
      const start = from === 0 ? 1 : 0;
      for (let i = start; i < count; i += 1) out[i] = column.values[from + i - 1] as number;
      if (from > 0) return;
      table.row = 0;
      out[0] = first();
    });
  },
  cause: (node, finder) => {
    const column = finder.column(node.column.id, axisOf(node.column).table);
    if (column.table.row === 0) return finder.cause(node.first);
    return { kind: 'cell', cell: column, row: column.table.row - 1, node: node.column };
  },
};

/** The number of this row, from 1. */
export const row: NodeKind<RowNode> = {
  scalar: (_, compiler) => {
    const table = ownTable(compiler);
    return () => table.row + 1;
  },
  stream: (_, compiler, depth) => rowStream(compiler, depth, (at) => at + 1),
  cause: (node) => ownFault(problem('formula-broken', node, {})),
};

/** Whether a cell is blank. A cell that fails is neither blank nor filled. */
export const blank: NodeKind<BlankNode> = {
  scalar: (node, { world }) => {
    if (node.cell.type.axes.length === 0) {
      const found = world.scalar(node.cell.id);
      return () => blankness(found, world.scalars.values[found.index] as number);
    }
    const column = world.column(node.cell.id, axisOf(node.cell).table);
    return () => rowBlankness(column, column.table.row);
  },
  stream: (node, compiler, depth) => {
    const column = compiler.element.world.column(node.cell.id, axisOf(node.cell).table);
    return rowStream(compiler, depth, (at) => rowBlankness(column, at));
  },
  cause: (node, finder) => finder.cause(node.cell),
};

function blankness(cell: ScalarCell, value: number): number {
  if (!Number.isNaN(value)) return 0;
  return cell.content.kind === 'given' && !cell.content.failed ? 1 : Number.NaN;
}

function rowBlankness(column: ColumnCell, row: number): number {
  if (!Number.isNaN(column.values[row])) return 0;
  return column.content.kind === 'given' && !column.failedRows.has(row) ? 1 : Number.NaN;
}

/** The numbers that make the rows of a table, by the plan the table has made of them. */
export const series: NodeKind<SeriesNode> = {
  scalar: (_, compiler) => {
    const table = ownTable(compiler);
    return () => termOf(table, compiler.formula, table.row);
  },
  stream: (_, compiler, depth) => {
    const { formula } = compiler.element;
    const table = ownTable(compiler.element);
    return rowStream(compiler, depth, (at) => termOf(table, formula, at));
  },
  cause: (node, finder) => {
    const { table } = finder.formula;
    if (!table || makerOf(table) !== finder.formula)
      return ownFault(problem('series-twice', node, { table: table?.id ?? '' }));
    const parts: readonly Typed[] = [node.start, node.stop, node.step];
    return firstCause(parts, finder) ?? ownFault(seriesFault(node, finder));
  },
};

function termOf(table: TableCell, formula: Formula, at: number): number {
  const { plan } = table;
  if (!plan || makerOf(table) !== formula) return Number.NaN;
  return plan.meets && at === plan.count - 1 ? plan.stop : plan.start + at * plan.step;
}

/** Why a series whose arguments have values makes no rows. */
function seriesFault(node: SeriesNode, finder: CauseFinder): Problem {
  const [start, stop, step] = [node.start, node.stop, node.step].map((part) => finder.value(part));
  const plan = planSeries(start as number, stop as number, step as number);
  const written = {
    start: finder.shown(start as number, node.start),
    stop: finder.shown(stop as number, node.stop),
    step: finder.shown(step as number, node.step),
  };
  if (plan === 'step zero') return problem('series-step-zero', node.step, written);
  if (plan === 'wrong way') return problem('series-wrong-way', node.step, written);
  if (plan === 'too long') {
    // A little more than the least step, so that it still suffices with the digits shown.
    const least = (1.01 * ((stop as number) - (start as number))) / (MOST_ROWS - 1);
    return problem('series-too-long', node, {
      ...written,
      least: finder.shown(least, node.step),
      limit: MOST_ROWS,
    });
  }
  return problem('too-large', node, { written: finder.written(node) });
}
