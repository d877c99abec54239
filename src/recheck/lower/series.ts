import type { SeriesNode } from '../../language/index.ts';
import { address } from '../grid.ts';
import type { Lowerer } from './lowerer.ts';
import { FIRST_ROW, REFUSED, tableOf } from './plan.ts';
import { ROOT, type Site } from './site.ts';

/** What the rows of a series are made from, lowered once. */
function partsOfSeries(node: SeriesNode, lowerer: Lowerer) {
  const { number } = lowerer.plan.constants;
  const part = (inner: SeriesNode['start']) => lowerer.once(inner, () => lowerer.lower(inner, ROOT));
  const [start, stop, step] = [part(node.start), part(node.stop), part(node.step)];
  const quotient = lowerer.once(node, () => `((${stop}-${start})/${step})`);
  const nearest = `INT(${quotient}+${number(0.5)})`;
  const wide = `MAX(${number(1e-9)},(${number(1e-12)}*ABS(${quotient})))`;
  // A step meets the stop by the rounding rule.
  return { start, stop, step, quotient, nearest, meets: `(ABS(${quotient}-${nearest})<=${wide})` };
}

/** A row of a series: start + (n - 1)·step, and the stop itself where the last step meets it. */
export function lowerSeries(node: SeriesNode, site: Site, lowerer: Lowerer): string {
  const { start, stop, step, meets } = partsOfSeries(node, lowerer);
  const { table, sheet } = tableOf(lowerer.plan, lowerer.table ?? '');
  const row = site.row ?? 0;
  const place = address(sheet.name, FIRST_ROW + row, 0, true);
  const term = `(${start}+((${place}-${lowerer.plan.constants.number(1)})*${step}))`;
  return row === table.rows - 1 ? `IF(${meets},${stop},${term})` : term;
}

/** How many rows a series makes. The rows are laid out as the engine made them; their number is compared with this. */
export function lowerSeriesCount(node: SeriesNode, lowerer: Lowerer): string {
  const { quotient, nearest, meets } = partsOfSeries(node, lowerer);
  const { number } = lowerer.plan.constants;
  // A stop behind the start by more than the margin makes no rows.
  return `IF(${quotient}<-${number(1e-9)},${REFUSED},IF(${meets},${nearest},INT(${quotient}))+${number(1)})`;
}
