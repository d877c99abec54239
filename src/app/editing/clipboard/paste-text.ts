import { fail, type Outcome, problem, succeed } from '../../../diagnostics/index.ts';
import { type Column, cellOf, type Edit, type Table } from '../../../document/index.ts';
import { type Notebook, tryCells } from '../../../notebook/index.ts';
import type { UnitsView } from '../../../record/index.ts';
import {
  type Mapping,
  namedMapping,
  readMapped,
  type TableText,
  unguardText,
  withoutApostrophes,
} from '../../../tables/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { entryFromScreen } from '../cells/carry-unit.ts';
import { putText } from '../cells/put-text.ts';
import { findPlace } from '../find-place.ts';
import { accountWords } from './account.ts';
import type { Extent } from './block.ts';
import { readCells } from './clipboard-text.ts';
import { isLongText } from './long-text.ts';
import { onScreenMapping } from './on-screen-mapping.ts';
import { isOfOthers } from './other-columns.ts';
import { pasteIntoTable } from './paste-cells.ts';
import { isStatedColumn, pasteStated } from './paste-stated.ts';
import { pastedText } from './pasted-text.ts';
import { putRows } from './put-rows.ts';

/** What a text pasted into a table leads to: an edit, or the dialog that asks what its columns and numbers mean. */
export type TextPaste = { readonly kind: 'edit'; readonly edit: Edit } | { readonly kind: 'ask' };

const ASK: Outcome<TextPaste> = { ok: true, value: { kind: 'ask' } };

/**
 * What becomes of a text from elsewhere that is pasted into a table, onto a cell, a heading or the title. One cell goes
 * into the cells selected. A long text is asked of. Rows under headings that all name columns go there, and one column of cells goes below its
 * place, as the units on the screen have it. Whatever else it is, and whatever there is to point out, is asked.
 */
export function pasteText(
  notebook: Notebook,
  place: CellPlace,
  view: UnitsView,
  text: string,
  over: Extent = { rows: 1, columns: 1 },
): Outcome<TextPaste> {
  const found = findPlace(notebook.book, place);
  const part = tableAt(notebook, place);
  // The dialog reads a long one beside the page.
  if (isLongText(text) && text.includes('\n')) return ASK;
  const parted = pastedText(text, part.columns, notebook.model.registry);
  if (!parted.ok) return parted;
  const { text: rows, doubtful } = parted.value;
  const target = found?.kind === 'cell' || found?.kind === 'column' ? found.column : undefined;
  const first = found?.kind === 'cell' ? found.row : 0;
  const put = (mapping: Mapping): Outcome<TextPaste> => {
    const shown = onScreenMapping(notebook, { sheet: place.sheet, table: part, view }, mapping);
    const edit = plainly(notebook, place.sheet, part, rows, shown, first);
    return edit ? succeed({ kind: 'edit', edit }) : ASK;
  };
  const [[one = '', ...beside] = [], ...under] = readCells(text);
  const single = beside.length === 0 && under.length === 0;
  if (found?.kind !== 'cell' && single) return edited(putText(notebook, place, one.trim()));
  if (!target) return ASK;
  const named = namedMapping(rows, part.columns);
  if (named.goes.size > 0 && rows.rows.length > 1) return put(named);
  if (doubtful && !(single && !isNumeric(target))) return ASK;
  if (found?.kind === 'cell' && target.kind === 'calc') {
    const cells = readCells(text);
    if (isStatedColumn(notebook, place, { cells }))
      return edited(pasteStated(notebook, place, view, { cells }, over));
  }
  if (target.kind !== 'given')
    return fail(problem('set-calculated', { from: 0, to: 0 }, { name: target.name }));
  if (single) {
    const read = isNumeric(target) ? readPlainly(rows, part, target) : unguardText(one.trim());
    if (read === undefined) return ASK;
    const typed = read;
    const cells = [[entryFromScreen(notebook, place, view, typed)]];
    return edited(pasteIntoTable(notebook, place, { cells }, over));
  }
  if (rows.rows.some(({ cells }) => cells.length > 1)) return ASK;
  const heading = isNumeric(target) ? !readsTop(notebook, place, target, rows) : found?.kind !== 'cell';
  return heading ? ASK : below(notebook, place, view, target, rows, text);
}

