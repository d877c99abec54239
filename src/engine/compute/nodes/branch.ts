import { problem } from '../../../diagnostics/index.ts';
import type { BranchNode } from '../../../language/index.ts';
import { ownFault } from '../blame.ts';
import { blockStrand, type NodeKind } from '../context.ts';
import { chooseOne, takeFirst } from '../select.ts';
import { constantStrand, type Thunk } from '../strand.ts';

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
    const [only] = arms;
    if (arms.length === 1 && only) {
      const free = depth + 1 + only.when.holds + only.value.holds;
      const otherwise = node.otherwise ? compiler.strand(node.otherwise, free) : constantStrand(Number.NaN);
      return blockStrand(compiler, depth, chooseOne(only.when, only.value, otherwise));
    }
    const otherwise = node.otherwise
      ? compiler.strand(node.otherwise, depth + 1)
      : constantStrand(Number.NaN);
    return blockStrand(compiler, depth, takeFirst(arms, otherwise));
  },
  blame: (node, blamer) => {
    for (const { when, value } of node.arms) {
      const holds = blamer.value(when);
      if (Number.isNaN(holds)) return blamer.blame(when);
      if (holds === 1) return blamer.blame(value);
    }
    if (node.otherwise) return blamer.blame(node.otherwise);
    if (node.chosenBy) {
      const option = blamer.textOf(blamer.value(node.chosenBy));
      const facts = { option, by: blamer.written(node.chosenBy) };
      return ownFault(problem('method-option-missing', { from: 0, to: 0 }, facts));
    }
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
