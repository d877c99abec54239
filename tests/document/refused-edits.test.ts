import { expect, test } from 'vitest';
import {
  applyEdit,
  insertColumn,
  insertPart,
  insertRow,
  insertSheet,
  insertTableRows,
  joinEdits,
  type Patch,
  replaceRow,
  setCells,
  setEntry,
  setRowField,
  setSheetField,
  type Table,
} from '../../src/document/index.ts';
import { deepFreeze } from './deep-freeze.ts';
import { everyPart } from './read-book.ts';

const book = deepFreeze(everyPart());
const D = { sheet: 'pile', part: 'p3', row: 'r1' };
const layers = { sheet: 'pile', table: 'p4' };
const layersTable = book.sheets[0]?.parts[3] as Table;
const section = { sheet: 'pile', part: 'p3' };

const patched = (patch: Patch): { label: string; patches: readonly Patch[] } => ({
  label: '',
  patches: [patch],
});

test.each([
  [
    setEntry({ ...D, row: 'r99' }, '1'),
    'edit-place-missing',
    'the book has no sheets.pile.parts.p3.rows.r99',
  ],
  [setEntry({ ...D, sheet: 'quay' }, '1'), 'edit-place-missing', 'the book has no sheets.quay'],
  [
    patched({ kind: 'set', at: ['sheets', 'pile', 'parts', 'p3', 'rows', 0, 'entry'], value: '1' }),
    'edit-place-missing',
    'the book has no sheets.pile.parts.p3.rows[0]',
  ],
  [
    patched({ kind: 'set', at: ['sheets', 'pile', 'parts', 'p3', 'rows', 'r1', 'formula'], value: '1' }),
    'edit-place-missing',
    'the book has no sheets.pile.parts.p3.rows.r1.formula',
  ],
  [
    patched({ kind: 'set', at: ['__proto__', 'x'], value: '1' }),
    'edit-place-missing',
    'the book has no __proto__',
  ],
  [
    patched({ kind: 'set', at: ['sheets', 'pile', 'parts', 'p6', 'cells', 'constructor'], value: 'D' }),
    'edit-place-missing',
    'the book has no sheets.pile.parts.p6.cells.constructor',
  ],
  [patched({ kind: 'remove', at: [] }), 'edit-place-unfit', 'the book is not a list'],
  [patched({ kind: 'set', at: [] }), 'edit-field-fixed', 'the book cannot be changed'],
  [patched({ kind: 'set', at: ['version'], value: 2 }), 'edit-field-fixed', 'version cannot be changed'],
  [
    patched({ kind: 'set', at: ['sheets', 'pile', 'parts', 'p3', 'rows', 'r1', 'id'], value: 'r0' }),
    'edit-field-fixed',
    'sheets.pile.parts.p3.rows.r1.id cannot be changed',
  ],
  [
    replaceRow(D, { id: 'r0', kind: 'calc', name: 'D', formula: '1' }),
    'edit-field-fixed',
    'sheets.pile.parts.p3.rows.r1.id cannot be changed',
  ],
  [
    setRowField(D, 'entry', 12),
    'book-value-wrong',
    'sheets.pile.parts.p3.rows.r1.entry is 12, and should be a text',
  ],
  [setRowField(D, 'name', undefined), 'book-field-missing', 'sheets.pile.parts.p3.rows.r1 has no “name”'],
  [
    setRowField(D, 'name', 'a b'),
    'book-name-spelling',
    'sheets.pile.parts.p3.rows.r1.name is “a b”, which is not a name',
  ],
  [setRowField(D, 'name', 'A'), 'book-name-twice', 'on sheet “pile” the row “A” has the name of a row'],
  [
    setRowField({ ...D, row: 'r3' }, 'options', undefined),
    'book-choice-source',
    'sheets[0].parts[2].rows[2], the choice “method”, must have either “options” or “from”',
  ],
  [setSheetField('pile', 'key', 'cost'), 'book-key-of-two-sheets', 'two sheets have the key “cost”'],
  [
    setSheetField('cost', 'key', 'layers'),
    'book-table-named-as-sheet',
    'on sheet “pile” the table “layers” has the key of a sheet',
  ],
  [
    insertSheet(0, { key: 'layers', title: '', parts: [] }),
    'book-table-named-as-sheet',
    'on sheet “pile” the table “layers” has the key of a sheet',
  ],
  [
    insertSheet(3, { key: 'fender', title: '', parts: [] }),
    'edit-index-outside',
    'sheets has 2 items, and so no position 3',
  ],
  [
    insertRow(section, 0, { id: 'k1', kind: 'calc', name: 'x', formula: '1' }),
    'book-id-twice',
    'sheets[0].parts[3].columns[0] has the id “k1”, which sheets[0].parts[2].rows[0] has too',
  ],
  [
    insertPart('pile', 0, { id: 'p9', kind: 'prose', role: 'text' } as never),
    'book-field-missing',
    'sheets.pile.parts[0] has no “text”',
  ],
  [
    insertColumn(layers, 0, { id: 'k9', kind: 'given', name: 'phi', chunks: [[1]] }),
    'book-column-length',
    'sheets[0].parts[3].columns[0], the column “phi”, has 1 cell in a table of 3 rows',
  ],
  [
    patched({ kind: 'insert', at: ['title'], index: 0, value: '' }),
    'edit-place-unfit',
    'title is not a list',
  ],
  [
    patched({ kind: 'move', at: ['sheets', 'pile'], to: 2 }),
    'edit-index-outside',
    'sheets has 2 items, and so no position 2',
  ],
  [
    patched({ kind: 'remove', at: ['sheets', 'pile', 'parts', 'p4', 'columns', 'k1', 'chunks', 0, 0] }),
    'book-column-length',
    'sheets[0].parts[3].columns[0], the column “soil”, has 2 cells in a table of 3 rows',
  ],
  [
    setCells({ ...layers, column: 'k2' }, 2, [1, 2]),
    'edit-rows-outside',
    'sheets.pile.parts.p4.columns.k2 has 3 rows, and so no rows 3 to 4',
  ],
  [
    setCells({ ...layers, column: 'k5' }, 0, [1]),
    'edit-place-unfit',
    'sheets.pile.parts.p4.columns.k5 is not a given column',
  ],
  [
    setCells({ ...layers, column: 'k2' }, 0, [Number.NaN]),
    'book-value-wrong',
    'sheets.pile.parts.p4.columns.k2[0] is NaN, and should be a number or a text or null',
  ],
  [
    insertTableRows({ sheet: 'pile', table: 'p5' }, layersTable, 0, { length: 1, cells: {} }),
    'edit-place-unfit',
    'sheets.pile.parts.p5 is not a table with rows of its own',
  ],
  [
    insertTableRows(layers, layersTable, 0, { length: 1, cells: { depth: [1] } }),
    'edit-place-unfit',
    'sheets.pile.parts.p4.columns.depth is not a given column',
  ],
  [
    insertTableRows(layers, layersTable, 0, { length: 2, cells: { thickness: [1] } }),
    'edit-rows-uneven',
    'sheets.pile.parts.p4 gets 2 rows, and its column “thickness” 1 cell',
  ],
  [
    insertTableRows(layers, layersTable, 4, { length: 1, cells: {} }),
    'edit-rows-outside',
    'sheets.pile.parts.p4 has 3 rows, and so no row 5',
  ],
  [
    insertTableRows(layers, layersTable, 0, { length: 1e6, cells: {} }),
    'edit-rows-too-many',
    'sheets.pile.parts.p4 would have 1000003 rows, and may have at most 1000000',
  ],
  [
    joinEdits('one sound, one not', [setEntry(D, '1 ft'), setEntry({ ...D, row: 'r99' }, '1')]),
    'edit-place-missing',
    'the book has no sheets.pile.parts.p3.rows.r99',
  ],
])('refused edit %#: %j', (edit, code, message) => {
  const applied = applyEdit(book, edit);
  expect(applied.ok ? [] : applied.problems.map((found) => [found.code, found.message])).toEqual([
    [code, message],
  ]);
});

test('a list of a book never grows over its limit', () => {
  const full = Array.from({ length: 200 }, (_, i) => ({ key: `s${i}`, title: '', parts: [] }));
  const applied = applyEdit({ ...book, sheets: full }, insertSheet(0, { key: 'more', title: '', parts: [] }));
  expect(applied.ok ? '' : applied.problems[0]?.message).toBe(
    'sheets has 201 items, and may have at most 200',
  );
});
