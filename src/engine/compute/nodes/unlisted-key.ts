import { nearest, problem } from '../../../diagnostics/index.ts';
import type { CallNode, Typed } from '../../../language/index.ts';
import type { ColumnCell, ScalarCell } from '../../store/cells.ts';
import { type Cause, type CauseFinder, ownFault } from '../cause.ts';

/** Of a list with more rows than this the nearest key is not looked for. */
const LONGEST = 1000;
/** So many keys are named where none is near. */
const NAMED = 4;

/**
 * That a key stands in no row. Where the key is entered, the remedy lies there: the formula waits for it, and every other one
 * that looks for the same key waits for the same place.
 */
export function unlistedKey(node: CallNode, keys: Float64Array, finder: CauseFinder): Cause {
  const [key, list] = node.args;
  if (!key || !list) throw new Error(`${node.fn.name} looks for no key`);
  const value = finder.value(key);
  const place = placeOf(key, finder);
  const isEntered = place?.cell.content.kind === 'given';
  const texts = textsOf(list, keys, finder);
  const shown = (si: number): string => finder.shown(si, key);
  const isLong = texts !== undefined && keys.length > LONGEST;
  const near = isLong
    ? undefined
    : texts
      ? nearest(finder.textOf(value).trim(), texts, 1)[0]
      : shown(nearestNumber(value, keys));
  const facts = {
    row: null,
    argument: finder.written(key),
    value: shown(value),
    list: finder.written(list),
    nearest: near === undefined ? '' : texts ? `"${near}"` : near,
    some: near === undefined && texts ? texts.slice(0, NAMED).map((one) => `"${one}"`) : [],
    more: near === undefined && texts ? Math.max(0, keys.length - NAMED) : 0,
    ...(place &&
      isEntered && { entered: place.cell.id, enteredRow: place.row === undefined ? null : place.row + 1 }),
  };
  return ownFault(problem('key-not-found', key, facts), isEntered ? 'waiting' : 'problem');
}

/** The line, or the column and its row, that a part is and nothing more. */
function placeOf(
  node: Typed,
  finder: CauseFinder,
): { readonly cell: ScalarCell | ColumnCell; readonly row?: number } | undefined {
  if (node.kind !== 'cell') return undefined;
  const [table] = node.type.axes;
  if (table === undefined) return { cell: finder.scalar(node.id) };
  const cell = finder.column(node.id, table.table);
  return { cell, row: cell.table.row };
}

/** The texts of the first rows as they were typed, where they can be told; undefined of a column of numbers. */
function textsOf(list: Typed, keys: Float64Array, finder: CauseFinder): readonly string[] | undefined {
  if (list.type.kind !== 'text') return undefined;
  const [axis] = list.type.axes;
  const codes = list.kind === 'column' && axis ? finder.column(list.id, axis.table).values : keys;
  return [...codes.subarray(0, LONGEST)].filter((code) => !Number.isNaN(code)).map(finder.textOf);
}

function nearestNumber(value: number, keys: Float64Array): number {
  return keys.reduce((best, one) => (Math.abs(one - value) < Math.abs(best - value) ? one : best));
}
