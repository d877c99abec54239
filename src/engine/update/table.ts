import { elementCompiler } from '../compute/compiler.ts';
import type { World } from '../compute/context.ts';
import { planSeries } from '../compute/series-plan.ts';
import { type Formula, makerOf, type SeriesPlan, type TableCell } from '../store/cells.ts';

/** What has changed about the rows of a table: their number or whether they are known, or only the series itself. */
export type RowsChange = 'rows' | 'series' | 'nothing';

/** Determines the rows of a table: as many as its series makes, or as were set. */
export function updateTable(table: TableCell, world: World): RowsChange {
  const formula = makerOf(table);
  const before = table.plan;
  const { length, failed } = table;
  table.plan = formula && planOf(formula, world);
  table.failed = formula !== undefined && table.plan === undefined;
  table.length = formula ? (table.plan?.count ?? 0) : table.givenLength;
  // Failed before and after, the reason may be another.
  if (table.length !== length || table.failed || failed) return 'rows';
  return samePlan(before, table.plan) ? 'nothing' : 'series';
}

function planOf(formula: Formula, world: World): SeriesPlan | undefined {
  const { typed } = formula;
  if (typed.kind !== 'series') throw new Error('a series column has another formula');
  formula.epoch += 1;
  const compiler = elementCompiler(world, formula);
  const [start, stop, step] = [typed.start, typed.stop, typed.step].map((part) => compiler.scalar(part, 0)());
  const plan = planSeries(start as number, stop as number, step as number);
  return typeof plan === 'object' ? plan : undefined;
}

function samePlan(a: SeriesPlan | undefined, b: SeriesPlan | undefined): boolean {
  return a?.start === b?.start && a?.step === b?.step && a?.stop === b?.stop && a?.count === b?.count;
}
