import type { Typed } from '../language/index.ts';
import { compileThunk, elementCompiler } from './compute/compiler.ts';
import type { World } from './compute/context.ts';
import { freshSpace, sizeOf } from './compute/space.ts';
import { prepare, runInto } from './compute/stream.ts';
import type { Place } from './edits.ts';
import type { Explainer } from './explain/explainer.ts';
import { decodeValue, type Reading } from './read.ts';
import { absentColumn, absentScalar, newFormula } from './store/cells.ts';

/**
 * Where a formula is tried: the row (from 0) matters where it is a column's; `element` is the one of a table (from 0) for
 * a part of a formula that runs over whole columns.
 */
export interface TrialPlace extends Place {
  readonly row?: number;
  readonly element?: { readonly table: string; readonly at: number };
}

/**
 * What a checked formula would come to, computed against the values as they stand. No cell is made or changed, so
 * nothing depends on it; a formula that reads its own place reads the old value there.
 */
export function tryFormula(world: World, explainer: Explainer, typed: Typed, place: TrialPlace): Reading {
  const { content, compute } = readyIn(world, typed, place);
  const cell = content.formula.table ? absentColumn('', -1, content.formula.table) : absentScalar('', -1);
  cell.content = content;
  const value = compute();
  if (Number.isNaN(value))
    return explainer.reason(cell, content.formula.table ? (place.row ?? 0) : undefined);
  return { status: 'ok', value: decodeValue(value, content.holds, world.texts) };
}

/**
 * What a part of a formula that runs over the whole columns of a table comes to in each row of it: truth 1 or 0, texts
 * by code, NaN without a value.
 */
export function tryElements(
  world: World,
  typed: Typed,
  { text, table: name, row = 0 }: TrialPlace,
): Float64Array {
  const table = name === undefined ? undefined : world.table(name);
  const { formula } = newFormula(typed, text, table);
  const space = freshSpace(typed.type.axes, world.table);
  const program = elementCompiler(world, formula).program(typed, space, 0);
  const values = new Float64Array(sizeOf(space));
  const before = table?.row ?? 0;
  if (table) table.row = row;
  prepare(program);
  runInto(program.stream, 0, values.length, values, 0);
  if (table) table.row = before;
  return values;
}

/** A formula ready to be computed in its place, and there for one row of a table that it runs over. */
function readyIn(world: World, typed: Typed, { text, table: name, row = 0, element }: TrialPlace) {
  const table = name === undefined ? undefined : world.table(name);
  const content = newFormula(typed, text, table);
  const thunk = compileThunk(world, content.formula);
  const across = element && world.table(element.table);
  const compute = (): number => {
    const [ownRow, fresh] = [table?.row ?? 0, across?.fresh ?? 0];
    if (table) table.row = row;
    if (across) across.fresh = element.at;
    const value = thunk();
    if (across) across.fresh = fresh;
    if (table) table.row = ownRow;
    return value;
  };
  return { content, compute };
}
