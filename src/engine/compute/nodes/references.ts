import {
  type Axis,
  type CellNode,
  type ColumnNode,
  type KnownNode,
  partsOf,
  type Typed,
} from '../../../language/index.ts';
import type { ColumnCell } from '../../store/cells.ts';
import { blockStrand, type NodeKind } from '../context.ts';
import { arrayStrand, type Strand } from '../strand.ts';

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

/** A strand that reads a column where it is. */
function columnStrand(column: ColumnCell): Strand {
  return arrayStrand(() => column.values);
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
  strand: (node, { element }) => columnStrand(element.world.column(node.id, axisOf(node).table)),
  blame: (node, blamer) => {
    if (node.type.axes.length === 0) return { kind: 'cell', cell: blamer.scalar(node.id), node };
    const column = blamer.column(node.id, axisOf(node).table);
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
  strand: (node, { element }) => columnStrand(element.world.column(node.id, axisOf(node).table)),
  blame: (node, blamer) => {
    const found = blamer.column(node.id, axisOf(node).table);
    return { kind: 'cell', cell: found, row: found.table.fresh, node };
  },
};

/** A column whose blank rows are left out; the aggregate around it does the leaving out. */
export const known: NodeKind<KnownNode> = {
  scalar: (node, compiler, depth) => compiler.scalar(node.column, depth),
  strand: (node, compiler, depth) => compiler.strand(node.column, depth),
  blame: (node, blamer) => blamer.blame(node.column),
};

/** A strand of numbers counted from the row: `of(row)`. */
export function rowStrand(
  compiler: Parameters<typeof blockStrand>[0],
  depth: number,
  of: (row: number) => number,
): Strand {
  return blockStrand(compiler, depth, (out, from, count) => {
    for (let i = 0; i < count; i += 1) out[i] = of(from + i);
  });
}
