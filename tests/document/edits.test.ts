import { expect, test } from 'vitest';
import {
  applyEdit,
  type Book,
  cellsOfColumn,
  type Edit,
  findColumn,
  findRow,
  findSheet,
  findTable,
  insertColumn,
  insertPart,
  insertRow,
  insertSheet,
  insertTableRows,
  joinEdits,
  moveColumn,
  movePart,
  moveRow,
  moveSheet,
  openBook,
  removeColumn,
  removePart,
  removeRow,
  removeSheet,
  removeTableRows,
  replaceRow,
  replaceTableRows,
  setAbout,
  setCells,
  setColumnField,
  setEntry,
  setFormula,
  setPartField,
  setRowField,
  setSettings,
  setSheetField,
  setTitle,
  setUnit,
  type Table,
  type Touched,
  writeBook,
} from '../../src/document/index.ts';
import { deepFreeze } from './deep-freeze.ts';
import { everyPart } from './read-book.ts';

const book = deepFreeze(everyPart());
const D = { sheet: 'pile', part: 'p3', row: 'r1' };
const A = { sheet: 'pile', part: 'p3', row: 'r5' };
const layers = { sheet: 'pile', table: 'p4' };
const thickness = { ...layers, column: 'k2' };

function tableIn(whole: Book, name: string): Table {
  const found = findTable(whole.sheets[0]!, name);
  if (found === undefined) throw new Error(`no table ${name}`);
  return found.table;
}

function cells(whole: Book, column: string): readonly unknown[] {
  const found = findColumn(tableIn(whole, 'layers'), column);
  return found?.kind === 'given' ? cellsOfColumn(found) : [];
}

interface Case {
  readonly edit: Edit;
  readonly touched: readonly Touched[];
  /** Reads from a book what the edit changes: before it, and after it. */
  readonly read: (whole: Book) => unknown;
  readonly before: unknown;
  readonly after: unknown;
}

const rowNames = (whole: Book): unknown =>
  whole.sheets[0]?.parts.flatMap((part) => (part.kind === 'rows' ? part.rows.map(({ name }) => name) : []));
const partIds = (whole: Book): unknown => whole.sheets[0]?.parts.map(({ id }) => id);
const columnNames = (whole: Book): unknown => tableIn(whole, 'layers').columns.map(({ name }) => name);
const sheetKeys = (whole: Book): unknown => whole.sheets.map(({ key }) => key);
const structure: readonly Touched[] = [{ kind: 'structure', sheet: 'pile' }];
const sheets: readonly Touched[] = [{ kind: 'book', field: 'sheets' }];
const given = { id: 'new', kind: 'given', name: 't_w', entry: '0.5 in' } as const;

