import {
  type Book,
  duplicateTableRow,
  type Edit,
  type Fresh,
  findSheet,
  freshFor,
  insertPart,
  insertRow,
  insertTableRows,
  joinEdits,
  movePart,
  moveRow,
  moveTableRows,
  type Part,
  type PartPlace,
  type Row,
  removePart,
  removeRow,
  removeTableRows,
} from '../../../document/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { findPlace } from '../find-place.ts';
import { copyOfPart, copyOfRow, type NewKind, newBlock, newPart, newRow } from './new-items.ts';

/** An edit, and where the person is after it. */
export interface Change {
  readonly edit: Edit;
  readonly place?: CellPlace;
}

const isRow = (kind: NewKind): kind is Row['kind'] =>
  kind === 'given' || kind === 'choice' || kind === 'calc' || kind === 'check';

const wordsFor: Readonly<Record<NewKind, string>> = {
  given: 'a given',
  choice: 'a choice',
  calc: 'a calculation',
  check: 'a check',
  text: 'a text',
  heading: 'a heading',
  caution: 'a caution',
  assumption: 'an assumption',
  block: 'a block of lines',
  table: 'a table',
};

/** Puts something new below a place, or at the end of the sheet if there is none; undefined if the sheet is not there. */
export function insertBelow(
  book: Book,
  sheetKey: string,
  place: CellPlace | undefined,
  kind: NewKind,
): Change | undefined {
  const sheet = findSheet(book, sheetKey);
  if (!sheet) return undefined;
  const fresh = freshFor(book, sheet);
  return isRow(kind)
    ? insertRows(book, sheetKey, place, [newRow(kind, fresh)], fresh, `insert ${wordsFor[kind]}`)
    : insertPartBelow(book, sheetKey, place, newPart(kind, fresh), `insert ${wordsFor[kind]}`, fresh);
}

/** Puts lines below a place: into its block if it has one, into the next block, else into a new one. */
export function insertRows(
  book: Book,
  sheetKey: string,
  place: CellPlace | undefined,
  rows: readonly Row[],
  fresh: Fresh,
  label: string,
): Change | undefined {
  const found = place && findPlace(book, place);
  const first = rows[0];
  if (!first) return undefined;
  const block = found?.part.kind === 'rows' ? found.part : undefined;
  if (!block) return insertPartBelow(book, sheetKey, place, newBlock(rows, fresh), label, fresh);
  const index = found?.kind === 'row' ? found.index + 1 : 0;
  const at = { sheet: sheetKey, part: block.id };
  const edit = joinEdits(
    label,
    rows.map((row, i) => insertRow(at, index + i, row)),
  );
  return { edit, place: { ...at, item: first.id, field: 'name' } };
}

/**
 * Puts a part below a place, or at the end of the sheet if there is none. Below a line that is not the last of its block,
 * the lines that follow become a block of their own behind the part.
 */
export function insertPartBelow(
  book: Book,
  sheetKey: string,
  place: CellPlace | undefined,
  part: Part,
  label: string,
  fresh: Fresh,
): Change {
  const parts = findSheet(book, sheetKey)?.parts ?? [];
  const at = parts.findIndex(({ id }) => id === place?.part);
  const index = at < 0 ? parts.length : at + 1;
  const field = part.kind === 'prose' ? 'text' : part.kind === 'rows' ? 'name' : 'title';
  return {
    edit: joinEdits(label, [...parted(book, place, index, fresh), insertPart(sheetKey, index, part)]),
    place: {
      sheet: sheetKey,
      part: part.id,
      item: part.kind === 'rows' ? (part.rows[0]?.id ?? '') : '',
      field,
    },
  };
}

/** Moves the lines behind a line into a block of their own at a position of the sheet. */
function parted(book: Book, place: CellPlace | undefined, index: number, fresh: Fresh): readonly Edit[] {
  const found = place && findPlace(book, place);
  if (!place || found?.kind !== 'row') return [];
  const rest = found.part.rows.slice(found.index + 1);
  if (rest.length === 0) return [];
  const { sheet, part } = place;
  return [
    ...rest.map(({ id }) => removeRow({ sheet, part, row: id })),
    insertPart(sheet, index, newBlock(rest, fresh)),
  ];
}

/** Puts a blank row of a table, or a line of the same kind, above a place; undefined where there is neither. */
export function insertAbove(book: Book, place: CellPlace): Change | undefined {
  const found = findPlace(book, place);
  const { sheet } = place;
  if (found?.kind === 'cell' && found.part.length !== undefined) {
    const at = { sheet, table: found.part.id };
    const edit = insertTableRows(at, found.part, found.row, { length: 1, cells: {} });
    return { edit: { ...edit, label: 'insert a row' }, place };
  }
  if (found?.kind !== 'row') return undefined;
  const row = newRow(found.row.kind, freshFor(book, found.sheet));
  const at = { sheet, part: found.part.id };
  const edit = { ...insertRow(at, found.index, row), label: `insert ${wordsFor[row.kind]}` };
  return { edit, place: { ...at, item: row.id, field: 'name' } };
}

