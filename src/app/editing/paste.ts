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
import { carried, unitOfBareNumbers } from './carried-unit.ts';
import { cellFromText, cellOf } from './cell-content.ts';
import { enterText } from './cell-edits.ts';
import type { CopiedCells } from './clipboard-text.ts';
import { findPlace } from './find-place.ts';
import { putInLabel } from './put-in.ts';

/** Gives the cell that lies `down` rows and `right` cells from the one the paste began at. */
export type Neighbour = (down: number, right: number) => CellPlace | undefined;

/** Cells to be pasted, and where they come from. */
export interface Pasted {
  readonly cells: readonly (readonly string[])[];
  /** The units of their numbers without one, as far as known. */
  readonly units?: CopiedCells['units'];
  /** The unit of a number without one that goes to a place, where it is not known from where it comes. */
  readonly unitAt?: (place: CellPlace) => string | undefined;
  /** Whether they come from Quaybook (formulas as they are) or from elsewhere (formulas begin with `=`). */
  readonly origin: 'own' | 'foreign';
}

/**
 * The edit that puts a block of cells onto the page from a place on; a number comes with its unit to a place that has
 * another. On a table it grows the table past its end; on lines each cell goes into the line as far below. A cell that
 * takes no such text refuses the whole.
 */
export function pasteCells(
  book: Book,
  place: CellPlace,
  pasted: Pasted,
  neighbour: Neighbour,
): Outcome<Edit> {
  const { cells, origin } = pasted;
  const found = findPlace(book, place);
  if (found?.kind === 'cell') return pasteIntoTable(place, found, pasted);
  const edits: Edit[] = [];
  for (const [down, row] of cells.entries()) {
    for (const [right, text] of row.entries()) {
      const target = neighbour(down, right);
      if (!target) continue;
      const refused = origin === 'foreign' && isCalculated(book, target) && !text.trim().startsWith('=');
      if (refused) return fail(problem('set-calculated', nowhere, { name: nameAt(book, target) }));
      const to = unitOfBareNumbers(book, target);
      const edit = enterText(book, target, carried(text, unitFrom(pasted, down, right, target), to));
      if (!edit.ok) return edit;
      edits.push(edit.value);
    }
  }
  return succeed(joinEdits(edits.length === 1 ? 'paste a cell' : `paste ${edits.length} cells`, edits));
}

function unitFrom(
  { units, unitAt }: Pasted,
  down: number,
  right: number,
  target: CellPlace,
): string | undefined {
  return units?.[down]?.[right] ?? unitAt?.(target);
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
  pasted: Pasted,
): Outcome<Edit> {
  const { cells } = pasted;
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
      if (text === undefined) return cellOf(target, row + down);
      const to = (target.type ?? 'number') === 'number' ? target.unit : undefined;
      const goes = { ...place, field: target.id };
      return cellFromText(carried(text, unitFrom(pasted, down, right, goes), to), target);
    });
    edits.push(setCells({ ...at, column: target.id }, row, values));
  }
  const one = cells.length === 1 && width === 1;
  return succeed(
    joinEdits(one ? 'paste a cell' : putInLabel('paste', cells.length, Math.max(0, grown)), edits),
  );
}