/** A cell from elsewhere as a column of numbers takes it; undefined where something is to be asked. */
function readPlainly(rows: TableText, part: Table, column: Column): string | undefined {
  const read = readMapped(rows, part.columns, oneColumn(column));
  return read.ok && read.value.decimal === 'point'
    ? `${read.value.cells[column.name]?.[0] ?? ''}`
    : undefined;
}

/**
 * One column of cells below a place, each where it stands. A blank one among numbers or options may be a gap of the text: where
 * it would take an entry away, it is asked.
 */
function below(
  notebook: Notebook,
  place: CellPlace,
  view: UnitsView,
  column: Column,
  rows: TableText,
  text: string,
): Outcome<TextPaste> {
  const table = tableAt(notebook, place);
  const check = tryCells(notebook, `${place.sheet}.${table.name}`);
  const entered = (cell: string): string => entryFromScreen(notebook, place, view, cell);
  const read = readMapped(rows, table.columns, oneColumn(column), {
    // A bare number is one in the unit shown.
    check: (name, cell) => check(name, cell === null ? null : entered(`${cell}`)),
    notes: 'in',
  });
  if (!read.ok || (isNumeric(column) && read.value.decimal === 'comma')) return ASK;
  const words = !isNumeric(column);
  // The cells as read have none for rows that are blank.
  const taken = [...(read.value.cells[column.name] ?? [])].reverse();
  const cells = readCells(text).map(([cell = '']) => [
    entered(words ? unguardText(cell) : cell.trim() === '' ? '' : `${taken.pop() ?? cell}`),
  ]);
  const first = rowOf(notebook, place);
  const isLost = ([cell = '']: readonly string[], down: number): boolean =>
    cell.trim() === '' && column.kind === 'given' && cellOf(column, first + down) !== null;
  if ((!words || isChoice(column)) && cells.some(isLost)) return ASK;
  const filled = cells.flat().filter((cell) => cell.trim() !== '');
  const marked = filled.filter((cell) => check(column.name, cell.trim()) !== undefined).length;
  const account = accountWords({ taken: filled.length - marked, marked }, read.value.problems);
  return edited(pasteIntoTable(notebook, place, { cells }, undefined, account));
}

/** The edit that takes rows as a mapping says; undefined where anything at all is to be asked or pointed out. */
function plainly(
  notebook: Notebook,
  sheet: string,
  part: Table,
  text: TableText,
  mapping: Mapping,
  row: number,
): Edit | undefined {
  const check = tryCells(notebook, `${sheet}.${part.name}`);
  const read = readMapped(text, part.columns, mapping, { check });
  if (!read.ok || read.value.problems.some(({ code }) => !TOLD.includes(code))) return undefined;
  // What other columns hold would come to be of items that it was not entered for.
  if (isOfOthers(part, read.value, row)) return undefined;
  const account = read.account ? accountWords(read.account.counts, read.value.problems) : '';
  return putRows(sheet, part, read.value, { kind: 'from', row }, account);
}

/** What is told of rows that are taken, and needs no question. */
const TOLD: readonly string[] = ['cell-unread', 'columns-calculated-anew'];

const oneColumn = ({ name }: Column): Mapping => ({
  headed: false,
  goes: new Map([[0, { kind: 'column', name, unit: '' }]]),
});

/** Whether a column of numbers reads the first of some cells; else that may be a heading. */
function readsTop(notebook: Notebook, place: CellPlace, column: Column, { top }: TableText): boolean {
  const first = withoutApostrophes(top.cells[0]?.trim() ?? '');
  const check = tryCells(notebook, `${place.sheet}.${tableAt(notebook, place).name}`);
  return first === '' || check(column.name, first)?.severity !== 'error';
}

function tableAt({ book }: Notebook, place: CellPlace): Table {
  const part = findPlace(book, place)?.part;
  if (part?.kind !== 'table') throw new Error('a text is pasted into a table at a place in one');
  return part;
}

function edited(edit: Outcome<Edit>): Outcome<TextPaste> {
  return edit.ok ? succeed({ kind: 'edit', edit: edit.value }) : edit;
}

/** The row, from 0, of a place in a table; the first of a heading. */
function rowOf({ book }: Notebook, place: CellPlace): number {
  const found = findPlace(book, place);
  return found?.kind === 'cell' ? found.row : 0;
}

const isChoice = (column: Column): boolean => column.kind === 'given' && column.options !== undefined;

const isNumeric = (column: Column): boolean =>
  column.kind === 'given' && (column.type ?? 'number') === 'number';
