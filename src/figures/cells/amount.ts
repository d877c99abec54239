import {
  numberInPrint,
  quantityInPrint,
  type Unit,
  type UnitRegistry,
  unitInPrint,
  unitInSystem,
  withTrueMinus,
  writeIn,
  writeQuantity,
} from '../../units/index.ts';
import type { FigureView } from '../drawing.ts';
import { symbol, text, type Words } from '../svg/words.ts';

/** One number with the unit it is labelled in and the line it comes from. */
export interface Amount {
  readonly id: string;
  readonly name: string;
  readonly label: string;
  readonly si: number;
  readonly unit: Unit;
}

/** The unit to label with. */
export function labelUnit(unit: Unit, view: FigureView, registry: UnitRegistry): Unit {
  if (view === 'written' || unit.dimension.key === '') return unit;
  return unitInSystem(unit, view, registry);
}

/** A unit in print, nothing for a date. */
export function unitWords(unit: Unit): string {
  return unit.point === 'date' ? '' : unitInPrint(unit.text);
}

/** A value as a label has it: `68.5 m`, `6°`, `El. +12.5 ft MLLW`, with a true minus sign. */
export function valueText(si: number, unit: Unit): string {
  const written = plainValue(si, unit);
  return unit.point === 'date' ? written : withTrueMinus(written);
}

function plainValue(si: number, unit: Unit): string {
  if (unit.point !== undefined || /^\p{Sc}/u.test(unit.text)) return writeQuantity(si, unit);
  const number = writeIn(si, unit);
  return number === 'no value' ? number : quantityInPrint(numberInPrint(number), unitWords(unit));
}

/** The value of an amount. */
export function amountText(amount: Amount): string {
  return valueText(amount.si, amount.unit);
}

/** `R = 68.5 m`, with the symbol set as mathematics sets it. */
export function amountWords(amount: Amount): Words {
  return [...symbol(amount.name), ...text(` = ${amountText(amount)}`)];
}
