import { all, create, type EvalFunction, type Unit } from 'mathjs';
import { weigh } from './measure.ts';
import type { SheetContestant } from './sheet-contestant.ts';
import type { Graph } from './sheet-graph.ts';

const math = create(all ?? {});

/** The graph in mathjs, with its units and compiled expressions, recomputing only what an edit reaches. */
export function mathjsSheet(graph: Graph): SheetContestant {
  const { built, mb } = weigh(() => load(graph));
  const { values, code, reached } = built;
  return {
    name: 'mathjs',
    mb,
    edit: ({ at, value }) => {
      values.set(`x${at}`, math.unit(value, 'm'));
      for (const cell of reached.get(at) ?? []) compute(cell, code, values);
    },
    read: (at) => values.get(`x${at}`)?.toNumber('m') ?? Number.NaN,
  };
}

type Code = ReadonlyMap<number, EvalFunction>;

function load(graph: Graph) {
  const values = new Map<string, Unit>();
  const code = new Map<number, EvalFunction>();
  for (const [at, cell] of graph.cells.entries()) {
    if (typeof cell === 'number') values.set(`x${at}`, math.unit(cell, 'm'));
    else {
      code.set(at, math.compile(cell.mathjs));
      compute(at, code, values);
    }
  }
  const reached = new Map(graph.givens.map((given) => [given, reachedFrom(given, graph)] as const));
  return { values, code, reached };
}

function compute(at: number, code: Code, values: Map<string, Unit>): void {
  values.set(`x${at}`, code.get(at)?.evaluate(values) as Unit);
}

/** The cells an edit of a given reaches, in order. */
function reachedFrom(given: number, { cells }: Graph): readonly number[] {
  const reached = new Set([given]);
  for (const [at, cell] of cells.entries())
    if (typeof cell !== 'number' && cell.reads.some((read) => reached.has(read))) reached.add(at);
  return [...reached].filter((at) => at !== given);
}
