import {
  type CallNode,
  findFunction,
  type NumberNode,
  onAxes,
  plainType,
  type Typed,
  unionAxes,
} from '../language/index.ts';

/** The tree of the size of a call's value; `size` gives that of a part. */
export type SizeOfCall = (node: CallNode, size: (part: Typed) => Typed) => Typed;

/** The call on the sizes of all its arguments. */
const ofSizes: SizeOfCall = (node, size) => ({ ...node, args: node.args.map(size) });
/** The call on the size of one argument, which holds the values; the others choose among them. */
const ofValuesAt =
  (place: number): SizeOfCall =>
  (node, size) => ({ ...node, args: node.args.map((arg, at) => (at === place ? size(arg) : arg)) });
/** Another function of the sizes of all arguments. */
const as =
  (name: string): SizeOfCall =>
  (node, size) =>
    call(name, node.args.map(size), node);
const argument: SizeOfCall = (node, size) => size(first(node));
/** The greatest size of one argument. */
const greatestOf =
  (at: number): SizeOfCall =>
  (node, size) =>
    call('MAX', [size(node.args[at] as Typed)], node);
/** The value itself, and what the size of the argument comes to through the slope of the function. */
const through =
  (slope: (x: Typed, node: CallNode) => Typed): SizeOfCall =>
  (node, size) => {
    const x = first(node);
    return operation('+', absolute(node), operation('*', absolute(slope(x, node)), size(x)));
  };
/** The value itself and one, for a function that passes zero and is steep nowhere that matters. */
const andOne: SizeOfCall = (node) => operation('+', absolute(node), one(node));

const square = (x: Typed): Typed => operation('*', x, x);
const overOne = (x: Typed): Typed => operation('/', one(x), x);

/**
 * The functions that balance values or hand them on, and those whose slope carries a balance further; of any other
 * the size is that of its value.
 */
export const sizesOfCalls: Readonly<Record<string, SizeOfCall>> = {
  ABS: argument,
  MOD: argument,
  SUM: ofSizes,
  AVERAGE: ofSizes,
  SUMPRODUCT: ofSizes,
  SUMSQ: ofSizes,
  MIN: as('MAX'),
  MAX: ofSizes,
  LESSER: as('GREATER'),
  GREATER: ofSizes,
  MEDIAN: as('MAX'),
  PERCENTILE: greatestOf(0),
  LARGE: greatestOf(0),
  SMALL: greatestOf(0),
  VAR: as('SUMSQ'),
  VARP: as('SUMSQ'),
  // The root of the sum of squares, which a deviation is a balance of.
  STDEV: (node, size) => call('SQRT', [call('SUMSQ', node.args.map(size), node)], node),
  STDEVP: (node, size) => call('SQRT', [call('SUMSQ', node.args.map(size), node)], node),
  SUMIF: ofValuesAt(1),
  AVERAGEIF: ofValuesAt(1),
  MAXIF: ofValuesAt(1),
  MINIF: (node, size) => call('MAXIF', [first(node), size(node.args[1] as Typed)], node),
  INDEX: ofValuesAt(0),
  LOOKUP: ofValuesAt(2),
  // A sum of pieces, each no longer than the greatest value.
  INTERPOLATE: greatestOf(2),
  INTERPOLATE2: greatestOf(4),
  RUNNINGSUM: ofSizes,
  RUNNINGMAX: ofSizes,
  RUNNINGMIN: as('RUNNINGMAX'),
  SQRT: through((_, node) => overOne(node)),
  EXP: through((_, node) => node),
  LN: through(overOne),
  LOG10: through(overOne),
  LOG: andOne,
  SIN: through((x, node) => call('COS', [x], node)),
  COS: through((x, node) => call('SIN', [x], node)),
  TAN: through((x, node) => operation('+', one(x), square(node))),
  ASIN: through((x, node) => overOne(call('SQRT', [operation('-', one(x), square(x))], node))),
  ACOS: andOne,
  ATAN: through((x) => overOne(operation('+', one(x), square(x)))),
  ATAN2: andOne,
  SINH: through((x, node) => call('COSH', [x], node)),
  TANH: through((x, node) => operation('-', one(x), square(node))),
  ASINH: through((x) => overOne(operation('+', one(x), absolute(x)))),
  ATANH: through((x) => overOne(operation('-', one(x), square(x)))),
  ACOSH: andOne,
  ERF: through((x, node) => call('EXP', [operation('-', zero(x), square(x))], node)),
  NORMSINV: andOne,
  NORMINV: (node, size) => operation('+', size(node.args[1] as Typed), size(node.args[2] as Typed)),
  TRIANGINV: (node, size) => operation('+', size(node.args[1] as Typed), size(node.args[3] as Typed)),
};

/** The size of a number: itself without its sign. */
export function absolute(node: Typed): Typed {
  return call('ABS', [node], node);
}

function first(node: CallNode): Typed {
  return node.args[0] as Typed;
}

// Of the types of the trees made here the lowering looks at the axes only.

function operation(op: '+' | '-' | '*' | '/', left: Typed, right: Typed): Typed {
  const type = onAxes(left.type, unionAxes([left.type.axes, right.type.axes]));
  return { kind: 'arithmetic', op, type, from: left.from, to: right.to, left, right };
}

function call(name: string, args: readonly Typed[], { type, from, to }: Typed): CallNode {
  const fn = findFunction(name);
  if (!fn) throw new Error(`the language has no function ${name}`);
  return { kind: 'call', fn, type, from, to, args, options: [] };
}

function one({ from, to }: Typed): NumberNode {
  return { kind: 'number', type: plainType, from, to, si: 1, written: 1 };
}

function zero(node: Typed): NumberNode {
  return { ...one(node), si: 0, written: 0 };
}
