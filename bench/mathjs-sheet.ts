import { all, create, type EvalFunction, type Unit } from 'mathjs';
import { type Graph, startOf } from './sheet-graph.ts';

/** The graph in mathjs, with its units and compiled expressions, recomputing only what an edit reaches. */
export interface MathjsSheet {
  readonly edit: (at: number, value: number) => void;
  /** The value of a cell in metres. */
  readonly read: (at: number) => number;
}

/** The graph in mathjs, computed. */
export function mathjsSheet(graph: Graph): MathjsSheet {
  const math = create(all ?? {});
  const values = new Map<string, Unit>();
  const code = graph.cells.map((cell) => math.compile(cell.mathjs));
  const reached = graph.givens.map((given) => [given, reachedFrom(given, graph)] as const);
  const dependents = new Map(reached);
  const compute = (at: number): void => {
    values.set(`x${at}`, (code[at] as EvalFunction).evaluate(values) as Unit);
  };
  for (const at of graph.givens) values.set(`x${at}`, math.unit(startOf(at), 'm'));
  graph.cells.forEach((_, at) => {
    compute(at);
  });
  return {
    edit: (at, value) => {
      values.set(`x${at}`, math.unit(value, 'm'));
      for (const cell of dependents.get(at) ?? []) compute(cell);
    },
    read: (at) => values.get(`x${at}`)?.toNumber('m') ?? Number.NaN,
  };
}

/** The cells an edit of a given reaches, in order. */
function reachedFrom(given: number, { cells }: Graph): readonly number[] {
  const reached = new Set([given]);
  cells.forEach(({ reads }, at) => {
    if (reads.some((read) => reached.has(read))) reached.add(at);
  });
  return [...reached].filter((at) => at !== given);
}
