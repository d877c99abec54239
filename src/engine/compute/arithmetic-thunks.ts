import type { ArithmeticOperator, Typed } from '../../language/index.ts';
import type { ElementCompiler } from './context.ts';
import { finite } from './operations.ts';
import type { Thunk } from './strand.ts';

type Slots = ElementCompiler['world']['slots'];

// An edit of a sheet spends its time in these closures, so two cells, and a constant beside something, which are
// most of what people write, are computed without a closure for each operand; and each operation has closures of
// its own, so that none looks up what to do.

const bothSlots: Readonly<Record<ArithmeticOperator, (slots: Slots, a: number, b: number) => Thunk>> = {
  '+': (slots, a, b) => () => finite((slots.values[a] as number) + (slots.values[b] as number)),
  '-': (slots, a, b) => () => finite((slots.values[a] as number) - (slots.values[b] as number)),
  '*': (slots, a, b) => () => finite((slots.values[a] as number) * (slots.values[b] as number)),
  '/': (slots, a, b) => () => finite((slots.values[a] as number) / (slots.values[b] as number)),
};

const slotRight: Readonly<Record<ArithmeticOperator, (slots: Slots, a: Thunk, b: number) => Thunk>> = {
  '+': (slots, a, b) => () => finite(a() + (slots.values[b] as number)),
  '-': (slots, a, b) => () => finite(a() - (slots.values[b] as number)),
  '*': (slots, a, b) => () => finite(a() * (slots.values[b] as number)),
  '/': (slots, a, b) => () => finite(a() / (slots.values[b] as number)),
};

const slotLeft: Readonly<Record<ArithmeticOperator, (slots: Slots, a: number, b: Thunk) => Thunk>> = {
  '+': (slots, a, b) => () => finite((slots.values[a] as number) + b()),
  '-': (slots, a, b) => () => finite((slots.values[a] as number) - b()),
  '*': (slots, a, b) => () => finite((slots.values[a] as number) * b()),
  '/': (slots, a, b) => () => finite((slots.values[a] as number) / b()),
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
  const { slots } = compiler.world;
  const a = slotOf(left, compiler);
  const b = slotOf(right, compiler);
  const thunk = (node: Typed) => compiler.scalar(node, depth);
  if (a !== undefined && b !== undefined) return bothSlots[op](slots, a, b);
  if (right.kind === 'number') return constantRight[op](thunk(left), right.si);
  if (left.kind === 'number') return constantLeft[op](left.si, thunk(right));
  if (b !== undefined) return slotRight[op](slots, thunk(left), b);
  if (a !== undefined) return slotLeft[op](slots, a, thunk(right));
  return neither[op](thunk(left), thunk(right));
}

/** The slot of a part that is a scalar cell. */
function slotOf(node: Typed, { world }: ElementCompiler): number | undefined {
  return node.kind === 'cell' && node.type.axes.length === 0 ? world.scalar(node.id).slot : undefined;
}
