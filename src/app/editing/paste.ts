import { fail, type Outcome, problem, succeed } from '../../diagnostics/index.ts';
import {
  type Book,
  type Cell,
  type Edit,
  insertTableRows,
  joinEdits,
  setCells,
} from '../../document/index.ts';
import { columnWords } from '../../tables/index.ts';
import type { CellPlace } from '../session/place.ts';
import { cellFromText, cellOf } from './cell-content.ts';
import { enterText } from './cell-edits.ts';
import { findPlace } from './find-place.ts';
import { putInLabel } from './put-in.ts';

/** Gives the cell that lies `down` rows and `right` cells from the one the paste began at. */
export type Neighbour = (down: number, right: number) => CellPlace | undefined;

/** Whether the cells come from Quaybook (formulas as they are) or from elsewhere (formulas begin with `=`). */
export type Origin = 'own' | 'foreign';

/**
 * The edit that puts a block of cells onto the page from a place on. On a table it grows the table past its end;
 * on lines each cell goes into the line as far below. A cell that takes no such text refuses the whole.
 */
export function pasteCells(
  book: Book,
  place: CellPlace,
  cells: readonly (readonly string[])[],
  neighbour: Neighbour,
  origin: Origin,
): Outcome<Edit> {
  const found = findPlace(book, place);
  if (found?.kind === 'cell') return pasteIntoTable(place, found, cells);
  const edits: Edit[] = [];
  for (const [down, row] of cells.entries()) {
    for (const [right, text] of row.entries()) {
      const target = neighbour(down, right);
      if (!target) continue;
      const refused = origin === 'foreign' && isCalculated(book, target) && !text.trim().startsWith('=');
      if (refused) return fail(problem('set-calculated', nowhere, { name: nameAt(book, target) }));
      const edit = enterText(book, target, text);
      if (!edit.ok) return edit;
      edits.push(edit.value);
    }
  }
  return succeed(joinEdits(edits.length === 1 ? 'paste a cell' : `paste ${edits.length} cells`, edits));
}

const nowhere = { from: 0, to: 0 };

function isCalculated(book: Book, place: CellPlace): boolean {
  const found = findPlace(book, place);
  return place.field === 'value' && (found?.kind === 'row' || found?.kind === 'column')
    ? 'formula' in (found.kind === 'row' ? found.row : found.column)
    : false;
}

function nameAt(book: Book, place: CellPlace): string {
  const found = findPlace(book, place);
  if (found?.kind === 'row') return found.row.name;
  return found?.kind === 'column' ? found.column.name : place.item;
}

function pasteIntoTable(
  place: CellPlace,
  { part, row, column }: Extract<ReturnType<typeof findPlace>, { kind: 'cell' }>,
  cells: readonly (readonly string[])[],
): Outcome<Edit> {
  const length = part.length ?? 0;
  const at = { sheet: place.sheet, table: part.id };
  const first = part.columns.indexOf(column);
  const width = Math.max(...cells.map((one) => one.length));
  const edits: Edit[] = [];
  const grown = row + cells.length - length;
  if (grown > 0) edits.push(insertTableRows(at, part, length, { length: grown, cells: {} }));
  for (let right = 0; right < width; right += 1) {
    const target = part.columns[first + right];
    if (!target) break;
    if (target.kind !== 'given') {
      const facts = { position: right + 1, column: columnWords(target) };
      return fail(problem('paste-calculated', nowhere, facts));
    }
    // A row that ends before leaves what is there.
    const values: Cell[] = cells.map((one, down) => {
      const text = one[right];
      return text === undefined ? cellOf(target, row + down) : cellFromText(text, target);
    });
    edits.push(setCells({ ...at, column: target.id }, row, values));
  }
  const one = cells.length === 1 && width === 1;
  return succeed(
    joinEdits(one ? 'paste a cell' : putInLabel('paste', cells.length, Math.max(0, grown)), edits),
  );
}
