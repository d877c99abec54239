import { type Problem, problem } from '../diagnostics/index.ts';
import { isBareNumber, readUnit, type UnitRegistry } from '../units/index.ts';
import type { Ledger } from './account.ts';
import { columnLetters, isNumeric, type TableCell } from './column.ts';
import { unitOfColumn } from './headers.ts';
import type { SortedColumns, TakenColumn } from './mapping.ts';
import { numberAndUnit } from './number-unit.ts';
import type { TextRow } from './records.ts';
import { isSameUnit, statedUnit } from './stated-unit.ts';
import { columnFacts, type TextColumn } from './text-columns.ts';
import { saysUnit } from './unit-row.ts';

const NOWHERE = { from: 0, to: 0 };

/** Numbers and the column of the text that stands beside them without being used. */
interface Beside {
  readonly column: TextColumn;
  /** Whether it is left out; otherwise it goes to a column of words. */
  readonly isOut: boolean;
}

/**
 * Columns of units, row by row, that are left out or taken as words, while numbers in their rows are read in another
 * unit. A column is one of units if its header says so, or if all its texts are units and some of them are of the kind
 * of numbers that are taken.
 *
 * @param kept the cells of the taken columns, as far as `rows`
 */
export function ignoredUnits(
  sorted: SortedColumns,
  found: readonly TextColumn[],
  kept: readonly (readonly TableCell[])[],
  rows: readonly TextRow[],
  registry: UnitRegistry,
  ledger: Ledger,
): readonly Problem[] {
  const { taken, out, unitless } = sorted;
  const words = new Set(taken.flatMap(({ column, position }) => (isNumeric(column) ? [] : [position])));
  const beside: readonly Beside[] = [
    ...out.filter(({ position }) => !unitless.has(position)).map((column) => ({ column, isOut: true })),
    ...found.filter(({ position }) => words.has(position)).map((column) => ({ column, isOut: false })),
  ];
  const numbers = taken.flatMap((one, at) => (isNumeric(one.column) ? [{ one, cells: kept[at] ?? [] }] : []));
  if (numbers.length === 0) return [];
  const agreement = agreementIn(registry);
  return beside.flatMap(({ column, isOut }) => {
    const texts = new Set(rows.map(({ cells }) => unitIn(cells, column.position)));
    texts.delete('');
    const says = saysUnit(column.header);
    if (texts.size === 0 || (!isOut && !says && !areUnits(texts, registry))) return [];
    if (!says && !(areUnits(texts, registry) && someFit(texts, taken, registry))) return [];
    const refused = rows.flatMap((row, index) => {
      const text = unitIn(row.cells, column.position);
      if (text === '') return [];
      const here = numbers.flatMap(({ one, cells }) => {
        const cell = cells[index] ?? null;
        return cell === null ? [] : [{ one, unit: unitOf(cell, one) }];
      });
      // A dash is nothing beside volumes, but a plain number is a hundred times one of per cent.
      const against = here.filter(({ unit }) => !agreement(text, unit));
      if (against.length === 0 || (text !== '-' && !isAgainst(text, against, here, registry))) return [];
      // Words that a table has a column for may be about numbers without a unit.
      const meant = text === '-' ? against : against.filter(({ one }) => fits(text, one, registry));
      if (!isOut && meant.length === 0) return [];
      return [{ row, text, ...(meant[0] ?? against[0]) }];
    });
    const [first] = refused;
    if (first?.one === undefined) return [];
    for (const { row } of refused) ledger.write(row.at, column.position, 'refused');
    return [
      problem('column-units-ignored', NOWHERE, {
        ...columnFacts(column),
        lines: refused.map(({ row }) => row.line),
        letter: columnLetters(column.position),
        text: first.text,
        number: first.row.cells[first.one.position]?.trim() ?? '',
        column: first.one.column.name,
        unit: first.unit ?? '',
        out: isOut,
      }),
    ];
  });
}

/** Whether a unit is that of none of the numbers in its row, or may be that of one it is not. */
function isAgainst(
  text: string,
  against: readonly { readonly one: TakenColumn }[],
  here: readonly { readonly one: TakenColumn }[],
  registry: UnitRegistry,
): boolean {
  return against.length === here.length || against.some(({ one }) => fits(text, one, registry));
}

/** The unit of a cell: its own, or that of its column, `''` for none. */
function unitOf(cell: string | number, { column }: TakenColumn): string {
  const own = typeof cell === 'string' && !isBareNumber(cell) ? numberAndUnit(cell)?.unit : undefined;
  return own ?? column.unit ?? '';
}

/** What stands in a row of a column of units, a dash of any length as `-`. */
function unitIn(cells: readonly string[], position: number): string {
  const text = cells[position]?.trim() ?? '';
  return /^[-–—]$/.test(text) ? '-' : text;
}

function areUnits(texts: ReadonlySet<string>, registry: UnitRegistry): boolean {
  return [...texts].every((text) => {
    if (text === '-') return true;
    const { unit, choices } = statedUnit(text, registry);
    return unit !== undefined || choices.length > 0;
  });
}

function someFit(texts: ReadonlySet<string>, taken: readonly TakenColumn[], registry: UnitRegistry): boolean {
  return [...texts].some((text) => taken.some((one) => fits(text, one, registry)));
}

/** Whether a text is a unit of the kind of a column of numbers that has a unit. */
function fits(text: string, { column }: TakenColumn, registry: UnitRegistry): boolean {
  const wanted = unitOfColumn(column, registry);
  if (wanted === undefined || (wanted.dimension.key === '' && wanted.factor === 1 && !wanted.angle))
    return false;
  const { unit, choices } = statedUnit(text, registry, wanted);
  return unit !== undefined || choices.length > 0;
}

/** Whether a text beside numbers is their unit, or what they are a rate per; remembered, for texts come again. */
function agreementIn(registry: UnitRegistry): (text: string, unit: string) => boolean {
  const known = new Map<string, boolean>();
  return (text, unit) => {
    const key = `${text}\n${unit}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const read = readUnit(unit, registry);
    const per = unit.includes('/') ? unit.slice(unit.lastIndexOf('/') + 1).trim() : '';
    const isShare = read.ok && read.value.dimension.key === '' && read.value.factor !== 1;
    if (text === '-') return !isShare;
    const agrees =
      isSameUnit(text, unit, registry, read.ok ? read.value : undefined) ||
      (per !== '' && isSameUnit(text, per, registry));
    known.set(key, agrees);
    return agrees;
  };
}