const CASES: readonly Case[] = [
  {
    edit: setEntry(D, '30 in'),
    touched: [{ kind: 'entry', ...D }],
    read: (whole) => findRow(whole.sheets[0]!, 'D')?.row,
    before: expect.objectContaining({ entry: '36 in' }),
    after: expect.objectContaining({ entry: '30 in' }),
  },
  {
    edit: setFormula(A, 'D^2'),
    touched: [{ kind: 'row', ...A, field: 'formula' }],
    read: (whole) => findRow(whole.sheets[0]!, 'A')?.row,
    before: expect.objectContaining({ formula: 'PI() * (D/2)^2' }),
    after: expect.objectContaining({ formula: 'D^2' }),
  },
  {
    edit: setUnit(A, 'ft^2'),
    touched: [{ kind: 'row', ...A, field: 'unit' }],
    read: (whole) => findRow(whole.sheets[0]!, 'A')?.row,
    before: expect.objectContaining({ unit: 'in^2' }),
    after: expect.objectContaining({ unit: 'ft^2' }),
  },
  {
    edit: setRowField(D, 'note', undefined),
    touched: [{ kind: 'row', ...D, field: 'note' }],
    read: (whole) => Object.keys(findRow(whole.sheets[0]!, 'D')?.row ?? {}).includes('note'),
    before: true,
    after: false,
  },
  {
    edit: setRowField(D, 'name', 'D_o'),
    touched: [{ kind: 'row', ...D, field: 'name' }],
    read: rowNames,
    before: ['D', "f'_c", 'method', 'soil_at_tip', 'A', 'c1'],
    after: ['D_o', "f'_c", 'method', 'soil_at_tip', 'A', 'c1'],
  },
  {
    edit: insertRow({ sheet: 'pile', part: 'p3' }, 1, given),
    touched: structure,
    read: rowNames,
    before: ['D', "f'_c", 'method', 'soil_at_tip', 'A', 'c1'],
    after: ['D', 't_w', "f'_c", 'method', 'soil_at_tip', 'A', 'c1'],
  },
  {
    edit: removeRow(D),
    touched: structure,
    read: rowNames,
    before: ['D', "f'_c", 'method', 'soil_at_tip', 'A', 'c1'],
    after: ["f'_c", 'method', 'soil_at_tip', 'A', 'c1'],
  },
  {
    edit: moveRow(D, 5),
    touched: structure,
    read: rowNames,
    before: ['D', "f'_c", 'method', 'soil_at_tip', 'A', 'c1'],
    after: ["f'_c", 'method', 'soil_at_tip', 'A', 'c1', 'D'],
  },
  {
    edit: replaceRow(D, { id: 'r1', kind: 'calc', name: 'D', formula: '3 ft' }),
    touched: structure,
    read: (whole) => findRow(whole.sheets[0]!, 'D')?.row.kind,
    before: 'given',
    after: 'calc',
  },
  {
    edit: setPartField({ sheet: 'pile', part: 'p1' }, 'text', 'Axial'),
    touched: [{ kind: 'part', sheet: 'pile', part: 'p1', field: 'text' }],
    read: (whole) => whole.sheets[0]?.parts[0],
    before: expect.objectContaining({ text: 'Axial capacity' }),
    after: expect.objectContaining({ text: 'Axial' }),
  },
  {
    edit: insertPart('pile', 0, { id: 'new', kind: 'prose', role: 'text', text: '' }),
    touched: structure,
    read: partIds,
    before: ['p1', 'p2', 'p3', 'p4', 'p5', 'p6', 'p7'],
    after: ['new', 'p1', 'p2', 'p3', 'p4', 'p5', 'p6', 'p7'],
  },
  {
    edit: removePart({ sheet: 'pile', part: 'p4' }),
    touched: structure,
    read: partIds,
    before: ['p1', 'p2', 'p3', 'p4', 'p5', 'p6', 'p7'],
    after: ['p1', 'p2', 'p3', 'p5', 'p6', 'p7'],
  },
  {
    edit: movePart({ sheet: 'pile', part: 'p7' }, 0),
    touched: structure,
    read: partIds,
    before: ['p1', 'p2', 'p3', 'p4', 'p5', 'p6', 'p7'],
    after: ['p7', 'p1', 'p2', 'p3', 'p4', 'p5', 'p6'],
  },
  {
    edit: setCells(thickness, 1, ['21 ft', 4]),
    touched: [{ kind: 'cells', ...thickness, chunk: 0 }],
    read: (whole) => cells(whole, 'thickness'),
    before: ['12 ft', 20, null],
    after: ['12 ft', '21 ft', 4],
  },
  {
    edit: replaceTableRows(layers, tableIn(book, 'layers'), {
      length: 2,
      cells: { soil: ['sand', 'sand'], thickness: [5, '6 ft'] },
    }),
    touched: [{ kind: 'rows', ...layers }],
    read: (whole) => [cells(whole, 'thickness'), cells(whole, 'drilled'), tableIn(whole, 'layers').length],
    before: [['12 ft', 20, null], ['TRUE', null, 'FALSE'], 3],
    after: [[5, '6 ft'], [null, null], 2],
  },
  {
    edit: insertTableRows(layers, tableIn(book, 'layers'), 1, { length: 1, cells: { thickness: [7] } }),
    touched: [{ kind: 'rows', ...layers }],
    read: (whole) => [cells(whole, 'soil'), cells(whole, 'thickness')],
    before: [
      ['clay', 'sand', 'clay'],
      ['12 ft', 20, null],
    ],
    after: [
      ['clay', null, 'sand', 'clay'],
      ['12 ft', 7, 20, null],
    ],
  },
  {
    edit: removeTableRows(layers, 0, 2),
    touched: [{ kind: 'rows', ...layers }],
    read: (whole) => [cells(whole, 'soil'), cells(whole, 'thickness')],
    before: [
      ['clay', 'sand', 'clay'],
      ['12 ft', 20, null],
    ],
    after: [['clay'], [null]],
  },
  {
    edit: insertColumn(layers, 0, { id: 'new', kind: 'given', name: 'phi', chunks: [[1, 2, 3]] }),
    touched: structure,
    read: columnNames,
    before: ['soil', 'thickness', 'drilled', 'sampled', 'bottom'],
    after: ['phi', 'soil', 'thickness', 'drilled', 'sampled', 'bottom'],
  },
  {
    edit: removeColumn(thickness),
    touched: structure,
    read: columnNames,
    before: ['soil', 'thickness', 'drilled', 'sampled', 'bottom'],
    after: ['soil', 'drilled', 'sampled', 'bottom'],
  },
  {
    edit: moveColumn(thickness, 0),
    touched: structure,
    read: columnNames,
    before: ['soil', 'thickness', 'drilled', 'sampled', 'bottom'],
    after: ['thickness', 'soil', 'drilled', 'sampled', 'bottom'],
  },
  {
    edit: setColumnField(thickness, 'unit', 'm'),
    touched: [{ kind: 'column', ...thickness, field: 'unit' }],
    read: (whole) => findColumn(tableIn(whole, 'layers'), 'thickness'),
    before: expect.objectContaining({ unit: 'ft' }),
    after: expect.objectContaining({ unit: 'm' }),
  },
  {
    edit: insertSheet(2, { key: 'fender', title: 'Fender', parts: [] }),
    touched: sheets,
    read: sheetKeys,
    before: ['pile', 'cost'],
    after: ['pile', 'cost', 'fender'],
  },
  { edit: removeSheet('pile'), touched: sheets, read: sheetKeys, before: ['pile', 'cost'], after: ['cost'] },
  {
    edit: moveSheet('pile', 1),
    touched: sheets,
    read: sheetKeys,
    before: ['pile', 'cost'],
    after: ['cost', 'pile'],
  },
  {
    edit: setSheetField('pile', 'key', 'axial'),
    touched: sheets,
    read: sheetKeys,
    before: ['pile', 'cost'],
    after: ['axial', 'cost'],
  },
  {
    edit: setSheetField('pile', 'group', undefined),
    touched: [{ kind: 'sheet', sheet: 'pile', field: 'group' }],
    read: (whole) => findSheet(whole, 'pile')?.group,
    before: 'Building new',
    after: undefined,
  },
  {
    edit: setTitle('job', '7'),
    touched: [{ kind: 'book', field: 'title' }],
    read: (whole) => whole.title.job,
    before: '1042',
    after: '7',
  },
  {
    edit: setSettings('datums', ['NAVD88']),
    touched: [{ kind: 'book', field: 'settings' }],
    read: (whole) => whole.settings.datums,
    before: ['MLLW'],
    after: ['NAVD88'],
  },
  {
    edit: setAbout(undefined),
    touched: [{ kind: 'book', field: 'about' }],
    read: (whole) => whole.about?.id,
    before: 'every-part',
    after: undefined,
  },
  {
    edit: joinEdits('swap two names', [setRowField(D, 'name', 'A'), setRowField(A, 'name', 'D')]),
    touched: [
      { kind: 'row', ...D, field: 'name' },
      { kind: 'row', ...A, field: 'name' },
    ],
    read: rowNames,
    before: ['D', "f'_c", 'method', 'soil_at_tip', 'A', 'c1'],
    after: ['A', "f'_c", 'method', 'soil_at_tip', 'D', 'c1'],
  },
];

