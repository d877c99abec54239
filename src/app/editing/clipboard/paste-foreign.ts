import { fail, type Outcome, problem, succeed } from '../../../diagnostics/index.ts';
import type { Book, Edit } from '../../../document/index.ts';
import { findSheet, freshFor } from '../../../document/index.ts';
import type { Notebook } from '../../../notebook/index.ts';
import type { UnitsView } from '../../../record/index.ts';
import { withoutApostrophes } from '../../../tables/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { entryFromScreen } from '../cells/carry-unit.ts';
import { enterText } from '../cells/cell-edits.ts';
import { targetsAt } from '../cells/state-target.ts';
import { isValue } from '../cells/state-value.ts';
import { findPlace } from '../find-place.ts';
import { insertionLabel } from '../lines/describe-insertion.ts';
import { type Change, insertRows } from '../lines/line-edits.ts';
import { accountNumbers } from './account.ts';
import { readCells } from './clipboard-text.ts';
import { linesFromText } from './lines-from-text.ts';
import { pasteOntoLines } from './paste-cells.ts';
import { unclearNumber } from './unclear-number.ts';

const nowhere = { from: 0, to: 0 };

/**
 * What becomes of a text from elsewhere that is pasted onto lines or words: one cell goes into the cells `selected`, as
 * many cells as are selected go into these, and descriptions with values become new lines below. All else is refused
 * whole. `place` is undefined on a sheet that has nothing yet.
 */
export function pasteForeign(
  notebook: Notebook,
  sheet: string,
  selected: readonly (readonly CellPlace[])[],
  view: UnitsView,
  text: string,
): Outcome<Change> {
  const { book } = notebook;
  const place = selected[0]?.[0];
  const found = place && findPlace(book, place);
  if (place && found?.kind === 'prose') return changed(enterText(book, place, text));
  const cells = readCells(text);
  const [[one = ''] = [], ...below] = cells;
  const many = selected.length > 1 || (selected[0]?.length ?? 0) > 1;
  const single = below.length === 0 && cells[0]?.length === 1;
  if (place && (single || many)) return changed(overSelected(notebook, selected, view, cells));
  const asLines = newLines(notebook, sheet, place, cells);
  if (asLines) return asLines;
  const facts = { rows: cells.length, columns: cells[0]?.length ?? 1, text: one };
  return fail(problem(place ? 'paste-no-place' : 'paste-on-nothing', nowhere, facts));
}

function overSelected(
  notebook: Notebook,
  selected: readonly (readonly CellPlace[])[],
  view: UnitsView,
  cells: readonly (readonly string[])[],
): Outcome<Edit> {
  const { book } = notebook;
  const height = cells.length;
  const width = cells[0]?.length ?? 1;
  const typed: string[][] = [];
  for (const [down, row] of selected.entries()) {
    const texts: string[] = [];
    for (const [right, target] of row.entries()) {
      const text = cells[down % height]?.[right % width] ?? '';
      // A value is stated there; any other words are neither that nor a formula.
      const isText = !text.trim().startsWith('=') && !isValue(notebook, text);
      const refused = isCalculated(book, target) && (isText || targetsAt(book, target).length === 0);
      if (refused) return fail(problem('set-calculated', nowhere, { name: nameAt(book, target) }));
      const unclear = target.field === 'value' ? unclearNumber(text) : undefined;
      if (unclear) return fail(unclear);
      const typed = target.field === 'value' ? withoutApostrophes(text.trim()) : text;
      texts.push(entryFromScreen(notebook, target, view, typed));
    }
    typed.push(texts);
  }
  const even = selected.length % height === 0 && selected.every((row) => row.length % width === 0);
  return even
    ? pasteOntoLines(notebook, selected, { cells: typed }, view)
    : fail(problem('paste-no-place', nowhere, { rows: height, columns: width, text: cells[0]?.[0] ?? '' }));
}

/** The change that puts descriptions with values below a place as new lines; undefined where the cells are none of that. */
function newLines(
  { book, model }: Notebook,
  key: string,
  place: CellPlace | undefined,
  cells: readonly (readonly string[])[],
): Outcome<Change> | undefined {
  const sheet = findSheet(book, key);
  if (!sheet) return undefined;
  const fresh = freshFor(book, sheet);
  const read = linesFromText(cells, model.registry, fresh);
  if (!read) return undefined;
  const unclear = cells.flatMap(([, value = '']) => unclearNumber(value) ?? [])[0];
  if (unclear) return fail(unclear);
  const account = accountNumbers({ heading: read.headings, taken: read.cells });
  const label = insertionLabel('paste', read.rows.length, { what: 'line', account });
  const change = insertRows(book, key, place, read.rows, fresh, label);
  return change && succeed(change);
}

function isCalculated(book: Book, place: CellPlace): boolean {
  const found = findPlace(book, place);
  return place.field === 'value' && (found?.kind === 'row' || found?.kind === 'column')
    ? ['calc', 'check', 'series'].includes((found.kind === 'row' ? found.row : found.column).kind)
    : false;
}

function nameAt(book: Book, place: CellPlace): string {
  const found = findPlace(book, place);
  if (found?.kind === 'row') return found.row.name;
  return found?.kind === 'column' ? found.column.name : place.item;
}

function changed(edit: Outcome<Edit>): Outcome<Change> {
  return edit.ok ? succeed({ edit: edit.value }) : edit;
}
