import type { FormulaItem, Notebook, Quantity } from '../../notebook/index.ts';
import type { UnitsView } from './session.ts';
import { shownQuantity, shownText } from './shown.ts';

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
  const { demand, capacity } = notebook.verdict(id) ?? {};
  if (typed.kind !== 'compare' || !demand || !capacity) return undefined;
  const written = ({ si, unit }: Quantity): string =>
    shownText(shownQuantity(si, unit, view, notebook.model.registry));
  const turned = typed.op === '>=' || typed.op === '>';
  const [left, right] = turned ? [capacity, demand] : [demand, capacity];
  return { left: written(left), sign: signs[typed.op] ?? typed.op, right: written(right) };
}
