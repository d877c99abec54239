import { problem } from '../../../diagnostics/index.ts';
import type { BranchNode } from '../../../language/index.ts';
import { type CauseFinder, ownFault } from '../cause.ts';
import { blockStream, type NodeKind } from '../context.ts';
import { chooseOne, takeFirst } from '../select.ts';
import { constantStream, type Thunk } from '../stream.ts';
import { namedValues } from './named-values.ts';

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
  stream: (node, compiler, depth) => {
    // The result stands below whatever condition and arm are in work.
    const arms = node.arms.map(({ when, value }) => {
      const holds = compiler.stream(when, depth + 1);
      return { when: holds, value: compiler.stream(value, depth + 1 + holds.holds) };
    });
    const [only] = arms;
    if (arms.length === 1 && only) {
      const free = depth + 1 + only.when.holds + only.value.holds;
      const otherwise = node.otherwise ? compiler.stream(node.otherwise, free) : constantStream(Number.NaN);
      return blockStream(compiler, depth, chooseOne(only.when, only.value, otherwise));
    }
    const otherwise = node.otherwise
      ? compiler.stream(node.otherwise, depth + 1)
      : constantStream(Number.NaN);
    return blockStream(compiler, depth, takeFirst(arms, otherwise));
  },
  cause: (node, finder) => {
    for (const { when, value } of node.arms) {
      const holds = finder.value(when);
      if (Number.isNaN(holds)) return finder.cause(when);
      if (holds === 1) return finder.cause(value);
    }
    if (node.otherwise) return finder.cause(node.otherwise);
    if (node.chosenBy) {
      const option = finder.wordsOf(finder.value(node.chosenBy), node.chosenBy);
      const facts = { option, by: finder.written(node.chosenBy) };
      return ownFault(problem('method-option-missing', { from: 0, to: 0 }, facts));
    }
    return ownFault(problem('no-branch', node, noBranchFacts(node, finder)));
  },
};

/** What a person is told who did not write the formula: what was asked, and what the names in it stand for. */
function noBranchFacts(node: BranchNode, finder: CauseFinder) {
  const { name } = node.fn;
  const [subject] = node.args;
  const asked =
    name === 'IFS' || name === 'IF' ? node.arms.map(({ when }) => when) : subject ? [subject] : [];
  return {
    function: name,
    written: finder.written(node),
    asked: asked.map(finder.written),
    values: namedValues(asked, finder),
  };
}

const noValue: Thunk = () => Number.NaN;

function choice(when: Thunk, value: Thunk, otherwise: Thunk): Thunk {
  return () => {
    const holds = when();
    return holds === 1 ? value() : holds === 0 ? otherwise() : Number.NaN;
  };
}
