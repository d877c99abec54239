import type { Item, Notebook } from '../../../notebook/index.ts';
import { findPlace } from '../../editing/find-place.ts';
import type { CellPlace } from '../../view-model/place.ts';

/** The line or column that a cell belongs to, if it belongs to one. */
export function itemOfPlace({ book, model }: Notebook, place: CellPlace): Item | undefined {
  const found = findPlace(book, place);
  if (found?.kind === 'row') return model.items.get(`${place.sheet}.${found.row.name}`);
  if (found?.kind !== 'column' && found?.kind !== 'cell') return undefined;
  return model.items.get(`${place.sheet}.${found.part.name}.${found.column.name}`);
}
