import { type Type, typeOfUnit } from '../../../language/index.ts';
import type { FormulaColumnItem, FormulaItem, Notebook } from '../../../notebook/index.ts';
import { standingAt } from './call-at.ts';

/**
 * The type that what is written at `at` should have: that of the other side of a sum or comparison, or of the unit
 * column where nothing stands before it. Undefined where anything goes.
 */
export function wantedType(
  notebook: Notebook,
  item: FormulaItem | FormulaColumnItem,
  text: string,
  at: number,
): Type | undefined {
  const { call } = standingAt(text, at);
  const before = text.slice(call?.from ?? 0, at).trim();
  if (before === '' || before === '=') {
    const isCheck = item.kind === 'formula' && item.row.kind === 'check';
    return call || isCheck || !item.unit ? undefined : typeOfUnit(item.unit);
  }
  const side = /^(.*?)(?:[+\-−]|<>|<=|>=|[<>=≤≥≠])$/su.exec(before)?.[1];
  if (side === undefined) return undefined;
  // Of `demand <= a + ` only what follows the comparison is added to.
  const term = afterComparison(side);
  const whole = term.trim() === '' ? side : term;
  const type = notebook.typeInPlace(item.id, whole);
  return type.kind === 'unknown' || (type.kind === 'number' && type.zero) ? undefined : type;
}

/** What follows the last comparison of a text that is not within parentheses; all of it where there is none. */
function afterComparison(text: string): string {
  let depth = 0;
  let from = 0;
  for (const { index, 0: sign } of text.matchAll(/"(?:[^"]|"")*"|[()]|<>|<=|>=|[<>=≤≥≠]/gu)) {
    if (sign === '(') depth += 1;
    else if (sign === ')') depth -= 1;
    else if (depth === 0 && !sign.startsWith('"')) from = index + sign.length;
  }
  return text.slice(from);
}

/** Whether a value of one type may stand where the other is wanted. */
export function fitsWanted(type: Type, wanted: Type | undefined): boolean {
  if (!wanted) return false;
  if (type.kind === 'number' && wanted.kind === 'number')
    return type.dimension.key === wanted.dimension.key && type.angle === wanted.angle;
  if (type.kind === 'point' && wanted.kind === 'point') return type.of === wanted.of;
  return type.kind === wanted.kind && type.kind !== 'unknown';
}
