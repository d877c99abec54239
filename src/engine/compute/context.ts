import type { Typed } from '../../language/index.ts';
import type { BufferPool } from '../store/buffer-pool.ts';
import type { Scalars } from '../store/cell-store.ts';
import type { Cell, ColumnCell, Formula, ScalarCell, TableCell } from '../store/cells.ts';
import type { TextPool } from '../store/text-pool.ts';
import type { Cause, CauseFinder } from './cause.ts';
import type { Space } from './space.ts';
import { type Fill, type Program, registerStream, type Stream, type Thunk } from './stream.ts';

/** What computing needs of the engine: where values are, and scratch room. */
export interface World {
  readonly scalars: Scalars;
  readonly texts: TextPool;
  /** All cells by index. */
  readonly all: readonly Cell[];
  readonly scalar: (id: string) => ScalarCell;
  readonly column: (id: string, table: string) => ColumnCell;
  readonly table: (id: string) => TableCell;
  /** Whether a row without a value lacks it only because something in that row of the table is blank. */
  readonly isBlankRow: (column: ColumnCell, row: number) => boolean;
  readonly buffers: BufferPool;
  /** The scratch register at a depth, one block long, shared by all programs. */
  readonly register: (depth: number) => Float64Array;
}

/**
 * Compiles the parts of one formula. `depth` is the first scratch register a part may use: it and those above it
 * may be overwritten whenever the part is computed.
 */
export interface ElementCompiler {
  readonly world: World;
  readonly formula: Formula;
  /** Whether the formula is computed row by row, so that running functions step. */
  readonly stepping: boolean;
  /** A part as one number where the cursors stand. */
  readonly scalar: (node: Typed, depth: number) => Thunk;
  /** A part over a space. */
  readonly program: (node: Typed, space: Space, depth: number) => Program;
  /** All values of a part over a space; computed once an evaluation unless it depends on the row. */
  readonly whole: (node: Typed, space: Space, depth: number) => () => Float64Array;
}

/** Compiles the parts of one program over its space. */
export interface SpaceCompiler {
  readonly element: ElementCompiler;
  readonly space: Space;
  /** Adds what must be done once before the program runs. */
  readonly before: (step: () => void) => void;
  /** A part along the space; leaves its result in the register `depth` if it needs one. */
  readonly stream: (node: Typed, depth: number) => Stream;
}

/** How one kind of node is computed and what is said when it has no value. */
export interface NodeKind<N extends Typed> {
  readonly scalar: (node: N, compiler: ElementCompiler, depth: number) => Thunk;
  /** Called only for nodes that change along the whole of the space. */
  readonly stream: (node: N, compiler: SpaceCompiler, depth: number) => Stream;
  /** Called only where the node has no value. */
  readonly cause: (node: N, finder: CauseFinder) => Cause;
}

/** The stream whose blocks `fill` writes into the register at `depth`. */
export function blockStream(compiler: SpaceCompiler, depth: number, fill: Fill): Stream {
  return registerStream(compiler.element.world.register(depth), fill);
}

/** Compiles several parts so that their results stand side by side. */
export function streamsOf(
  nodes: readonly Typed[],
  compiler: SpaceCompiler,
  depth: number,
): readonly Stream[] {
  let free = depth;
  return nodes.map((node) => {
    const stream = compiler.stream(node, free);
    free += stream.holds;
    return stream;
  });
}

/** Whether a value depends on the row a column formula stands on. */
export function dependsOnRow(node: Typed): boolean {
  return node.type.axes.some((axis) => !axis.fresh);
}
