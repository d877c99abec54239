import { type Problem, problem, type Span } from '../../diagnostics/index.ts';
import { referenceIn } from '../compute/nodes/references.ts';
import type { Cell, Cycle, Formula } from '../store/cells.ts';

/** Paths longer than this are told with their middle left out. */
const LONGEST_PATH = 12;

/** The problem of a cell in a loop: the path of names, at the place where the formula goes round. */
export function loopProblem(
  cycle: Extract<Cycle, { kind: 'loop' }>,
  cell: Cell,
  formula: Formula | undefined,
): Problem {
  const names = cycle.loop.map(nameOf).filter((name, at, all) => at === 0 || name !== all[at - 1]);
  const path = names.length > 1 ? names : [...names, ...names];
  const shown = path.length <= LONGEST_PATH ? path : [...path.slice(0, 8), '…', ...path.slice(-3)];
  const next = cycle.loop[cycle.loop.indexOf(cell) + 1];
  return problem('loop', placeOf(formula, next), { path: shown });
}

/** A table stands in a loop by the series that makes its rows. */
function nameOf(cell: Cell): string {
  return cell.shape === 'table' ? (cell.series[0]?.id ?? cell.id) : cell.id;
}

function placeOf(formula: Formula | undefined, next: Cell | undefined): Span {
  const node = formula && next && referenceIn(formula.typed, next.id);
  return node ?? { from: 0, to: formula?.text.length ?? 0 };
}
