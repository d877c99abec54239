import { nearest, type Problem, problem } from '../diagnostics/index.ts';
import type { Cell, GivenColumn } from '../document/index.ts';
import { type Type, textType, truthType, typeOfUnit } from '../language/index.ts';
import { DATE_UNIT, PLAIN_UNIT, readEntry, toSI, type Unit, type UnitRegistry } from '../units/index.ts';

/** One cell of a given column as a value: a number in SI (truth 1 or 0), a text, nothing, or what is wrong. */
export type CellValue = number | string | undefined | Problem;

/** What the cells of a column hold, and the unit plain numbers in them are in. */
export function columnType(
  column: GivenColumn,
  unit: Unit | undefined,
): { readonly type: Type; readonly unit?: Unit } {
  switch (column.type ?? 'number') {
    case 'text':
      return { type: textType };
    case 'truth':
      return { type: truthType };
    case 'date':
      return { type: typeOfUnit(DATE_UNIT), unit: DATE_UNIT };
    case 'number':
      return { type: typeOfUnit(unit ?? PLAIN_UNIT), unit: unit ?? PLAIN_UNIT };
  }
}

/**
 * Reads one cell. A number is in the column's unit; a text is an entry as a person types it; a blank takes the
 * column's default, else it is missing.
 */
export function readCell(
  cell: Cell,
  column: GivenColumn,
  unit: Unit | undefined,
  registry: UnitRegistry,
): CellValue {
  const type = column.type ?? 'number';
  const filled = cell === null || cell === '' ? (column.default ?? null) : cell;
  if (filled === null || filled === '') return undefined;
  if (type === 'text') return readText(`${filled}`, column);
  if (type === 'number' && typeof filled === 'number') {
    const si = toSI(filled, unit ?? PLAIN_UNIT);
    return Number.isFinite(si)
      ? si
      : problem('number-too-large', { from: 0, to: 0 }, { written: `${filled}` });
  }
  const wanted = type === 'truth' ? undefined : type === 'date' ? DATE_UNIT : (unit ?? PLAIN_UNIT);
  if (wanted) return readNumber(`${filled}`, wanted, registry);
  const read = readEntry(`${filled}`, registry);
  if (!read.ok) return first(read.problems);
  if (read.value.kind === 'missing') return undefined;
  if (read.value.kind === 'truth') return Number(read.value.value);
  return problem('cell-not-truth', { from: 0, to: `${filled}`.length }, { written: `${filled}` });
}

function readNumber(text: string, unit: Unit, registry: UnitRegistry): CellValue {
  const read = readEntry(text, registry, unit);
  if (!read.ok) return first(read.problems);
  const entry = read.value;
  if (entry.kind === 'missing') return undefined;
  if (entry.kind !== 'number' && entry.kind !== 'point')
    return problem('cell-not-number', { from: 0, to: text.length }, { written: text });
  return entry.si;
}

function readText(text: string, column: GivenColumn): CellValue {
  const trimmed = text.trim();
  if (trimmed === '') return undefined;
  if (!column.options) return trimmed;
  const folded = trimmed.normalize('NFC').toLowerCase();
  const found = column.options.find((option) => option.trim().normalize('NFC').toLowerCase() === folded);
  if (found !== undefined) return found;
  const near = nearest(trimmed, column.options);
  const span = { from: 0, to: text.length };
  return problem('choice-unknown', span, { written: trimmed, options: [...column.options], near });
}

function first(problems: readonly Problem[]): Problem {
  const [found] = problems;
  if (!found) throw new Error('a refused entry has no problem');
  return found;
}
