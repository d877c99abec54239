import type { Given } from '../../document/index.ts';
import type { Quantity } from '../../notebook/index.ts';
import { entryInPrint, quantityInPrint, type UnitRegistry, unitInPrint } from '../../units/index.ts';
import { displayUnit, formatQuantity } from './format-quantity.ts';
import { isCarried } from './is-carried.ts';
import { isOneNumber } from './one-number.ts';
import type { UnitsView } from './units-view.ts';

/**
 * A given as the page shows it. `plain`: the entry with the digits as typed stands where results stand, its unit in the unit column.
 * `converted`: the entry was typed in another unit than the line's or than the units shown; it stands where
 * calculations stand, and what it comes to follows the equals sign.
 */
export type EntryView =
  | { readonly kind: 'plain'; readonly number: string; readonly unit: string }
  | { readonly kind: 'converted'; readonly entry: string; readonly number: string; readonly unit: string };

/** So many significant digits of a value that is held for another are shown: what is computed from them is not off by more. */
const HELD_DIGITS = 7;

/** How an entry with a quantity as its value is shown. */
export function entryView(row: Given, value: Quantity, view: UnitsView, registry: UnitRegistry): EntryView {
  const entry = row.entry.trim();
  const shown = formatQuantity(value.si, value.unit, view, registry);
  // Nobody has typed a value that stood for a computed one: it shows digits enough to work with, and all in its field.
  if (row.toLink !== undefined && isCarried(entry))
    return {
      kind: 'plain',
      ...formatQuantity(value.si, value.unit, view, registry, { digits: HELD_DIGITS }),
    };
  const unit = value.unit.text === '-' ? '' : value.unit.text;
  const printed = (text: string): string => (value.unit.point === 'date' ? text : entryInPrint(text));
  const own = withoutUnit(entry, unit === '' ? '-' : unit);
  if (own !== undefined && displayUnit(value.unit, view, registry).text === value.unit.text)
    return { kind: 'plain', number: printed(own), unit: unitInPrint(unit) };
  const typed = own === entry ? quantityInPrint(printed(entry), unitInPrint(unit)) : printed(entry);
  return { kind: 'converted', entry: typed, ...shown };
}

/** The entry without the unit it ends with; undefined if it was typed with another one. */
function withoutUnit(entry: string, unit: string): string | undefined {
  if (unit !== '' && entry.endsWith(unit) && entry.length > unit.length) {
    const number = entry.slice(0, -unit.length).trimEnd();
    if (/[\d.]$/.test(number) && isOneNumber(number)) return number;
  }
  return /^[+−-]?[\d.,\s\u202f/]+(?:[eE][+−-]?\d+)?$/.test(entry) ||
    /^\d{4}-\d{2}-\d{2}(?:[ T]+[\d:]+)?$/.test(entry)
    ? entry
    : undefined;
}