/** Puts blank rows into a table below a place in it. */
export function insertRowBelow(book: Book, place: CellPlace): Change | undefined {
  const found = findPlace(book, place);
  if (found?.part.kind !== 'table' || found.part.length === undefined) return undefined;
  const row = found.kind === 'cell' ? found.row + 1 : found.part.length;
  const at = { sheet: place.sheet, table: found.part.id };
  const edit = insertTableRows(at, found.part, row, { length: 1, cells: {} });
  const field = found.kind === 'cell' ? place.field : (found.part.columns[0]?.id ?? '');
  return { edit: { ...edit, label: 'insert a row' }, place: { ...place, item: `r${row}`, field } };
}

/** Takes out all lines, table rows or parts that a list of places stands on. */
export function removeLines(book: Book, places: readonly CellPlace[]): Edit | undefined {
  const edits: Edit[] = [];
  const done = new Set<string>();
  const tableRows = new Map<string, { at: { sheet: string; table: string }; from: number; to: number }>();
  for (const place of places) {
    const found = findPlace(book, place);
    const key = `${place.part}/${place.item}`;
    if (!found || done.has(key)) continue;
    done.add(key);
    if (found.kind === 'row') edits.push(removeRow({ ...place, row: found.row.id }));
    else if (found.kind === 'cell' && found.part.length !== undefined) {
      const span = tableRows.get(place.part);
      if (span) {
        span.from = Math.min(span.from, found.row);
        span.to = Math.max(span.to, found.row);
      } else
        tableRows.set(place.part, {
          at: { sheet: place.sheet, table: place.part },
          from: found.row,
          to: found.row,
        });
    } else if (found.kind === 'prose' || (found.kind === 'title' && places.length === 1))
      edits.push(removePart(place));
  }
  for (const { at, from, to } of tableRows.values()) edits.push(removeTableRows(at, from, to - from + 1));
  if (edits.length === 0) return undefined;
  return joinEdits(edits.length === 1 ? 'delete a line' : `delete ${edits.length} lines`, edits);
}

/** Moves the line of a place, its part, or its table row (by so many `rows`) by one, across the edges of blocks. */
export function moveLine(book: Book, place: CellPlace, by: -1 | 1, rows = 1): Change | undefined {
  const found = findPlace(book, place);
  if (!found) return undefined;
  const { parts } = found.sheet;
  const partIndex = parts.findIndex(({ id }) => id === place.part);
  if (found.kind === 'cell') return moveTableRow(place, found.part, found.row, by * rows);
  if (found.kind !== 'row') {
    if (found.kind === 'column') return undefined;
    const to = partIndex + by;
    if (to < 0 || to >= parts.length) return undefined;
    return { edit: movePart(place, to), place };
  }
  const to = found.index + by;
  const at = { sheet: place.sheet, part: place.part, row: found.row.id };
  if (to >= 0 && to < found.part.rows.length)
    return { edit: { ...moveRow(at, to), label: 'move a line' }, place };
  const next = nextBlock(parts, partIndex, by);
  if (!next) return undefined;
  const target = { sheet: place.sheet, part: next.id };
  const index = by < 0 ? next.rows.length : 0;
  const edit = joinEdits('move a line', [removeRow(at), insertRow(target, index, found.row)]);
  return { edit, place: { ...place, part: next.id } };
}

function nextBlock(
  parts: readonly Part[],
  from: number,
  by: -1 | 1,
): Extract<Part, { kind: 'rows' }> | undefined {
  for (let index = from + by; index >= 0 && index < parts.length; index += by) {
    const part = parts[index];
    if (part?.kind === 'rows') return part;
  }
  return undefined;
}

function moveTableRow(
  place: CellPlace,
  table: Extract<Part, { kind: 'table' }>,
  row: number,
  by: number,
): Change | undefined {
  const to = row + by;
  if (table.length === undefined || row < 0 || row >= table.length || to < 0 || to >= table.length)
    return undefined;
  const at = { sheet: place.sheet, table: table.id };
  return { edit: moveTableRows(at, table, row, 1, to), place: { ...place, item: `r${to}` } };
}

/** A second line or part like the one at a place, below it. */
export function duplicate(book: Book, place: CellPlace): Change | undefined {
  const found = findPlace(book, place);
  if (!found) return undefined;
  const fresh = freshFor(book, found.sheet);
  if (found.kind === 'row')
    return insertRows(book, place.sheet, place, [copyOfRow(found.row, fresh)], fresh, 'duplicate a line');
  if (found.kind === 'cell' && found.part.length !== undefined) {
    const { part, row } = found;
    const edit = duplicateTableRow({ sheet: place.sheet, table: part.id }, part, row);
    return { edit, place: { ...place, item: `r${row + 1}` } };
  }
  return insertPartBelow(book, place.sheet, place, copyOfPart(found.part, fresh), 'duplicate a part', fresh);
}

/** Takes the whole part of a place out of its sheet. */
export function removeWholePart(place: PartPlace): Edit {
  return { ...removePart(place), label: 'delete a part' };
}
