import {
  type Axis,
  type CellNode,
  type ColumnNode,
  type KnownNode,
  partsOf,
  type Typed,
} from '../../../language/index.ts';
import type { ColumnCell } from '../../store/cells.ts';
import { blockStream, type NodeKind } from '../context.ts';
import { arrayStream, type Stream } from '../stream.ts';

/** The axis of a reference to a column. */
export function axisOf(node: CellNode | ColumnNode): Axis {
  const [axis] = node.type.axes;
  if (!axis) throw new Error(`${node.id} is used as a column and has no axis`);
  return axis;
}

/** The first place where a part names a cell or column. */
export function referenceIn(node: Typed, id: string): CellNode | ColumnNode | undefined {
  if (node.kind === 'cell' || node.kind === 'column') return node.id === id ? node : undefined;
  for (const part of partsOf(node)) {
    const found = referenceIn(part, id);
    if (found) return found;
  }
  return undefined;
}

/** A stream that reads a column where it is. */
function columnStream(column: ColumnCell): Stream {
  return arrayStream(() => column.values);
}

/** A scalar cell, or this row's value of a column. */
export const cell: NodeKind<CellNode> = {
  scalar: (node, { world }) => {
    if (node.type.axes.length === 0) {
      const { scalars } = world;
      const { index } = world.scalar(node.id);
      return () => scalars.values[index] as number;
    }
    const column = world.column(node.id, axisOf(node).table);
    const { table } = column;
    return () => column.values[table.row] as number;
  },
  stream: (node, { element }) => columnStream(element.world.column(node.id, axisOf(node).table)),
  cause: (node, finder) => {
    if (node.type.axes.length === 0) return { kind: 'cell', cell: finder.scalar(node.id), node };
    const column = finder.column(node.id, axisOf(node).table);
    return { kind: 'cell', cell: column, row: column.table.row, node };
  },
};

/** A whole column on its fresh axis. */
export const column: NodeKind<ColumnNode> = {
  scalar: (node, { world }) => {
    const found = world.column(node.id, axisOf(node).table);
    const { table } = found;
    return () => found.values[table.fresh] as number;
  },
  stream: (node, { element }) => columnStream(element.world.column(node.id, axisOf(node).table)),
  cause: (node, finder) => {
    const found = finder.column(node.id, axisOf(node).table);
    return { kind: 'cell', cell: found, row: found.table.fresh, node };
  },
};

/** A column whose blank rows are left out; the aggregate around it does the leaving out. */
export const known: NodeKind<KnownNode> = {
  scalar: (node, compiler, depth) => compiler.scalar(node.column, depth),
  stream: (node, compiler, depth) => compiler.stream(node.column, depth),
  cause: (node, finder) => finder.cause(node.column),
};

/** A stream of numbers counted from the row: `of(row)`. */
export function rowStream(
  compiler: Parameters<typeof blockStream>[0],
  depth: number,
  of: (row: number) => number,
): Stream {
  return blockStream(compiler, depth, (out, from, count) => {
    for (let i = 0; i < count; i += 1) out[i] = of(from + i);
  });
}
