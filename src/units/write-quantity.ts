import { dateFromSI, timeOfDay, writeDate } from './calendar.ts';
import { isCurrencyCode } from './currency-table.ts';
import { datumOf, lengthText } from './elevation.ts';
import { withoutDust } from './equal-numbers.ts';
import { writeDecimals, writeSignificant } from './round-decimal.ts';
import { fromSI, toSI, type Unit } from './unit.ts';
import { type NumberStyle, writeNumber } from './write-number.ts';

/**
 * Writes an SI number in `unit`, as `readEntry` reads it: `12.3 kN`, `20 degC`, `El. +12.5 ft MLLW`, `2026-11-25`, `2026-11-25 06:30`,
 * `$12.50/cy`, `0.611` for plain. Money below 1000 has its cents. With `digits: 'full'` reading the
 * text gives the same SI number if any number in this unit has it (so what was entered always comes back), else the
 * nearest; dates give the same second.
 */
export function writeQuantity(si: number, unit: Unit, style: NumberStyle = {}): string {
  if (!Number.isFinite(si)) return 'no value';
  if (unit.point === 'date') return writeDay(si);
  const number = writeIn(si, unit, style);
  const datum = unit.point === undefined ? undefined : datumOf(unit.point);
  if (datum !== undefined) {
    const signed = number.startsWith('-') ? number : `+${number}`;
    return `El. ${signed} ${lengthText(unit)}${datum === '' ? '' : ` ${datum}`}`;
  }
  if (unit.text === '') return number;
  const [sign = ''] = /^\p{Sc}/u.exec(unit.text) ?? [];
  if (sign === '') return number + unitTail(unit.text);
  const [minus, digits] = number.startsWith('-') ? ['-', number.slice(1)] : ['', number];
  return `${minus}${sign}${digits}${unit.text.slice(sign.length)}`;
}

/** The number alone, in `unit`, with the digits `writeQuantity` gives it: for a column that has its unit on top. */
export function writeIn(si: number, unit: Unit, style: NumberStyle = {}): string {
  if (unit.point === 'date') return writeDay(si);
  const x = fromSI(si, unit);
  if (style.decimals !== undefined) return writeNumber(x, style);
  if (style.digits === 'full') return writeNumber(shortestFor(si, unit), style);
  if (style.digits === 'carried') {
    const short = withoutDust(x);
    return writeNumber(short === x ? shortestFor(si, unit) : short, { ...style, digits: 'full' });
  }
  if (typeof style.digits === 'number') return writeNumber(withoutDust(x), style);
  if (!isMoney(unit)) return writeNumber(x, style);
  // An amount of money stands to its last unit, however large it is.
  if (Math.abs(x) >= 999.995) return writeNumber(x, { ...style, decimals: 0 });
  return writeNumber(x, fitsCents(x) ? { ...style, decimals: 2 } : style);
}

/** Whether two decimals say all that is worth saying of an amount below 1000: from 1 on, and where nothing follows the cents. */
function fitsCents(x: number): boolean {
  return Math.abs(x) >= 1 || Number(writeDecimals(x, 2)) === Number(writeSignificant(x, 3));
}

/** The number of fewest digits that comes back as exactly this SI value; the quotient if none does. */
function shortestFor(si: number, unit: Unit): number {
  const x = fromSI(si, unit);
  const shorter = [15, 16].map((digits) => Number(x.toPrecision(digits)));
  return shorter.find((candidate) => toSI(candidate, unit) === si) ?? x;
}

/** Whether a unit is one of money, or of a price. */
export function isMoney(unit: Unit): boolean {
  const money = unit.dimension.powers.filter(([base]) => isCurrencyCode(base));
  return money.length === 1 && money[0]?.[1].n === 1 && money[0][1].d === 1;
}

function unitTail(text: string): string {
  return text === '°' ? text : ` ${text}`;
}

function writeDay(si: number): string {
  const date = dateFromSI(si);
  if (date === undefined) return 'no value';
  const time = timeOfDay(si);
  return time === '' ? writeDate(date) : `${writeDate(date)} ${time}`;
}
