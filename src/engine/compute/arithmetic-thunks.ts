import type { ArithmeticOperator, Typed } from '../../language/index.ts';
import type { ElementCompiler } from './context.ts';
import { finite } from './operations.ts';
import type { Thunk } from './stream.ts';

type Scalars = ElementCompiler['world']['scalars'];

// An edit of a sheet spends its time in these closures, so two cells, and a constant beside something, which are
// most of what people write, are computed without a closure for each operand; and each operation has closures of
// its own, so that none looks up what to do.

const bothCells: Readonly<Record<ArithmeticOperator, (all: Scalars, a: number, b: number) => Thunk>> = {
  '+': (all, a, b) => () => finite((all.values[a] as number) + (all.values[b] as number)),
  '-': (all, a, b) => () => finite((all.values[a] as number) - (all.values[b] as number)),
  '*': (all, a, b) => () => finite((all.values[a] as number) * (all.values[b] as number)),
  '/': (all, a, b) => () => finite((all.values[a] as number) / (all.values[b] as number)),
};

const cellRight: Readonly<Record<ArithmeticOperator, (all: Scalars, a: Thunk, b: number) => Thunk>> = {
  '+': (all, a, b) => () => finite(a() + (all.values[b] as number)),
  '-': (all, a, b) => () => finite(a() - (all.values[b] as number)),
  '*': (all, a, b) => () => finite(a() * (all.values[b] as number)),
  '/': (all, a, b) => () => finite(a() / (all.values[b] as number)),
};

const cellLeft: Readonly<Record<ArithmeticOperator, (all: Scalars, a: number, b: Thunk) => Thunk>> = {
  '+': (all, a, b) => () => finite((all.values[a] as number) + b()),
  '-': (all, a, b) => () => finite((all.values[a] as number) - b()),
  '*': (all, a, b) => () => finite((all.values[a] as number) * b()),
  '/': (all, a, b) => () => finite((all.values[a] as number) / b()),
};

const constantRight: Readonly<Record<ArithmeticOperator, (a: Thunk, b: number) => Thunk>> = {
  '+': (a, b) => () => finite(a() + b),
  '-': (a, b) => () => finite(a() - b),
  '*': (a, b) => () => finite(a() * b),
  '/': (a, b) => () => finite(a() / b),
};

const constantLeft: Readonly<Record<ArithmeticOperator, (a: number, b: Thunk) => Thunk>> = {
  '+': (a, b) => () => finite(a + b()),
  '-': (a, b) => () => finite(a - b()),
  '*': (a, b) => () => finite(a * b()),
  '/': (a, b) => () => finite(a / b()),
};

const neither: Readonly<Record<ArithmeticOperator, (a: Thunk, b: Thunk) => Thunk>> = {
  '+': (a, b) => () => finite(a() + b()),
  '-': (a, b) => () => finite(a() - b()),
  '*': (a, b) => () => finite(a() * b()),
  '/': (a, b) => () => finite(a() / b()),
};

/** Two parts added, subtracted, multiplied or divided, as one number. */
export function arithmeticThunk(
  op: ArithmeticOperator,
  left: Typed,
  right: Typed,
  compiler: ElementCompiler,
  depth: number,
): Thunk {
  const all = compiler.world.scalars;
  const a = indexOf(left, compiler);
  const b = indexOf(right, compiler);
  const thunk = (node: Typed) => compiler.scalar(node, depth);
  if (a !== undefined && b !== undefined) return bothCells[op](all, a, b);
  if (right.kind === 'number') return constantRight[op](thunk(left), right.si);
  if (left.kind === 'number') return constantLeft[op](left.si, thunk(right));
  if (b !== undefined) return cellRight[op](all, thunk(left), b);
  if (a !== undefined) return cellLeft[op](all, a, thunk(right));
  return neither[op](thunk(left), thunk(right));
}

/** The index of a part that is a scalar cell. */
function indexOf(node: Typed, { world }: ElementCompiler): number | undefined {
  return node.kind === 'cell' && node.type.axes.length === 0 ? world.scalar(node.id).index : undefined;
}
