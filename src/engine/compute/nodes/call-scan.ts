import { problem } from '../../../diagnostics/index.ts';
import type { CallNode, ScanEvaluator, Typed } from '../../../language/index.ts';
import type { ScanState, TableCell } from '../../store/cells.ts';
import { ownFault } from '../cause.ts';
import type { ElementCompiler, NodeKind } from '../context.ts';
import { finite } from '../operations.ts';
import { rowSpace } from '../space.ts';
import { arrayStream } from '../stream.ts';

/** A running function down the rows of the formula's own table. From the first row without a value on it has none. */
export function scanKind(evaluate: ScanEvaluator): NodeKind<CallNode> {
  return {
    scalar: (node, compiler, depth) => {
      const { table, state } = stateOf(node, compiler);
      if (compiler.stepping) return () => state.out[table.row] as number;
      const ensure = scanOnce(node, evaluate, compiler, depth);
      return () => {
        ensure();
        return state.out[table.row] as number;
      };
    },
    stream: (node, compiler, depth) => {
      const { state } = stateOf(node, compiler.element);
      const ensure = scanOnce(node, evaluate, compiler.element, depth);
      return arrayStream(() => {
        ensure();
        return state.out;
      });
    },
    cause: (node, finder) => {
      const arg = argumentOf(node);
      const table = finder.formula.table as TableCell;
      const here = table.row;
      table.row = firstGap(finder.formula.scans?.get(node)?.out);
      const found = Number.isNaN(finder.value(arg)) ? finder.cause(arg) : undefined;
      table.row = here;
      return found ?? ownFault(problem('too-large', node, { written: finder.written(node) }));
    },
  };
}

/** The first row without a value, from which on no row has one. */
function firstGap(out: Float64Array | undefined): number {
  let low = 0;
  let high = (out?.length ?? 0) - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (Number.isNaN(out?.[middle])) high = middle;
    else low = middle + 1;
  }
  return low;
}

function argumentOf(node: CallNode): Typed {
  const [arg] = node.args;
  if (!arg) throw new Error(`${node.fn.name} has no argument`);
  return arg;
}

function stateOf(node: CallNode, { formula }: ElementCompiler): { table: TableCell; state: ScanState } {
  const { table } = formula;
  if (!table) throw new Error(`${node.fn.name} stands outside a table`);
  formula.scans ??= new Map();
  const { scans } = formula;
  const state = scans.get(node) ?? { out: new Float64Array(0), epoch: -1 };
  scans.set(node, state);
  return { table, state };
}

/** Runs the whole scan, once an evaluation. */
function scanOnce(
  node: CallNode,
  evaluate: ScanEvaluator,
  compiler: ElementCompiler,
  depth: number,
): () => void {
  const { table, state } = stateOf(node, compiler);
  const { formula } = compiler;
  const values = compiler.whole(argumentOf(node), rowSpace(table), depth);
  return () => {
    if (state.epoch === formula.epoch) return;
    state.epoch = formula.epoch;
    const argument = values();
    if (state.out.length !== argument.length) state.out = new Float64Array(argument.length);
    const { out } = state;
    let known = 0;
    while (known < argument.length && !Number.isNaN(argument[known])) known += 1;
    if (known === argument.length) evaluate.of(argument, out);
    else {
      evaluate.of(argument.subarray(0, known), out.subarray(0, known));
      out.fill(Number.NaN, known);
    }
    spoilInfinite(out);
  };
}

/** From the first infinite value on there is none. */
function spoilInfinite(out: Float64Array): void {
  const last = out[out.length - 1];
  if (last !== undefined && Number.isFinite(last)) return;
  const at = out.findIndex((value) => !Number.isFinite(value));
  if (at >= 0) out.fill(Number.NaN, at);
}

/** One step of a scan at the row where the cursor stands, for formulas computed row by row. */
export function scanStep(node: CallNode, evaluate: ScanEvaluator, compiler: ElementCompiler): () => void {
  const { table, state } = stateOf(node, compiler);
  const argument = compiler.scalar(argumentOf(node), 0);
  return () => {
    if (state.out.length !== table.length) state.out = new Float64Array(table.length);
    const { row } = table;
    const before = row === 0 ? undefined : (state.out[row - 1] as number);
    const value = argument();
    const known = !Number.isNaN(value) && (before === undefined || !Number.isNaN(before));
    state.out[row] = known ? finite(evaluate.step(before, value)) : Number.NaN;
  };
}
