import {
  type CallNode,
  type CellNode,
  type ColumnNode,
  findFunction,
  type NumberNode,
  plainType,
  type Typed,
} from '../language/index.ts';
import type { EngineValues, RecheckCell, RecheckFormula, RecheckProgram } from './program.ts';

/** No name of a book has a space. */
const SIZE_OF = 'size of ';

/** The id under which the size of a cell stands beside it. */
export function sizeId(id: string): string {
  return SIZE_OF + id;
}

/** The engine's values, a cell's own for its size, which the engine does not know. */
export function valuesOfSizes(values: EngineValues): EngineValues {
  return (id, row) => values(id.startsWith(SIZE_OF) ? id.slice(SIZE_OF.length) : id, row);
}

/**
 * The program with, for some cells and for all they come from, a cell of the sum of the magnitudes they are a balance
 * of: every difference a sum, every operand its size.
 */
export function withSizes(program: RecheckProgram, ids: Iterable<string>): RecheckProgram {
  const formulas = new Map<string, RecheckFormula>();
  for (const cell of program.cells) if (cell.kind === 'formula') formulas.set(cell.id, cell);
  const sizes = new Map<string, RecheckFormula>();
  const waiting = [...ids];
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
    const cell = formulas.get(id);
    if (!cell || sizes.has(id) || !isNumeric(cell.tree)) continue;
    const tree = sizeOf(cell.tree, (reference) => {
      const source = formulas.get(reference.id);
      if (!source || !isNumeric(source.tree)) return absolute(reference);
      waiting.push(reference.id);
      return { ...reference, id: sizeId(reference.id) };
    });
    sizes.set(id, {
      kind: 'formula',
      id: sizeId(id),
      tree,
      ...(cell.table !== undefined && { table: cell.table }),
    });
  }
  const cells: readonly RecheckCell[] = [...program.cells, ...sizes.values()];
  return { ...program, cells };
}

function isNumeric({ type }: Typed): boolean {
  return type.kind === 'number' || type.kind === 'point';
}

type Reference = CellNode | ColumnNode;
type Sized = (reference: Reference) => Typed;

/** The tree of the sum of magnitudes; types are of no interest to the lowering and are carried along. */
function sizeOf(node: Typed, sized: Sized): Typed {
  const size = (part: Typed): Typed => sizeOf(part, sized);
  switch (node.kind) {
    case 'cell':
    case 'column':
      return sized(node);
    case 'negate':
      return size(node.operand);
    case 'percent':
      return { ...node, operand: size(node.operand) };
    case 'arithmetic':
      if (node.op === '/') return { ...node, left: size(node.left), right: absolute(node.right) };
      return { ...node, op: node.op === '-' ? '+' : node.op, left: size(node.left), right: size(node.right) };
    case 'power':
      return node.rational && node.rational.n > 0 ? { ...node, base: size(node.base) } : absolute(node);
    case 'branch':
      return {
        ...node,
        arms: node.arms.map((arm) => ({ ...arm, value: size(arm.value) })),
        ...(node.otherwise && { otherwise: size(node.otherwise) }),
      };
    case 'above': {
      const column = sized(node.column);
      return column.kind === 'cell'
        ? { ...node, column, first: size(node.first) }
        : absolute({ ...node, first: size(node.first) });
    }
    case 'known': {
      const column = sized(node.column);
      return column.kind === 'column' ? { ...node, column } : node;
    }
    case 'call':
      return (sizesOfCalls[node.fn.name] ?? absolute)(node, size);
    default:
      return absolute(node);
  }
}

type SizeOfCall = (node: CallNode, size: (part: Typed) => Typed) => Typed;

