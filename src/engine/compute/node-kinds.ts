import type { CallNode, Typed } from '../../language/index.ts';
import type { NodeKind } from './context.ts';
import { arithmetic, negate, percent, powerNode as power } from './nodes/arithmetic.ts';
import { branch } from './nodes/branch.ts';
import { eachKind } from './nodes/call-each.ts';
import { gatherKind } from './nodes/call-gather.ts';
import { scanKind } from './nodes/call-scan.ts';
import { textKind } from './nodes/call-text.ts';
import { compare } from './nodes/comparison.ts';
import { broken, number, text, truth } from './nodes/constants.ts';
import { join } from './nodes/join.ts';
import { cell, column, known } from './nodes/references.ts';
import { above, blank, row, series } from './nodes/rows.ts';

/** How a call is computed, by the evaluator of its function. */
function callKindOf({ fn }: CallNode): NodeKind<CallNode> {
  const { evaluate } = fn;
  switch (evaluate.kind) {
    case 'each':
      return eachKind(evaluate);
    case 'text':
      return textKind(evaluate);
    case 'gather':
      return gatherKind(evaluate);
    case 'scan':
      return scanKind(evaluate);
    case 'special':
      throw new Error(`${fn.name} is no ordinary call`);
  }
}

const call: NodeKind<CallNode> = {
  scalar: (node, compiler, depth) => callKindOf(node).scalar(node, compiler, depth),
  stream: (node, compiler, depth) => callKindOf(node).stream(node, compiler, depth),
  cause: (node, finder) => callKindOf(node).cause(node, finder),
};

/** Every kind of node, one entry each. */
const nodeKinds: { readonly [K in Typed['kind']]: NodeKind<Extract<Typed, { kind: K }>> } = {
  number,
  text,
  truth,
  cell,
  column,
  negate,
  percent,
  arithmetic,
  power,
  compare,
  join,
  branch,
  above,
  row,
  blank,
  known,
  series,
  call,
  broken,
};

/** How a node is computed and explained. */
export function kindOf(node: Typed): NodeKind<Typed> {
  return nodeKinds[node.kind] as NodeKind<Typed>;
}
