import type { FormulaItem, Notebook, Verdict } from '../../notebook/index.ts';
import type { UnitRegistry } from '../../units/index.ts';
import { formatQuantity, quantityText } from './format-quantity.ts';
import type { UnitsView } from './units-view.ts';

/** The two sides of a check as it has them, in one unit: "956 kN·m", "≤", "1020 kN·m". */
export interface ComparedSides {
  readonly left: string;
  readonly sign: string;
  readonly right: string;
}

const signs: Readonly<Record<string, string>> = { '<=': '≤', '<': '<', '>=': '≥', '>': '>' };

/** The sides of a check; undefined where it does not compare two quantities. */
export function comparedSides(
  notebook: Notebook,
  { id, checked: { typed } }: FormulaItem,
  view: UnitsView,
): ComparedSides | undefined {
  const verdict = notebook.verdict(id);
  if (typed.kind !== 'compare' || !verdict?.demand || !verdict.capacity) return undefined;
  const { demand, capacity } = shownSides(verdict, view, notebook.model.registry);
  const turned = typed.op === '>=' || typed.op === '>';
  const [left, right] = turned ? [capacity, demand] : [demand, capacity];
  return { left, sign: signs[typed.op] ?? typed.op, right };
}

/** By how much a check fails, in the unit of its demand; undefined where it holds or compares no quantities of one kind. */
export function failsBy(verdict: Verdict, view: UnitsView, registry: UnitRegistry): string | undefined {
  const { holds, demand, capacity } = verdict;
  if (holds || !demand || !capacity || demand.unit.point !== undefined) return undefined;
  const by = Math.abs(demand.si - capacity.si);
  return by > 0 ? quantityText(formatQuantity(by, demand.unit, view, registry)) : undefined;
}

/** Comparison takes no notice of less than this of the greater side; what is shown takes none either. */
const ROUNDING = 1e-12;

/** From so many significant digits on two sides are told apart that read the same as results are written, up to all there are. */
const [FIRST_DIGITS, ALL_DIGITS] = [5, 15];

/**
 * Demand and capacity of a check, empty where it has none; what rounding left of a side that is zero shows as zero. Sides
 * that differ read differently, with as many digits as that takes: no check fails at 100 of 100.
 */
export function shownSides(
  { demand, capacity }: Verdict,
  view: UnitsView,
  registry: UnitRegistry,
): { readonly demand: string; readonly capacity: string } {
  const least = ROUNDING * Math.max(Math.abs(demand?.si ?? 0), Math.abs(capacity?.si ?? 0));
  const written = (side: Verdict['demand'], digits?: number): string => {
    if (!side) return '';
    const si = side.unit.point === undefined && Math.abs(side.si) <= least ? 0 : side.si;
    return quantityText(
      formatQuantity(si, side.unit, view, registry, digits === undefined ? {} : { digits }),
    );
  };
  const sides = (digits?: number) => ({
    demand: written(demand, digits),
    capacity: written(capacity, digits),
  });
  let shown = sides();
  if (!demand || !capacity || Math.abs(demand.si - capacity.si) <= least) return shown;
  for (let digits = FIRST_DIGITS; shown.demand === shown.capacity && digits <= ALL_DIGITS; digits += 1)
    shown = sides(digits);
  return shown;
}
