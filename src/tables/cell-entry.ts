import { isBareNumber } from '../units/index.ts';
import { isNumeric, type TableCell } from './column.ts';
import { type Decimal, withPoints } from './decimals.ts';
import { ordinarySigns } from './full-width.ts';
import { unguardText } from './guarded-text.ts';
import { unitOfColumn } from './headers.ts';
import type { TakenColumn } from './mapping.ts';
import { numberAndUnit } from './number-unit.ts';
import type { Consents } from './reading.ts';
import { statedUnit } from './stated-unit.ts';
import type { TableText } from './table-text.ts';
import { clearedCell } from './unclear-cells.ts';

/** Apostrophes between thousands, as in 1'250.5; of feet and inches there are never three digits behind one. */
const APOSTROPHES = /^([+\-−]?\s*\d{1,3}(?:['’´`]\d{3})+(?!\d))(.*)$/s;

/** Commas between hundreds, thousands and a hundred of these, as in 1,23,456.50: no other sign stands so. */
const LAKHS = /^([+\-−]?\s*\d{1,2}(?:,\d{2})+,\d{3}(?![\d,]))(.*)$/s;

/** A dash in place of pennies: 50,-- is 50. */
const NO_PENNIES = /(?<=\d)[.,][-–—−]{1,2}(?=\s*(?:[$€£]|\p{L}|$))/u;

/** Makes cells of a column of a text: a number in the unit of its column, an entry in the unit stated, or as written. */
export function cellReader(
  taken: TakenColumn,
  decimal: Decimal,
  { registry }: TableText,
  consents: Consents,
): (written: string) => TableCell {
  const { column, unit } = taken;
  if (!isNumeric(column)) return (written) => (written === '' ? null : unguardText(written));
  const wanted = unitOfColumn(column, registry);
  const inUnit =
    unit === '' ? undefined : unit === '-' ? plainIn(wanted?.text) : (cell: string) => `${cell} ${unit}`;
  const units = new Map<string, string | undefined>();
  // Most cells of a long table are digits, maybe with a point, that need no closer look.
  const plain = decimal === 'point' ? /^-?\d{1,15}(?:\.\d{1,15})?$/ : /^-?\d{1,15}$/;
  return (written) => {
    if (inUnit !== undefined && plain.test(written)) return inUnit(written);
    const cleared = written === '' ? '' : clearedCell(written, consents);
    if (cleared === '') return null;
    const cell = plainDigits(cleared, decimal);
    if (inUnit === undefined) {
      const number = Number(cell);
      if (String(number) === cell && Number.isFinite(number)) return number;
    }
    if (isBareNumber(cell)) return inUnit?.(cell) ?? cell;
    const parts = numberAndUnit(cell);
    if (parts === undefined || !isBareNumber(parts.digits)) return cell;
    const { digits, unit: spelled } = parts;
    if (!units.has(spelled)) units.set(spelled, statedUnit(spelled, registry, wanted).unit);
    const stated = units.get(spelled);
    return stated === undefined || stated === spelled ? cell : `${digits} ${stated}`;
  };
}

/** A plain number for a column whose own unit is plain: as it is, or in per cent for one of per cent. */
function plainIn(unit: string | undefined): ((cell: string) => TableCell) | undefined {
  if (unit === undefined || unit === '' || unit === '-') return undefined;
  return (cell) => {
    const number = Number(cell);
    // `ea` is 1, so a number that only an entry reads (1/2) stays as it is written.
    return unit === '%' && Number.isFinite(number)
      ? `${Number((number * 100).toPrecision(15))} %`
      : `${cell} ea`;
  };
}

/** The unit that a cell has behind its number, `''` for none. */
export function ownUnit(written: string, decimal: Decimal): string {
  return unitBehind(written, decimal, {}) ?? '';
}

/** The unit that a cell has behind its number, `''` behind a bare one; undefined where it is no number with a unit. */
export function unitBehind(written: string, decimal: Decimal, consents: Consents): string | undefined {
  const cell = plainDigits(clearedCell(written, consents), decimal);
  return isBareNumber(cell) ? '' : numberAndUnit(cell)?.unit;
}

/** A text from elsewhere without apostrophes between the thousands of the number that it begins with. */
export function withoutApostrophes(text: string): string {
  return withoutSigns(text, APOSTROPHES);
}

/** A text without the signs between thousands of the number that it begins with, where these are what a pattern says. */
function withoutSigns(text: string, pattern: RegExp): string {
  const [, grouped, rest] = pattern.exec(text) ?? [];
  return grouped === undefined ? text : `${grouped.replace(/['’´`,]/g, '')}${rest}`;
}

/** A cell with digits of full width as ordinary ones, no apostrophes between thousands, and points before decimals. */
function plainDigits(written: string, decimal: Decimal): string {
  const ascii = ordinarySigns(written);
  const joined = withoutSigns(withoutSigns(ascii, APOSTROPHES), LAKHS).replace(NO_PENNIES, '');
  return decimal === 'comma' && /[.,]/.test(joined) ? withPoints(joined) : joined;
}
