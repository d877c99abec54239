import { type Problem, problem } from '../../diagnostics/index.ts';
import type { Cause, CauseFinder, Root } from '../compute/cause.ts';
import type { World } from '../compute/context.ts';
import { originOf } from '../compute/origin.ts';
import type { ColumnCell, Formula, ScalarCell } from '../store/cells.ts';
import { type Around, createCauseFinder } from './cause-finder.ts';
import { loopProblem } from './loop-problem.ts';
import type { Wording } from './write-operand.ts';

type ValueCell = ScalarCell | ColumnCell;

/** Why a cell has no value. `missing`: it is blank itself. */
export type Reason =
  | { readonly status: 'missing' }
  | { readonly status: 'problem' | 'waiting'; readonly problem: Problem };

/** Says, after everything was computed, why cells have no value. */
export interface Explainer {
  /** Why a cell without a value has none; `row` from 0, absent for a scalar or a column as a whole. */
  readonly reason: (cell: ValueCell, row: number | undefined) => Reason;
  /** Whether a row without a value lacks it only because something in that row of the table is blank. */
  readonly isBlankRow: (column: ColumnCell, row: number) => boolean;
  /** Forgets what was found out, because values have changed. */
  readonly forget: () => void;
}

type Local = { readonly kind: 'blank' } | Cause;

/** An explainer over the cells of an engine. */
export function createExplainer(world: World, wording: Wording): Explainer {
  let roots = new Map<ValueCell, Map<number | undefined, Root>>();
  let revision = 0;
  const sweepBlamers = new WeakMap<Formula, CauseFinder>();
  const stepBlamers = new WeakMap<Formula, CauseFinder>();

  const finderFor = (formula: Formula, stepping: boolean): CauseFinder => {
    const blamers = stepping ? stepBlamers : sweepBlamers;
    const known =
      blamers.get(formula) ?? createCauseFinder(formula, stepping, world, around, wording, () => revision);
    blamers.set(formula, known);
    return known;
  };

  /** Why the cell itself has no value, without going on to what it reads. */
  const local = (cell: ValueCell, row: number | undefined): Local => {
    const { content, cycle } = cell;
    if (cycle?.kind === 'loop') return fault(loopProblem(cycle, cell, formulaOf(cell)));
    switch (content.kind) {
      case 'absent':
        return fault(problem('nothing-there', { from: 0, to: 0 }, { name: cell.id }));
      case 'failed':
        return fault(content.problem);
      case 'given': {
        const failed =
          cell.shape === 'column' && row !== undefined ? cell.failedRows.get(row) : content.failed;
        return failed ? fault(failed) : { kind: 'blank' };
      }
      case 'formula':
        return causeInFormula(content.formula, cell, row, finderFor(content.formula, cycle !== undefined));
    }
  };

  const root = (cell: ValueCell, row: number | undefined): Root => {
    const trail: { cell: ValueCell; row: number | undefined }[] = [];
    let at = { cell, row };
    let found = roots.get(cell)?.get(row);
    while (!found) {
      trail.push(at);
      const next = local(at.cell, at.row);
      const place = at.row === undefined ? { cell: at.cell } : { cell: at.cell, row: at.row };
      if (next.kind === 'blank') found = { kind: 'blank', ...place };
      else if (next.kind === 'own') found = { kind: 'fault', ...place, problem: next.problem };
      else {
        at =
          next.kind === 'cell'
            ? { cell: next.cell, row: next.row }
            : { cell: seriesOf(next), row: undefined };
        found = roots.get(at.cell)?.get(at.row);
      }
    }
    for (const passed of trail) {
      const known = roots.get(passed.cell) ?? new Map<number | undefined, Root>();
      known.set(passed.row, found);
      roots.set(passed.cell, known);
    }
    return found;
  };

  const isBlankRow = (column: ColumnCell, row: number): boolean => {
    if (column.content.kind === 'given') return !column.failedRows.has(row);
    const { kind, cell } = root(column, row);
    return kind === 'blank' && cell.shape === 'column' && cell.table === column.table;
  };

  const around: Around = {
    root,
    isBlankRow,
    blankWords: ({ cell, row }) => blankProblem(cell.id, row, cell).message,
  };

  const waiting = (found: Exclude<Local, { kind: 'blank' | 'own' }>): Problem => {
    const { node } = found;
    if (found.kind === 'table') {
      const maker = seriesOf(found);
      const origin = originOf(root(maker, undefined), around.blankWords);
      return problem('waiting-on-rows', node, {
        table: found.table.id,
        name: maker.id,
        origin: origin.name,
        because: origin.blank ? '' : origin.because,
        ...(origin.uncovered && { uncovered: true }),
      });
    }
    const { cell, row } = found;
    const name = nameOf(node);
    const first = root(cell, row);
    const itself = first.cell === cell && first.row === row;
    if (first.kind === 'blank' && itself) return blankProblem(name, row, cell, node);
    const origin = originOf(first, around.blankWords);
    return problem('waiting-on', node, {
      name,
      row: row === undefined ? null : row + 1,
      origin: origin.name,
      because: origin.blank ? '' : origin.because,
      ...(origin.uncovered && { uncovered: true }),
    });
  };

  return {
    isBlankRow,
    reason: (cell, row) => {
      const found = local(cell, row);
      if (found.kind === 'blank') return { status: 'missing' };
      if (found.kind === 'own') return { status: found.status, problem: found.problem };
      return { status: 'waiting', problem: waiting(found) };
    },
    forget: () => {
      revision += 1;
      if (roots.size > 0) roots = new Map();
    },
  };
}

/** The cause of a formula where it stands; the cursor of its table is put on the row meanwhile. */
function causeInFormula(
  formula: Formula,
  cell: ValueCell,
  row: number | undefined,
  finder: CauseFinder,
): Local {
  const { table, typed } = formula;
  if (!table) return finder.cause(typed);
  if (table.failed && typed.kind !== 'series' && cell.shape === 'column')
    return { kind: 'table', table, node: typed };
  const before = table.row;
  table.row = row ?? 0;
  const found = finder.cause(typed);
  table.row = before;
  return found;
}

/** The series column that should make the rows. */
function seriesOf({ table }: Extract<Cause, { kind: 'table' }>): ColumnCell {
  const [maker] = table.series;
  if (!maker) throw new Error(`the rows of ${table.id} have failed without a series`);
  return maker;
}

function blankProblem(
  name: string,
  row: number | undefined,
  { id }: ValueCell,
  span = { from: 0, to: 0 },
): Problem {
  return problem('blank-cell', span, { name, row: row === undefined ? null : row + 1, cell: id });
}

function nameOf(node: Extract<Cause, { kind: 'cell' }>['node']): string {
  return node.kind === 'cell' || node.kind === 'column' ? node.name : '';
}

function formulaOf({ content }: ValueCell): Formula | undefined {
  return content.kind === 'formula' ? content.formula : undefined;
}

function fault(found: Problem): Local {
  return { kind: 'own', status: 'problem', problem: found };
}
