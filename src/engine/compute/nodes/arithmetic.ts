import { problem } from '../../../diagnostics/index.ts';
import type { ArithmeticNode, NegateNode, PercentNode, PowerNode } from '../../../language/index.ts';
import { arithmeticKernels } from '../arithmetic-kernels.ts';
import { arithmeticThunk } from '../arithmetic-thunks.ts';
import { blameFirst, ownFault } from '../blame.ts';
import { blockStrand, type NodeKind, strandsOf } from '../context.ts';
import { liftKernel } from '../lift-kernels.ts';
import { finite, power, powerOf } from '../operations.ts';
import type { Strand } from '../strand.ts';

/** Sums, differences, products and quotients. */
export const arithmetic: NodeKind<ArithmeticNode> = {
  scalar: (node, compiler, depth) => arithmeticThunk(node.op, node.left, node.right, compiler, depth),
  strand: (node, compiler, depth) => {
    const [left, right] = strandsOf([node.left, node.right], compiler, depth) as [Strand, Strand];
    const kernel = arithmeticKernels[node.op];
    return blockStrand(compiler, depth, (out, from, count) => {
      left.run(from, count);
      right.run(from, count);
      kernel(left, right, out, count);
    });
  },
  blame: (node, blamer) => {
    const inner = blameFirst([node.left, node.right], blamer);
    if (inner) return inner;
    if (node.op === '/' && blamer.value(node.right) === 0) {
      const facts = { divisor: blamer.written(node.right), written: blamer.written(node) };
      return ownFault(problem('division-by-zero', node.right, facts));
    }
    return ownFault(problem('too-large', node, { written: blamer.written(node) }));
  },
};

/** `-x`. */
export const negate: NodeKind<NegateNode> = {
  scalar: (node, compiler, depth) => {
    const operand = compiler.scalar(node.operand, depth);
    return () => finite(-operand());
  },
  strand: (node, compiler, depth) => lifted([node.operand], negative, compiler, depth),
  blame: (node, blamer) => blamer.blame(node.operand),
};

const negative = (x: number): number => -x;

/** `x%`. */
export const percent: NodeKind<PercentNode> = {
  scalar: (node, compiler, depth) => {
    const operand = compiler.scalar(node.operand, depth);
    return () => finite(operand() / 100);
  },
  strand: (node, compiler, depth) => lifted([node.operand], hundredth, compiler, depth),
  blame: (node, blamer) => blamer.blame(node.operand),
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
  strand: (node, compiler, depth) => {
    const constant = constantPower(node);
    return constant
      ? lifted([node.base], constant, compiler, depth)
      : lifted([node.base, node.exponent], power, compiler, depth);
  },
  blame: (node, blamer) => {
    const inner = blameFirst([node.base, node.exponent], blamer);
    if (inner) return inner;
    const base = blamer.value(node.base);
    const written = blamer.written(node);
    if (base === 0 || (base < 0 && !Number.isInteger(blamer.value(node.exponent)))) {
      const facts = {
        written,
        base: blamer.written(node.base),
        baseIs: blamer.shown(base, node.base),
        exponent: blamer.written(node.exponent),
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
export function lifted(
  parts: Parameters<typeof strandsOf>[0],
  of: (...args: number[]) => number,
  compiler: Parameters<typeof strandsOf>[1],
  depth: number,
): Strand {
  const strands = strandsOf(parts, compiler, depth);
  const kernel = liftKernel(of, strands.length);
  return blockStrand(compiler, depth, (out, from, count) => {
    for (const strand of strands) strand.run(from, count);
    kernel(strands, out, count);
  });
}
