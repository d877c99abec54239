import type { Typed } from '../language/index.ts';
import { compileThunk } from './compute/compiler.ts';
import type { World } from './compute/context.ts';
import type { Place } from './edits.ts';
import type { Explainer } from './explain/explainer.ts';
import { decoded, type Reading } from './read.ts';
import { absentColumn, absentScalar, newFormula } from './store/cells.ts';

/** Where a formula is tried: the row (from 0) matters where it is a column's. */
export interface TrialPlace extends Place {
  readonly row?: number;
}

/**
 * What a checked formula would come to, computed against the values as they stand. No cell is made or changed, so
 * nothing depends on it; a formula that reads its own place reads the old value there.
 */
export function tryFormula(world: World, explainer: Explainer, typed: Typed, place: TrialPlace): Reading {
  const table = place.table === undefined ? undefined : world.table(place.table);
  const content = newFormula(typed, place.text, table);
  const { formula, holds } = content;
  const cell = table ? absentColumn('', -1, table) : absentScalar('', -1);
  cell.content = content;
  const row = table ? (place.row ?? 0) : undefined;
  const before = table?.row ?? 0;
  if (table) table.row = row ?? 0;
  const value = compileThunk(world, formula)();
  if (table) table.row = before;
  if (Number.isNaN(value)) return explainer.reason(cell, row);
  return { status: 'ok', value: decoded(value, holds, world.texts) };
}
