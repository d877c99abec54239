import { type Problem, problem } from '../../../diagnostics/index.ts';
import type { Book } from '../../../document/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { findPlace } from '../find-place.ts';

/**
 * What keeps one copied cell from being pasted over all that is selected: a table's cells with its headings, its title or
 * anything beside it, of which nobody can say whether they are meant too. Undefined where it goes into each of them.
 */
export function selectedUnlike(
  book: Book,
  selected: readonly (readonly CellPlace[])[],
  cells: readonly (readonly string[])[],
): Problem | undefined {
  const places = selected.flat();
  const isOne = cells.length === 1 && cells[0]?.length === 1;
  if (!isOne || places.length < 2) return undefined;
  const kinds = new Set(places.map((place) => kindOf(book, place)));
  if (kinds.size === 1 && !kinds.has(HEADING)) return undefined;
  return problem('paste-over-unlike', { from: 0, to: 0 }, { count: places.length });
}

const HEADING = 'heading';
const OUTSIDE = 'outside';

/** The table whose cell is at a place, or what else is there. */
function kindOf(book: Book, place: CellPlace): string {
  const found = findPlace(book, place);
  if (found?.kind === 'cell') return `cell of ${found.part.id}`;
  const heads = found?.part.kind === 'table' && (found.kind === 'title' || place.item === 'head');
  return heads ? HEADING : OUTSIDE;
}
