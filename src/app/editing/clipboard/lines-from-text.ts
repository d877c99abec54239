import type { Fresh, Given } from '../../../document/index.ts';
import { unitOfHeader } from '../../../tables/index.ts';
import { isBareNumber, readEntry, readUnit, type Unit, type UnitRegistry } from '../../../units/index.ts';

/** The givens of a text, and how many of its cells went into them, and how many were headings. */
export interface TextLines {
  readonly rows: readonly Given[];
  readonly cells: number;
  readonly headings: number;
}

/**
 * The givens that a text of two columns is, descriptions and values with their units, or of three, the units in the last.
 * The first row may be headings of these, and that of the values state their unit. Undefined where any row is something else: then it is no such text.
 */
export function linesFromText(
  cells: readonly (readonly string[])[],
  registry: UnitRegistry,
  fresh: Fresh,
): TextLines | undefined {
  const filled = cells.filter((row) => row.some((cell) => cell.trim() !== ''));
  const [top, second] = filled;
  const headed = top !== undefined && second !== undefined && isHeading(top, registry);
  const stated = headed ? unitOfHeading(top[1] ?? '', registry) : '';
  const rows: Given[] = [];
  let count = 0;
  for (const row of headed ? filled.slice(1) : filled) {
    const line = lineOf(
      row.map((cell) => cell.trim()),
      stated,
      registry,
    );
    if (!line) return undefined;
    count += row.filter((cell) => cell.trim() !== '').length;
    rows.push({ id: fresh.id('r'), kind: 'given', name: fresh.name('x_1'), ...line });
  }
  return rows.length === 0 ? undefined : { rows, cells: count, headings: headed ? top.length : 0 };
}

/** What begins like a number or an error of a spreadsheet is a value that does not read, and names none. */
const LIKE_VALUE = /^[\s$€£(+\-−.,~≈<>]*\d|^#[A-Z]/;

function isHeading([label = '', ...values]: readonly string[], registry: UnitRegistry): boolean {
  const named = (cell: string): boolean => cell.trim() !== '' && !quantityIn(cell.trim(), registry);
  return values.length > 0 && named(label) && values.every((cell) => named(cell) && !LIKE_VALUE.test(cell));
}

function lineOf(
  [label = '', value = '', unit = '', ...more]: readonly string[],
  stated: string,
  registry: UnitRegistry,
): Pick<Given, 'label' | 'entry' | 'unit'> | undefined {
  if (label === '' || quantityIn(label, registry) || more.some((cell) => cell !== '')) return undefined;
  // Digits that stand in the place of a unit are another number, not more of the first.
  if (unit !== '' && (stated !== '' || !isBareNumber(value) || !readUnit(unit, registry).ok))
    return undefined;
  const own = unit === '' && isBareNumber(value) ? stated : unit;
  const entry = own === '' ? value : `${value} ${own}`;
  const read = quantityIn(entry, registry);
  if (!read) return undefined;
  return { label, entry, unit: read.unit.text === '-' ? '' : read.unit.text };
}

/** The unit that the heading of the values states; '' for none. What is no known unit gives entries that do not read. */
function unitOfHeading(header: string, registry: UnitRegistry): string {
  const unit = unitOfHeader(
    { position: 1, header, first: undefined, unit: '', below: '' },
    { name: 'value', kind: 'given' },
    registry,
  );
  return unit === '-' ? '' : unit;
}

function quantityIn(text: string, registry: UnitRegistry): { readonly unit: Unit } | undefined {
  const read = readEntry(text, registry);
  return read.ok && (read.value.kind === 'number' || read.value.kind === 'point') ? read.value : undefined;
}
