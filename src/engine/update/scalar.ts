import { compileThunk } from '../compute/compiler.ts';
import type { World } from '../compute/context.ts';
import type { Thunk } from '../compute/stream.ts';
import type { Scalars } from '../store/cell-store.ts';
import type { ScalarCell } from '../store/cells.ts';

/** Looks at a scalar that has no thunk yet; whether its value, or the reason it has none, may have changed. */
export function updateScalar({ content, index }: ScalarCell, world: World): boolean {
  // What is given has its value already.
  if (content.kind !== 'formula') return true;
  const thunk = compileThunk(world, content.formula);
  world.scalars.thunks[index] = thunk;
  return compute(thunk, index, world.scalars);
}

/** Computes a scalar by its thunk; whether its value, or the reason it has none, may have changed. */
export function compute(thunk: Thunk, index: number, { values }: Scalars): boolean {
  const after = thunk();
  // A value missing before and after counts as changed: the reason may be another.
  if (values[index] === after) return false;
  values[index] = after;
  return true;
}
