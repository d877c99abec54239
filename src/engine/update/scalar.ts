import { compileThunk } from '../compute/compiler.ts';
import type { World } from '../compute/context.ts';
import type { ScalarCell } from '../store/cells.ts';

/** Computes a scalar again; whether its value, or the reason it has none, may have changed. */
export function updateScalar(cell: ScalarCell, world: World): boolean {
  const { content, slot } = cell;
  if (content.kind !== 'formula') return true;
  const { formula } = content;
  formula.epoch += 1;
  formula.thunk ??= compileThunk(world, formula);
  const after = formula.thunk();
  const { values } = world.slots;
  // A value missing before and after counts as changed: the reason may be another.
  if (values[slot] === after) return false;
  values[slot] = after;
  return true;
}
