import {
  type ColumnNode,
  type LoweredColumn,
  type LoweredOrder,
  sortKeys,
  type Typed,
} from '../../language/index.ts';
import type { EngineValue } from '../program.ts';
import { lowerComparison } from './comparison.ts';
import type { Lowerer } from './lowerer.ts';
import type { BookPlan } from './plan.ts';
import { ROOT, type Site } from './site.ts';

/** What the engine has for a part that is nothing but a reference or a literal, as a number of the grid. */
export function expectedValue(node: Typed, site: Site, plan: BookPlan): number | undefined {
  switch (node.kind) {
    case 'cell':
      return numberOf(plan.values(node.id, node.type.axes.length > 0 ? site.row : undefined), plan);
    case 'column': {
      const fresh = site.fresh.get(node.type.axes[0]?.table ?? '');
      return fresh && numberOf(plan.values(node.id, fresh.row), plan);
    }
    case 'text':
      return plan.texts.codeOf(node.text);
    default:
      return undefined;
  }
}

/**
 * The order in which the engine's values of a column ascend, and a cell that tells whether the grid's do; undefined where
 * a row has no value.
 */
export function lowerOrder(
  node: ColumnNode,
  column: LoweredColumn,
  { plan, helpers, helper, once }: Lowerer,
): LoweredOrder | undefined {
  let known = plan.orders.get(node.id);
  if (!known) {
    const keys = Float64Array.from(
      { length: column.count },
      (_, row) => numberOf(plan.values(node.id, row), plan) ?? Number.NaN,
    );
    known = keys.some(Number.isNaN) ? 'gaps' : sortKeys(keys);
    plan.orders.set(node.id, known);
  }
  if (known === 'gaps') return undefined;
  const { rows } = known;
  const { number } = plan.constants;
  const ascends = once(node, () => {
    const steps = helpers.block(
      column.count - 1,
      (at) => {
        const [below, above] = [column.cell(rows[at] as number), column.cell(rows[at + 1] as number)];
        return `IF(${lowerComparison('<=', below, above, plan.constants)},${number(1)},${number(0)})`;
      },
      ROOT,
    );
    return helper(`IF(SUM(${steps.range})=${number(column.count - 1)},${number(1)},${number(0)})`, ROOT).at;
  });
  return { ...known, ascends };
}

function numberOf(value: EngineValue, { texts }: BookPlan): number | undefined {
  return typeof value === 'string' ? texts.codeOf(value) : value === undefined ? undefined : Number(value);
}