test.each(CASES)('$edit.label', ({ edit, touched, read, before, after }) => {
  expect(JSON.parse(JSON.stringify(edit))).toEqual(edit);
  expect(read(book)).toEqual(before);
  const applied = applyEdit(book, edit);
  if (!applied.ok) throw new Error(applied.problems[0]?.message);
  expect(applied.value.touched).toEqual(touched);
  expect(read(applied.value.book)).toEqual(after);
  expect(openBook(writeBook(applied.value.book))).toEqual({
    ok: true,
    value: { book: applied.value.book, migrated: false },
  });
  const back = applyEdit(deepFreeze(applied.value.book), applied.value.inverse);
  expect(back.ok && back.value.book).toEqual(book);
  const again = back.ok && applyEdit(back.value.book, back.value.inverse);
  expect(again && (again.ok ? again.value.book : again.problems)).toEqual(applied.value.book);
});

test('an edit of one entry shares all else with the book before it', () => {
  const applied = applyEdit(book, setEntry(D, '30 in'));
  const after = applied.ok ? applied.value.book : undefined;
  expect(after?.settings).toBe(book.settings);
  expect(after?.sheets[1]).toBe(book.sheets[1]);
  expect(after?.sheets[0]?.parts[3]).toBe(book.sheets[0]?.parts[3]);
});

test('a cell of a long column is an edit of one chunk', () => {
  const length = 100_000;
  const long = applyEdit(
    book,
    replaceTableRows(layers, tableIn(book, 'layers'), {
      length,
      cells: { thickness: Array.from({ length }, (_, i) => i) },
    }),
  );
  if (!long.ok) throw new Error(long.problems[0]?.message);
  const applied = applyEdit(long.value.book, setCells(thickness, 50_000, [-1]));
  if (!applied.ok) throw new Error(applied.problems[0]?.message);
  expect(applied.value.touched).toEqual([{ kind: 'cells', ...thickness, chunk: 48 }]);
  const chunksOf = (whole: Book): readonly unknown[] => {
    const column = findColumn(tableIn(whole, 'layers'), 'thickness');
    return column?.kind === 'given' ? column.chunks : [];
  };
  const before = chunksOf(long.value.book);
  const changed = chunksOf(applied.value.book).flatMap((chunk, i) => (chunk === before[i] ? [] : [i]));
  expect([before.length, changed]).toEqual([98, [48]]);
  expect(applied.value.inverse.patches).toEqual([
    { kind: 'cells', at: ['sheets', 'pile', 'parts', 'p4', 'columns', 'k2'], from: 50_000, values: [50_000] },
  ]);
});
