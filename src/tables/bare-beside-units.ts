import { type Problem, problem } from '../diagnostics/index.ts';
import { readUnit, type Unit, type UnitRegistry } from '../units/index.ts';
import type { Ledger } from './account.ts';
import { unitBehind } from './cell-entry.ts';
import { columnLetters, isNumeric } from './column.ts';
import type { Decimal } from './decimals.ts';
import { unitOfColumn } from './headers.ts';
import type { TakenColumn } from './mapping.ts';
import type { Consents } from './reading.ts';
import type { TextRow } from './records.ts';
import { isSameUnit, statedUnit } from './stated-unit.ts';
import type { TableText } from './table-text.ts';

const NOWHERE = { from: 0, to: 0 };

/** Feet, with inches or without, and inches alone, as marks write them. */
const FEET = /^[+\-−]?\s*\d+(?:\.\d+)?\s*['’′](?!\d{3}(?!\d))/u;
const INCHES = /^[+\-−]?\s*[\d./\s½¼¾⅓⅔⅛⅜⅝⅞]+(?:["”″]|''|’’|′′)/u;

/**
 * Numbers without a unit in a column of which nothing says the unit, while other cells of it carry another unit than the
 * bare ones would be read in: they may be in that one too. Where the unit of the column was said, by the text or a person,
 * nothing is in doubt, nor where all units are the one that the bare numbers are read in.
 */
export function bareBesideUnits(
  taken: readonly TakenColumn[],
  rows: readonly TextRow[],
  decimal: Decimal,
  { registry }: TableText,
  consents: Consents,
  ledger: Ledger,
): readonly Problem[] {
  return taken.flatMap((one) => {
    const { column, position, header, unit: inUnit, assumed, unitsAt } = one;
    const now = inUnit === '' ? (column.unit ?? '') : inUnit;
    const isSaid = inUnit !== '' && assumed !== true;
    if (!isNumeric(column) || isSaid || unitsAt !== undefined || now === '') return [];
    const wanted = unitOfColumn(column, registry);
    const isNow = readingIn(now, wanted, registry);
    const bare: TextRow[] = [];
    const others = new Map<string, TextRow>();
    for (const row of rows) {
      const written = row.cells[position]?.trim() ?? '';
      if (written === '') continue;
      const own = marked(written, wanted) ?? unitBehind(written, decimal, consents);
      // Nothing is as much in any unit, unless a scale begins elsewhere.
      const isNothing = wanted?.point === undefined && /^[-+−]?[0.,]*$/.test(written);
      if (own === '' && !isNothing) bare.push(row);
      if (own === undefined || own === '' || isNow(own) !== 'other') continue;
      const unit = statedUnit(firstOf(own), registry, wanted).unit ?? own;
      if (!others.has(unit)) others.set(unit, row);
    }
    const [first] = bare;
    const [[, beside] = []] = others;
    if (first === undefined || beside === undefined) return [];
    for (const { at } of bare) ledger.write(at, position, 'refused');
    return [
      problem('cells-unit-missing', NOWHERE, {
        lines: bare.map(({ line }) => line),
        letter: columnLetters(position),
        header,
        position: position + 1,
        first: first.cells[position]?.trim() ?? '',
        column: column.name,
        text: first.cells[position]?.trim() ?? '',
        beside: beside.cells[position]?.trim() ?? '',
        besideLine: beside.line,
        unit: now,
        others: [...others.keys()],
      }),
    ];
  });
}

/** The unit that marks of feet and inches say; undefined without such a mark, or where no length is wanted. */
function marked(written: string, wanted: Unit | undefined): string | undefined {
  if (wanted?.dimension.key !== 'L') return undefined;
  if (INCHES.test(written)) return 'in';
  return FEET.test(written) ? 'ft' : undefined;
}

/** The unit of the first number of a cell that has several: feet in `12 ft 6 in`. */
function firstOf(unit: string): string {
  return /^(.*?\S)\s+\d/u.exec(unit)?.[1] ?? unit;
}

/** Tells, and remembers, whether a unit of a cell is that of the bare numbers, another of its kind, or none of its kind. */
function readingIn(
  now: string,
  wanted: Unit | undefined,
  registry: UnitRegistry,
): (own: string) => 'same' | 'other' | 'unread' {
  const known = new Map<string, 'same' | 'other' | 'unread'>();
  return (own) => {
    const before = known.get(own);
    if (before !== undefined) return before;
    const { unit } = statedUnit(firstOf(own), registry, wanted);
    const isRead = unit !== undefined && readUnit(unit, registry).ok;
    const reading = !isRead ? 'unread' : isSameUnit(unit, now, registry, wanted) ? 'same' : 'other';
    known.set(own, reading);
    return reading;
  };
}
