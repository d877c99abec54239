import type { CallNode, ScanEvaluator, Typed } from '../../language/index.ts';
import { partsOf } from '../../language/index.ts';
import type { Formula, Stepper } from '../store/cells.ts';
import {
  blockStream,
  dependsOnRow,
  type ElementCompiler,
  type SpaceCompiler,
  type World,
} from './context.ts';
import { kindOf } from './node-kinds.ts';
import { scanStep } from './nodes/call-scan.ts';
import { axisOf } from './nodes/references.ts';
import { rowSpace, type Space, sizeOf, spans, spread, subspace } from './space.ts';
import {
  arrayStream,
  constantStream,
  type Program,
  prepare,
  runInto,
  type Stream,
  type Thunk,
} from './stream.ts';

/** Compiles the parts of one formula to closures. No code is generated. */
export function elementCompiler(world: World, formula: Formula, stepping = false): ElementCompiler {
  const compiler: ElementCompiler = {
    world,
    formula,
    stepping,
    scalar: (node, depth) => {
      const thunk = kindOf(node).scalar(node, compiler, depth);
      return isSteady(node, formula) ? onceAnEvaluation(thunk, formula) : thunk;
    },
    program: (node, space, depth) => programOf(node, space, depth, compiler),
    whole: (node, space, depth) => wholeOf(node, space, depth, compiler),
  };
  return compiler;
}

/** The formula as one number; each call is an evaluation. */
export function compileThunk(world: World, formula: Formula): Thunk {
  const thunk = elementCompiler(world, formula).scalar(formula.typed, 0);
  if (!hasGather(formula.typed)) return thunk;
  return () => {
    formula.epoch += 1;
    return thunk();
  };
}

function hasGather(node: Typed): boolean {
  return isGather(node) || partsOf(node).some(hasGather);
}

function isGather(node: Typed): boolean {
  return node.kind === 'call' && node.fn.evaluate.kind === 'gather';
}

/** The formula over the rows of its table. */
export function compileSweep(world: World, formula: Formula): Program {
  if (!formula.table) throw new Error('only a column is computed over rows');
  return elementCompiler(world, formula).program(formula.typed, rowSpace(formula.table), 0);
}

/** The formula row by row, its running functions stepping before it is computed. */
export function compileStepper(world: World, formula: Formula): Stepper {
  const compiler = elementCompiler(world, formula, true);
  const steps: (() => void)[] = [];
  const visit = (node: Typed): void => {
    // What stands inside a running function steps first.
    for (const part of partsOf(node)) visit(part);
    if (isScan(node)) steps.push(scanStep(node, node.fn.evaluate, compiler));
  };
  visit(formula.typed);
  return { steps, value: compiler.scalar(formula.typed, 0) };
}

function isScan(node: Typed): node is CallNode & { readonly fn: { readonly evaluate: ScanEvaluator } } {
  return node.kind === 'call' && node.fn.evaluate.kind === 'scan';
}

/** Whether a part is worth keeping for an evaluation: an aggregate that is the same on every row. */
function isSteady(node: Typed, formula: Formula): boolean {
  return isGather(node) && formula.table !== undefined && node.type.axes.length === 0;
}

function onceAnEvaluation(thunk: Thunk, formula: Formula): Thunk {
  let epoch = -1;
  let value = Number.NaN;
  return () => {
    if (epoch !== formula.epoch) {
      value = thunk();
      epoch = formula.epoch;
    }
    return value;
  };
}

function programOf(node: Typed, space: Space, depth: number, element: ElementCompiler): Program {
  const steps: (() => void)[] = [];
  const repeats = space.axes[0]?.fresh === true && dependsOnRow(node);
  const compiler: SpaceCompiler = {
    element,
    space,
    before: (step) => steps.push(step),
    stream: (part, at) => {
      const { axes } = part.type;
      if (!spans(axes, space)) return steadyStream(part, compiler, at);
      const own = subspace(axes, space);
      if (own !== space) return spreadStream(part, own, compiler, at);
      // Inside an aggregate computed row by row, what no row changes is computed once for all rows.
      if (repeats && !dependsOnRow(part) && part.kind !== 'column')
        return arrayStream(element.whole(part, space, at));
      return kindOf(part).stream(part, compiler, at);
    },
  };
  return { steps, stream: compiler.stream(node, depth) };
}

/** One number for the whole space, computed before the program runs. */
function steadyStream(node: Typed, { element, before }: SpaceCompiler, depth: number): Stream {
  const thunk = element.scalar(node, depth);
  if (node.kind === 'number' || node.kind === 'text' || node.kind === 'truth') return constantStream(thunk());
  const stream = constantStream(Number.NaN);
  before(() => {
    stream.data[0] = thunk();
  });
  return stream;
}

/** A value that changes along a part of the space only, repeated along the rest. */
function spreadStream(node: Typed, own: Space, compiler: SpaceCompiler, depth: number): Stream {
  const { element, before, space } = compiler;
  const values = element.whole(node, own, depth);
  let all: Float64Array = new Float64Array(0);
  before(() => {
    all = values();
  });
  return blockStream(compiler, depth, (out, from, count) => spread(all, own, space, from, count, out));
}

function wholeOf(node: Typed, space: Space, depth: number, compiler: ElementCompiler): () => Float64Array {
  const { formula, world } = compiler;
  if ((node.kind === 'column' || node.kind === 'cell') && space.tables.length === 1) {
    const column = world.column(node.id, axisOf(node).table);
    return () => column.values;
  }
  const program = programOf(node, space, depth, compiler);
  const perRow = space.axes[0]?.fresh === true && dependsOnRow(node);
  let values = new Float64Array(0);
  let epoch = -1;
  return () => {
    if (epoch === formula.epoch && !perRow) return values;
    epoch = formula.epoch;
    const size = sizeOf(space);
    if (values.length !== size) values = new Float64Array(size);
    prepare(program);
    runInto(program.stream, 0, size, values, 0);
    return values;
  };
}
