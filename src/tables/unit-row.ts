import type { UnitRegistry } from '../units/index.ts';
import type { TextRow } from './records.ts';
import { statedUnit } from './stated-unit.ts';

/** How many rows below are looked at for numbers. */
const DEPTH = 20;

/**
 * Whether a row under the headers has the units of the columns: nothing but units and dashes is in it, and numbers
 * stand below each of its units.
 */
export function isUnitRow({ cells }: TextRow, below: readonly TextRow[], registry: UnitRegistry): boolean {
  const filled = cells.flatMap((cell, position) => {
    const text = unitText(cell);
    return text === '' ? [] : [{ text, position }];
  });
  const stated = filled.filter(({ text }) => text !== '-');
  if (stated.length === 0) return false;
  return stated.every(({ text, position }) => {
    const { unit, choices } = statedUnit(text, registry);
    return (unit !== undefined || choices.length > 0) && standsOverNumbers(position, below);
  });
}

/** A unit in a row of units, without the brackets that may be around it. */
export function unitText(cell: string): string {
  const text = cell.trim();
  const [, inner] = /^[([](.*)[)\]]$/.exec(text) ?? [];
  return (inner ?? text).trim();
}

function standsOverNumbers(position: number, below: readonly TextRow[]): boolean {
  const first = below.slice(0, DEPTH).find(({ cells }) => (cells[position] ?? '').trim() !== '');
  return first === undefined || /^[\s$€£(+\-−.,]*[\d½¼¾]/.test(first.cells[position] ?? '');
}
