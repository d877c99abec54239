import { referencesOf } from '../language/index.ts';
import type { RecheckProgram } from './program.ts';

/** The side of a check stands beside it and is told with it. */
const SIDE = '#';

/** The calculated lines and columns that depend on any of these, in the order of the program. */
export function restingOn(ids: Iterable<string>, { cells }: RecheckProgram): readonly string[] {
  const readers = new Map<string, string[]>();
  for (const cell of cells) {
    if (cell.kind !== 'formula') continue;
    for (const source of referencesOf(cell.tree)) {
      const known = readers.get(source);
      if (known) known.push(cell.id);
      else readers.set(source, [cell.id]);
    }
  }
  const first = new Set(ids);
  const reached = new Set(first);
  for (const id of reached) for (const reader of readers.get(id) ?? []) reached.add(reader);
  return cells.flatMap(({ id }) => (reached.has(id) && !first.has(id) && !id.includes(SIDE) ? [id] : []));
}
