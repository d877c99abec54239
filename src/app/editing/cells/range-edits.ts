import {
  type Book,
  type Cell,
  cellOf,
  type Edit,
  joinEdits,
  type Statement,
  setCells,
} from '../../../document/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { type GatheredCells, gatherCells } from '../clipboard/gather-cells.ts';
import { findPlace } from '../find-place.ts';
import { carryStatement } from './carry-reason.ts';
import { carryUnit } from './carry-unit.ts';
import { cellContent } from './cell-content.ts';
import { enterFormula, enterText } from './cell-edits.ts';
import { statedAt, statementEdit, targetsAt, unstateEdit } from './state-target.ts';

/**
 * The edit that empties cells: entries, formulas, descriptions, references, units. Symbols stay, and where a value is
 * stated the computed one comes back.
 */
export function clearCells(book: Book, rows: readonly (readonly CellPlace[])[]): Edit | undefined {
  const edits: Edit[] = [];
  const columns = new Map<
    string,
    { readonly place: CellPlace; readonly column: string; from: number; to: number }
  >();
  const statements = gatherCells(book);
  let back = 0;
  for (const place of rows.flat()) {
    const found = findPlace(book, place);
    if (!found || cellContent(book, place).kind === 'name') continue;
    const unstated = unstateEdit(book, place);
    if (unstated) {
      back += 1;
      if (!statements.take(place, undefined)) edits.push(unstated);
      continue;
    }
    if (found.kind === 'cell') {
      if (found.column.kind !== 'given') continue;
      const key = `${place.part}/${found.column.id}`;
      const span = columns.get(key);
      if (span) [span.from, span.to] = [Math.min(span.from, found.row), Math.max(span.to, found.row)];
      else columns.set(key, { place, column: found.column.id, from: found.row, to: found.row });
      continue;
    }
    if (cellContent(book, place).text === '') continue;
    const edit = enterText(book, place, '');
    if (edit.ok) edits.push(edit.value);
  }
  for (const { place, column, from, to } of columns.values()) {
    const at = { sheet: place.sheet, table: place.part, column };
    edits.push(setCells(at, from, new Array<Cell>(to - from + 1).fill(null)));
  }
  edits.push(...statements.edits());
  if (edits.length === 0) return undefined;
  const [only] = edits;
  if (edits.length === 1 && back === 1 && only) return only;
  if (back > 0 && edits.every(({ patches }) => patches.every(({ at }) => at.at(-1) === 'stated')))
    return joinEdits(`use ${back} computed values`, edits);
  return joinEdits(edits.length === 1 ? 'clear a cell' : `clear ${edits.length} cells`, edits);
}

/**
 * The edit that fills each cell of a range with what its first row holds: a stated value with its reason, stated again
 * wherever something is computed. A formula goes beside what is stated, which stays.
 */
export function fillDown(book: Book, rows: readonly (readonly CellPlace[])[]): Edit | undefined {
  const [first = [], ...rest] = rows;
  const edits: Edit[] = [];
  const statements = gatherCells(book);
  for (const [at, source] of first.entries()) {
    const targets = rest.flatMap((row) => row[at] ?? []);
    const from = findPlace(book, source);
    const [stated] = statedAt(book, source);
    if (stated && stated.kind !== 'side') {
      const unit = stated.kind === 'line' ? stated.row.unit : stated.column.unit;
      edits.push(...targets.flatMap((to) => stateAgain(book, to, stated, unit, statements) ?? []));
      continue;
    }
    if (from?.kind === 'cell') {
      if (from.column.kind !== 'given' || rest.length === 0) continue;
      const values = new Array<Cell>(rest.length).fill(cellOf(from.column, from.row));
      edits.push(
        setCells({ sheet: source.sheet, table: source.part, column: from.column.id }, from.row + 1, values),
      );
      continue;
    }
    const content = cellContent(book, source);
    if (content.kind === 'name' || content.kind === undefined) continue;
    for (const target of targets) {
      const beside = content.kind === 'formula' ? formulaBeside(book, target, content.text) : undefined;
      if (beside) edits.push(beside);
      else if (cellContent(book, target).kind === content.kind && statedAt(book, target).length === 0) {
        const edit = enterText(book, target, content.text);
        if (edit.ok) edits.push(edit.value);
      }
    }
  }
  edits.push(...statements.edits());
  return edits.length === 0 ? undefined : joinEdits('fill down', edits);
}

/**
 * The edit that states a value again at another place, for which its reason is to be confirmed; on a given line it is the
 * entry. A cell of a table is taken by `cells`.
 */
function stateAgain(
  book: Book,
  to: CellPlace,
  { statement, called }: { readonly statement: Statement; readonly called: string },
  unit: string | undefined,
  cells: GatheredCells,
): Edit | undefined {
  const [target] = targetsAt(book, to);
  if (!target || target.kind === 'side') {
    const edit = cellContent(book, to).kind === 'entry' ? enterText(book, to, statement.entry) : undefined;
    return edit?.ok ? edit.value : undefined;
  }
  const own = target.kind === 'line' ? target.row.unit : target.column.unit;
  const { entry, reason } = statement;
  const again = carryStatement(target.statement, { entry: carryUnit(entry, unit, own), reason }, called);
  return cells.take(to, again) ? undefined : statementEdit(target, again);
}

/** The edit that puts a formula beside the value that is stated for a line; undefined where none is, and where it is refused. */
function formulaBeside(book: Book, place: CellPlace, formula: string): Edit | undefined {
  const [target] = statedAt(book, place);
  const edit = target && target.kind !== 'cell' ? enterFormula(book, place, formula) : undefined;
  return edit?.ok ? edit.value : undefined;
}