/** The call on the sizes of all its arguments. */
const ofSizes: SizeOfCall = (node, size) => ({ ...node, args: node.args.map(size) });
/** The call on the size of its last argument, which holds the values; the others choose among them. */
const ofLast: SizeOfCall = (node, size) => ({
  ...node,
  args: node.args.map((arg, at) => (at === node.args.length - 1 ? size(arg) : arg)),
});
const ofFirst: SizeOfCall = (node, size) => ({
  ...node,
  args: node.args.map((arg, at) => (at === 0 ? size(arg) : arg)),
});
const argument: SizeOfCall = (node, size) => size(node.args[0] as Typed);
const as =
  (name: string): SizeOfCall =>
  (node, size) =>
    call(name, node.args.map(size), node);
/** The root of the sum of squares, which a deviation is a balance of. */
const rootOfSquares: SizeOfCall = (node, size) =>
  call('SQRT', [call('SUMSQ', node.args.map(size), node)], node);
/** The greatest size of one argument. */
const greatestOf =
  (at: number): SizeOfCall =>
  (node, size) =>
    call('MAX', [size(node.args[at] as Typed)], node);
/** The value itself and something beside it, for a function that may pass zero: its argument there, or one. */
const beside =
  (other: SizeOfCall): SizeOfCall =>
  (node, size) =>
    sum(absolute(node), other(node, size), node);
/** A wave may pass zero anywhere: it is a balance of one and of its angle. */
const wave: SizeOfCall = (node, size) =>
  sum(one(node), sum(absolute(node), argument(node, size), node), node);

/** The functions that balance or hand on values; of any other the size is that of its value. */
const sizesOfCalls: Readonly<Record<string, SizeOfCall>> = {
  ABS: argument,
  SQRT: ofSizes,
  SUM: ofSizes,
  AVERAGE: ofSizes,
  SUMPRODUCT: ofSizes,
  SUMSQ: ofSizes,
  MIN: as('MAX'),
  MAX: ofSizes,
  LESSER: as('GREATER'),
  GREATER: ofSizes,
  SUMIF: ofLast,
  AVERAGEIF: ofLast,
  MINIF: (node, size) => call('MAXIF', [node.args[0] as Typed, size(node.args[1] as Typed)], node),
  MAXIF: ofLast,
  VAR: as('SUMSQ'),
  VARP: as('SUMSQ'),
  STDEV: rootOfSquares,
  STDEVP: rootOfSquares,
  INDEX: ofFirst,
  LOOKUP: ofLast,
  // A sum of pieces, each no longer than the greatest value.
  INTERPOLATE: greatestOf(2),
  RUNNINGSUM: ofSizes,
  RUNNINGMAX: ofSizes,
  RUNNINGMIN: as('RUNNINGMAX'),
  MOD: argument,
  MEDIAN: as('MAX'),
  PERCENTILE: greatestOf(0),
  LARGE: greatestOf(0),
  SMALL: greatestOf(0),
  INTERPOLATE2: greatestOf(4),
  SIN: wave,
  COS: wave,
  TAN: wave,
  ASIN: beside(argument),
  ATAN: beside(argument),
  SINH: beside(argument),
  TANH: beside(argument),
  ASINH: beside(argument),
  ATANH: beside(argument),
  ERF: beside(argument),
  LN: beside(one),
  LOG10: beside(one),
  LOG: beside(one),
  ACOS: beside(one),
  ACOSH: beside(one),
  ATAN2: beside(one),
  NORMSINV: beside(one),
  NORMINV: (node, size) => sum(size(node.args[1] as Typed), size(node.args[2] as Typed), node),
};

function sum(left: Typed, right: Typed, { type, from, to }: Typed): Typed {
  return { kind: 'arithmetic', op: '+', type, from, to, left, right };
}

function call(name: string, args: readonly Typed[], { type, from, to }: Typed): CallNode {
  const fn = findFunction(name);
  if (!fn) throw new Error(`the language has no function ${name}`);
  return { kind: 'call', fn, type, from, to, args, options: [] };
}

function absolute(node: Typed): Typed {
  return call('ABS', [node], node);
}

function one({ from, to }: Typed): NumberNode {
  return { kind: 'number', type: plainType, from, to, si: 1, written: 1 };
}
