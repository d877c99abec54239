import type { Book, CalcColumn, Method, Row, SeriesColumn } from '../../../document/index.ts';
import { methodByChoice, methodInForce, type Notebook } from '../../../notebook/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { findPlace } from '../find-place.ts';

/**
 * The place with the method it is about: of a line with methods the one it names, else the one in force there. Resolved when an edit begins, so
 * that what is typed goes into that method whatever is chosen meanwhile.
 */
export function placeInForce(notebook: Notebook, place: CellPlace): CellPlace {
  if (place.method !== undefined) return place;
  const found = findPlace(notebook.book, place);
  if (found?.kind !== 'row' && found?.kind !== 'column' && found?.kind !== 'cell') return place;
  const line = found.kind === 'row' ? found.row : found.column;
  if (line.kind !== 'calc' || !line.methods) return place;
  const id = found.kind === 'row' ? line.name : `${found.part.name}.${line.name}`;
  const row = found.kind === 'cell' ? found.row : undefined;
  const used = methodInForce(notebook, `${place.sheet}.${id}`, row);
  return used ? { ...place, method: used.method.id } : place;
}

/** The method that a place of a line is about: the one it names, else the one that a choice has in force. */
export function methodAtPlace(
  book: Book,
  place: CellPlace,
  line: Row | CalcColumn | SeriesColumn,
): Method | undefined {
  if (line.kind !== 'calc' || !line.methods) return undefined;
  if (place.method !== undefined) return line.methods.find(({ id }) => id === place.method);
  const found = findPlace(book, place);
  const table = found && found.kind !== 'row' && found.part.kind === 'table' ? found.part.name : undefined;
  return methodByChoice(book, line, place.sheet, table);
}
