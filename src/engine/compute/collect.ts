import { failsAsWhole } from '../store/cells.ts';
import { countGaps } from '../store/column.ts';
import type { ElementCompiler } from './context.ts';
import type { GatheredPart, GatherPlan } from './gather.ts';
import { gatheredSize, isTooMuch } from './gather.ts';
import { axisOf } from './nodes/references.ts';
import { failedTable, sizeOf } from './space.ts';
import { type Program, prepare, runInto } from './stream.ts';

/**
 * Gathers the column arguments of a call: one array each, or one for all if they are pooled. Undefined if an
 * element has no value, the rows of a table could not be determined, or there is too much of it. The arrays are
 * used again at the next gathering.
 */
export type Collect = () => readonly Float64Array[] | undefined;

/** Compiles the gathering. What does not change with the row is gathered once an evaluation. */
export function compileCollect(plan: GatherPlan, compiler: ElementCompiler, depth: number): Collect {
  const fillers = plan.parts.map((part) => filler(part, compiler, depth));
  const gather = plan.pooled ? pool(plan, fillers) : align(plan, fillers);
  const { formula } = compiler;
  let epoch = -1;
  let refused = false;
  let found: ReturnType<Collect>;
  return () => {
    const first = epoch !== formula.epoch;
    if (first) {
      epoch = formula.epoch;
      refused = plan.parts.some(cannotRun) || isTooMuch(plan);
    }
    if (refused) return undefined;
    if (first || plan.perRow) found = gather();
    return found;
  };
}

/** Whether the rows of a part are not known, or a column of it has none that could be known. */
export function cannotRun(part: GatheredPart): boolean {
  return failedTable(part.space) !== undefined || part.columns.some(failsAsWhole);
}

interface Filler {
  /** The array itself, where a column can be taken as it stands. */
  readonly direct?: () => Float64Array | undefined;
  /** Writes all elements from `at` on; how many, -1 if one has no value. */
  readonly fill: (out: Float64Array, at: number) => number;
}

function filler(part: GatheredPart, compiler: ElementCompiler, depth: number): Filler {
  if (part.known) return knownFiller(part, compiler);
  const { node, space, picked } = part;
  const normal = part.normal ? compiler.world.texts.normalOf : undefined;
  if (space.tables.length === 0) return singleFiller(part, compiler, depth);
  const program = compiler.program(node, space, depth);
  const fill: Filler['fill'] = (out, at) => {
    const count = gatherInto(program, sizeOf(space), out, at, normal);
    return picked ? sizeOf(space) : count;
  };
  if (node.kind !== 'column' || space.tables.length > 1 || normal) return { fill };
  const column = compiler.world.column(node.id, axisOf(node).table);
  return { fill, direct: () => (picked || column.gaps === 0 ? column.values : undefined) };
}

function singleFiller(
  { node, normal, picked }: GatheredPart,
  compiler: ElementCompiler,
  depth: number,
): Filler {
  const thunk = compiler.scalar(node, depth);
  const { texts } = compiler.world;
  return {
    fill: (out, at) => {
      const value = normal ? texts.normalOf(thunk()) : thunk();
      out[at] = value;
      return picked || !Number.isNaN(value) ? 1 : -1;
    },
  };
}

function knownFiller({ known: column, normal }: GatheredPart, { world }: ElementCompiler): Filler {
  return {
    fill: (out, at) => {
      if (!column) return -1;
      let count = 0;
      for (let row = 0; row < column.values.length; row += 1) {
        const value = column.values[row] as number;
        if (!Number.isNaN(value)) {
          out[at + count] = normal ? world.texts.normalOf(value) : value;
          count += 1;
        } else if (!world.isBlankRow(column, row)) return -1;
      }
      return count;
    },
  };
}

/** Runs a program over all of its space; how many elements, -1 if one has no value. */
function gatherInto(
  program: Program,
  size: number,
  out: Float64Array,
  at: number,
  normal: ((code: number) => number) | undefined,
): number {
  prepare(program);
  runInto(program.stream, 0, size, out, at);
  if (normal) for (let i = at; i < at + size; i += 1) out[i] = normal(out[i] as number);
  return countGaps(out, at, at + size) === 0 ? size : -1;
}

function pool(plan: GatherPlan, fillers: readonly Filler[]): Collect {
  const [only] = fillers;
  const direct = fillers.length === 1 ? only?.direct : undefined;
  let buffer = new Float64Array(0);
  return () => {
    if (direct) {
      const values = direct();
      return values && [values];
    }
    const size = gatheredSize(plan);
    if (buffer.length !== size) buffer = new Float64Array(size);
    let at = 0;
    for (const { fill } of fillers) {
      const count = fill(buffer, at);
      if (count < 0) return undefined;
      at += count;
    }
    return [at === size ? buffer : buffer.subarray(0, at)];
  };
}

function align(plan: GatherPlan, fillers: readonly Filler[]): Collect {
  const buffers = fillers.map(() => new Float64Array(0));
  return () => {
    const columns: Float64Array[] = [];
    for (let at = 0; at < fillers.length; at += 1) {
      const { direct, fill } = fillers[at] as Filler;
      if (direct) {
        const values = direct();
        if (!values) return undefined;
        columns.push(values);
        continue;
      }
      const size = sizeOf((plan.parts[at] as GatheredPart).space);
      let buffer = buffers[at] as Float64Array;
      if (buffer.length !== size) buffer = buffers[at] = new Float64Array(size);
      if (fill(buffer, 0) < 0) return undefined;
      columns.push(buffer);
    }
    return columns;
  };
}
