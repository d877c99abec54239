import type { Book } from '../../../document/index.ts';
import { findPlace } from '../../editing/find-place.ts';
import type { CellPlace } from '../../view-model/place.ts';
import type { MenuSubject } from './quay-sheet-menu.ts';

/** What the menu at a place is about; opened at the foot of a block it is about what may stand there. */
export function subjectAt(book: Book, place: CellPlace, below?: HTMLElement): MenuSubject {
  if (below?.dataset.subject === 'foot') return 'foot';
  const found = findPlace(book, place);
  switch (found?.kind) {
    case 'cell':
      return 'table row';
    case 'column':
      if (found.column.kind === 'calc') return place.item === 'head' ? 'calculated column' : 'calculation';
      return place.item === 'head' ? 'column' : 'line';
    case 'prose':
      return 'prose';
    case 'title':
      return found.part.kind === 'rows' ? 'part' : found.part.kind;
    case 'row':
      return found.row.kind === 'calc' ? 'calculation' : 'line';
    case undefined:
      return 'line';
  }
}
