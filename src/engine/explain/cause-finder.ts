import type { CallNode, Typed } from '../../language/index.ts';
import type { CauseFinder } from '../compute/cause.ts';
import { type Collect, compileCollect } from '../compute/collect.ts';
import { elementCompiler } from '../compute/compiler.ts';
import type { World } from '../compute/context.ts';
import { planGather } from '../compute/gather.ts';
import { kindOf } from '../compute/node-kinds.ts';
import { registerFile } from '../compute/registers.ts';
import type { Thunk } from '../compute/stream.ts';
import type { Formula } from '../store/cells.ts';
import { textInWords, type Wording, writeOperand } from './write-operand.ts';

/** What a finder asks of the whole sheet. */
export type Around = Pick<CauseFinder, 'root' | 'isBlankRow' | 'blankWords'>;

/**
 * Looks at the parts of one formula; `stepping` if it is computed row by row, so that its running functions are read
 * as they were left. It has scratch registers of its own, for it may be called while another
 * formula is being computed. What it finds out once for all rows holds as long as `revision` stays.
 */
export function createCauseFinder(
  formula: Formula,
  stepping: boolean,
  world: World,
  around: Around,
  wording: Wording,
  revision: () => number,
): CauseFinder {
  const compiler = elementCompiler({ ...world, register: registerFile() }, formula, stepping);
  const thunks = new WeakMap<Typed, Thunk>();
  const collects = new WeakMap<Typed, Collect>();
  const collectOf = (node: CallNode): Collect => {
    const { evaluate } = node.fn;
    if (evaluate.kind !== 'gather') throw new Error(`${node.fn.name} gathers nothing`);
    return compileCollect(planGather(node, evaluate, world), compiler, 0);
  };
  let kept = { revision: -1, found: new Map<Typed, unknown>() };
  const { textOf, normalOf } = world.texts;
  const written = (node: Typed): string => formula.text.slice(node.from, node.to);
  const finder: CauseFinder = {
    ...around,
    formula,
    value: (node) => {
      const known = thunks.get(node) ?? compiler.scalar(node, 0);
      thunks.set(node, known);
      return known();
    },
    gathered: (node) => {
      const known = collects.get(node) ?? collectOf(node);
      collects.set(node, known);
      return known();
    },
    once: <T>(node: Typed, find: () => T): T => {
      if (kept.revision !== revision()) kept = { revision: revision(), found: new Map() };
      if (!kept.found.has(node)) kept.found.set(node, find());
      return kept.found.get(node) as T;
    },
    cause: (node) => kindOf(node).cause(node, finder),
    written,
    called: (node) => {
      const isName = node.kind === 'cell' || node.kind === 'column';
      return (isName && wording.labelOf?.(node.id)) || written(node);
    },
    shown: (si, node) => writeOperand(si, node, wording, textOf),
    textOf,
    wordsOf: (code, node) => textInWords(textOf(code), node, wording),
    normalOf,
    scalar: world.scalar,
    column: world.column,
    table: world.table,
  };
  return finder;
}
