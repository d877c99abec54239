import {
  type NumberStyle,
  numberInPrint,
  quantityInPrint,
  type Unit,
  type UnitRegistry,
  unitInPrint,
  unitInSystem,
  writeIn,
} from '../../units/index.ts';
import type { UnitsView } from './units-view.ts';

/** A quantity as the page prints it: digits and unit apart, so that both align down the page. */
export interface PrintedQuantity {
  readonly number: string;
  readonly unit: string;
}

/** A quantity in the unit it is read in, or in that of the system that is switched on. */
export function formatQuantity(
  si: number,
  unit: Unit,
  view: UnitsView,
  registry: UnitRegistry,
  style?: NumberStyle,
): PrintedQuantity {
  const shown = displayUnit(unit, view, registry);
  return { number: numberInPrint(writeIn(si, shown, style)), unit: unitInPrint(shown.text) };
}

/** The same in one piece, for sentences and lists: 12.3 kN, 84°. */
export function quantityText({ number, unit }: PrintedQuantity): string {
  return quantityInPrint(number, unit);
}

/** The unit a quantity is shown in. */
export function displayUnit(unit: Unit, view: UnitsView, registry: UnitRegistry): Unit {
  if (view === 'written' || unit.dimension.key === '') return unit;
  return unitInSystem(unit, view, registry);
}
