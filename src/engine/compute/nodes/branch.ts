import { problem } from '../../../diagnostics/index.ts';
import type { BranchNode } from '../../../language/index.ts';
import { ownFault } from '../blame.ts';
import { type NodeKind, registerStrand } from '../context.ts';
import { BLOCK, type Strand, type Thunk } from '../strand.ts';

/**
 * The first arm whose condition holds, else `otherwise`. What is not selected is not looked at: not computed where
 * there is one element, computed and left aside where there is a block of them with both outcomes.
 */
export const branch: NodeKind<BranchNode> = {
  scalar: (node, compiler, depth) => {
    const arms = node.arms.map(({ when, value }) => ({
      when: compiler.scalar(when, depth),
      value: compiler.scalar(value, depth),
    }));
    const otherwise = node.otherwise ? compiler.scalar(node.otherwise, depth) : noValue;
    const [only] = arms;
    if (arms.length === 1 && only) return choice(only.when, only.value, otherwise);
    return () => {
      for (const { when, value } of arms) {
        const holds = when();
        if (Number.isNaN(holds)) return holds;
        if (holds === 1) return value();
      }
      return otherwise();
    };
  },
  strand: (node, compiler, depth) => {
    // The result stands below whatever condition and arm are in work.
    const arms = node.arms.map(({ when, value }) => {
      const holds = compiler.strand(when, depth + 1);
      return { when: holds, value: compiler.strand(value, depth + 1 + holds.holds) };
    });
    const otherwise = node.otherwise && compiler.strand(node.otherwise, depth + 1);
    const open = new Uint8Array(BLOCK);
    return registerStrand(compiler, depth, (out, from, count) => {
      open.fill(1, 0, count);
      let left = count;
      for (const { when, value } of arms) {
        if (left === 0) return;
        when.run(from, count);
        if (settle(when, open, out, count)) value.run(from, count);
        left = take(value, open, out, count);
      }
      if (left === 0) return;
      if (!otherwise) fillOpen(Number.NaN, open, out, count);
      else {
        otherwise.run(from, count);
        copyOpen(otherwise, open, out, count);
      }
    });
  },
  blame: (node, blamer) => {
    for (const { when, value } of node.arms) {
      const holds = blamer.value(when);
      if (Number.isNaN(holds)) return blamer.blame(when);
      if (holds === 1) return blamer.blame(value);
    }
    if (node.otherwise) return blamer.blame(node.otherwise);
    return ownFault(problem('no-branch', node, { function: node.fn.name, written: blamer.written(node) }));
  },
};

const noValue: Thunk = () => Number.NaN;

function choice(when: Thunk, value: Thunk, otherwise: Thunk): Thunk {
  return () => {
    const holds = when();
    return holds === 1 ? value() : holds === 0 ? otherwise() : Number.NaN;
  };
}

/** States of an element while the arms are gone through. */
const DONE = 0;
const OPEN = 1;
const CHOSEN = 2;

/** Marks the open elements whose condition holds, ends those whose condition has no value; whether any holds. */
function settle(when: Strand, open: Uint8Array, out: Float64Array, count: number): boolean {
  const { data, offset, stride } = when;
  let any = false;
  for (let i = 0; i < count; i += 1) {
    if (open[i] !== OPEN) continue;
    const holds = data[offset + i * stride] as number;
    if (holds === 1) {
      open[i] = CHOSEN;
      any = true;
    } else if (holds !== 0) {
      open[i] = DONE;
      out[i] = Number.NaN;
    }
  }
  return any;
}

/** Takes the chosen elements from an arm; how many are still open. */
function take(value: Strand, open: Uint8Array, out: Float64Array, count: number): number {
  const { data, offset, stride } = value;
  let left = 0;
  for (let i = 0; i < count; i += 1) {
    if (open[i] === OPEN) left += 1;
    else if (open[i] === CHOSEN) {
      out[i] = data[offset + i * stride] as number;
      open[i] = DONE;
    }
  }
  return left;
}

function copyOpen(from: Strand, open: Uint8Array, out: Float64Array, count: number): void {
  const { data, offset, stride } = from;
  for (let i = 0; i < count; i += 1) if (open[i] === OPEN) out[i] = data[offset + i * stride] as number;
}

function fillOpen(value: number, open: Uint8Array, out: Float64Array, count: number): void {
  for (let i = 0; i < count; i += 1) if (open[i] === OPEN) out[i] = value;
}
