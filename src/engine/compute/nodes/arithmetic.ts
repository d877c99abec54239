import { problem } from '../../../diagnostics/index.ts';
import type { ArithmeticNode, NegateNode, PercentNode, PowerNode } from '../../../language/index.ts';
import { arithmeticKernels } from '../arithmetic-kernels.ts';
import { arithmeticThunk } from '../arithmetic-thunks.ts';
import { firstCause, ownFault } from '../cause.ts';
import { blockStream, type NodeKind, streamsOf } from '../context.ts';
import { liftKernel } from '../lift-kernels.ts';
import { finite, power, powerOf } from '../operations.ts';
import type { Stream } from '../stream.ts';

/** Sums, differences, products and quotients. */
export const arithmetic: NodeKind<ArithmeticNode> = {
  scalar: (node, compiler, depth) => arithmeticThunk(node.op, node.left, node.right, compiler, depth),
  stream: (node, compiler, depth) => {
    const [left, right] = streamsOf([node.left, node.right], compiler, depth) as [Stream, Stream];
    const kernel = arithmeticKernels[node.op];
    return blockStream(compiler, depth, (out, from, count) => {
      left.run(from, count);
      right.run(from, count);
      kernel(left, right, out, count);
    });
  },
  cause: (node, finder) => {
    const inner = firstCause([node.left, node.right], finder);
    if (inner) return inner;
    if (node.op === '/' && finder.value(node.right) === 0) {
      const facts = { divisor: finder.written(node.right), written: finder.written(node) };
      return ownFault(problem('division-by-zero', node.right, facts));
    }
    return ownFault(problem('too-large', node, { written: finder.written(node) }));
  },
};

/** `-x`. */
export const negate: NodeKind<NegateNode> = {
  scalar: (node, compiler, depth) => {
    const operand = compiler.scalar(node.operand, depth);
    return () => finite(-operand());
  },
  stream: (node, compiler, depth) => liftFunction([node.operand], negative, compiler, depth),
  cause: (node, finder) => finder.cause(node.operand),
};

const negative = (x: number): number => -x;

/** `x%`. */
export const percent: NodeKind<PercentNode> = {
  scalar: (node, compiler, depth) => {
    const operand = compiler.scalar(node.operand, depth);
    return () => finite(operand() / 100);
  },
  stream: (node, compiler, depth) => liftFunction([node.operand], hundredth, compiler, depth),
  cause: (node, finder) => finder.cause(node.operand),
};

const hundredth = (x: number): number => x / 100;

/** `a^b`. */
export const powerNode: NodeKind<PowerNode> = {
  scalar: (node, compiler, depth) => {
    const base = compiler.scalar(node.base, depth);
    const constant = constantPower(node);
    if (constant) return () => constant(base());
    const exponent = compiler.scalar(node.exponent, depth);
    return () => power(base(), exponent());
  },
  stream: (node, compiler, depth) => {
    const constant = constantPower(node);
    return constant
      ? liftFunction([node.base], constant, compiler, depth)
      : liftFunction([node.base, node.exponent], power, compiler, depth);
  },
  cause: (node, finder) => {
    const inner = firstCause([node.base, node.exponent], finder);
    if (inner) return inner;
    const base = finder.value(node.base);
    const written = finder.written(node);
    if (base === 0 || (base < 0 && !Number.isInteger(finder.value(node.exponent)))) {
      const facts = {
        written,
        base: finder.written(node.base),
        baseIs: finder.shown(base, node.base),
        exponent: finder.written(node.exponent),
      };
      return ownFault(problem('power-domain', node, facts));
    }
    return ownFault(problem('too-large', node, { written }));
  },
};

/** The power as a function of its base, where the exponent is a constant. */
function constantPower({ rational, exponent }: PowerNode): ((base: number) => number) | undefined {
  if (rational) return powerOf(rational);
  return exponent.kind === 'number' && Number.isInteger(exponent.si)
    ? powerOf({ n: exponent.si, d: 1 })
    : undefined;
}

/** A function of single numbers over the parts, in blocks. */
export function liftFunction(
  parts: Parameters<typeof streamsOf>[0],
  of: (...args: number[]) => number,
  compiler: Parameters<typeof streamsOf>[1],
  depth: number,
): Stream {
  const streams = streamsOf(parts, compiler, depth);
  const kernel = liftKernel(of, streams.length);
  return blockStream(compiler, depth, (out, from, count) => {
    for (const stream of streams) stream.run(from, count);
    kernel(streams, out, count);
  });
}
