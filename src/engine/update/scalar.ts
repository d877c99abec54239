import { compileThunk } from '../compute/compiler.ts';
import type { World } from '../compute/context.ts';
import type { ScalarCell } from '../store/cells.ts';

/** Computes a scalar again; whether its value, or the reason it has none, may have changed. */
export function updateScalar(cell: ScalarCell, world: World): boolean {
  const thunk = cell.thunk ?? firstThunk(cell, world);
  if (!thunk) return true;
  const after = thunk();
  const { values } = world.slots;
  // A value missing before and after counts as changed: the reason may be another.
  if (values[cell.slot] === after) return false;
  values[cell.slot] = after;
  return true;
}

function firstThunk(cell: ScalarCell, world: World): ScalarCell['thunk'] {
  if (cell.content.kind === 'formula') cell.thunk = compileThunk(world, cell.content.formula);
  return cell.thunk;
}
