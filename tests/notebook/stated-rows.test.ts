import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  applyEdit,
  type Book,
  blankBook,
  type CalcColumn,
  duplicateTableRow,
  type Edit,
  idOfRow,
  insertTableRows,
  moveTableRows,
  openBook,
  removeTableRows,
  rowIdsOf,
  setCells,
  stateCell,
  type Table,
  writeBook,
} from '../../src/document/index.ts';
import { type Notebook, openNotebook, statedValues } from '../../src/notebook/index.ts';

/** A row as the plain model has it: what is given, and what is stated in place of twice that. */
interface PlainRow {
  readonly given: number;
  readonly stated?: number;
}

type Step =
  | { readonly kind: 'insert'; readonly at: number; readonly given: number }
  | { readonly kind: 'remove'; readonly at: number; readonly count: number }
  | { readonly kind: 'move'; readonly at: number; readonly count: number; readonly to: number }
  | { readonly kind: 'duplicate'; readonly at: number }
  | { readonly kind: 'fill'; readonly at: number; readonly given: number }
  | { readonly kind: 'state'; readonly at: number; readonly stated: number }
  | { readonly kind: 'unstate'; readonly at: number };

const at = fc.nat(9);
const given = fc.integer({ min: 1, max: 99 });
const steps = fc.array(
  fc.oneof(
    fc.record({ kind: fc.constant('insert' as const), at, given }),
    fc.record({ kind: fc.constant('remove' as const), at, count: fc.integer({ min: 1, max: 3 }) }),
    fc.record({ kind: fc.constant('move' as const), at, count: fc.integer({ min: 1, max: 3 }), to: at }),
    fc.record({ kind: fc.constant('duplicate' as const), at }),
    fc.record({ kind: fc.constant('fill' as const), at, given }),
    fc.record({ kind: fc.constant('state' as const), at, stated: fc.integer({ min: 1000, max: 1999 }) }),
    fc.record({ kind: fc.constant('unstate' as const), at }),
  ),
  { maxLength: 16 },
);

const place = { sheet: 's', table: 't' };
const given1 = { ...place, column: 'h' };
const calc1 = { ...place, column: 'v' };

function bookOf(rows: readonly PlainRow[]): Book {
  const table: Table = {
    id: 't',
    kind: 'table',
    name: 't',
    length: rows.length,
    columns: [
      { id: 'h', kind: 'given', name: 'h', unit: 'm', chunks: [rows.map((row) => row.given)] },
      { id: 'v', kind: 'calc', name: 'v', formula: 'h * 2', unit: 'm' },
    ],
  };
  return { ...blankBook(), sheets: [{ key: 's', title: 'S', parts: [table] }] };
}

function tableOf(book: Book): Table {
  const part = book.sheets[0]?.parts[0];
  if (part?.kind !== 'table') throw new Error('the table is gone');
  return part;
}

const column = (table: Table): CalcColumn => table.columns.find(({ id }) => id === 'v') as CalcColumn;

/** What a step does to the plain rows, and the edit for it; nothing where it does not fit. */
function taken(step: Step, rows: readonly PlainRow[], table: Table): readonly [PlainRow[], Edit] | undefined {
  const row = rows[step.at];
  if (step.kind === 'insert') {
    if (step.at > rows.length) return undefined;
    const added = insertTableRows(place, table, step.at, { length: 1, cells: { h: [step.given] } });
    return [rows.toSpliced(step.at, 0, { given: step.given }), added];
  }
  if (step.kind === 'remove') {
    if (step.at + step.count > rows.length || step.count === rows.length) return undefined;
    return [rows.toSpliced(step.at, step.count), removeTableRows(place, step.at, step.count)];
  }
  if (step.kind === 'move') {
    if (Math.max(step.at, step.to) + step.count > rows.length) return undefined;
    const moved = rows.slice(step.at, step.at + step.count);
    return [
      rows.toSpliced(step.at, step.count).toSpliced(step.to, 0, ...moved),
      moveTableRows(place, table, step.at, step.count, step.to),
    ];
  }
  if (!row) return undefined;
  const id = idOfRow(rowIdsOf(table), step.at) ?? 0;
  switch (step.kind) {
    case 'duplicate':
      return [rows.toSpliced(step.at + 1, 0, row), duplicateTableRow(place, table, step.at)];
    case 'fill':
      return [rows.with(step.at, { ...row, given: step.given }), setCells(given1, step.at, [step.given])];
    case 'state': {
      const statement = { entry: `${step.stated}`, reason: 'a test' };
      return [
        rows.with(step.at, { ...row, stated: step.stated }),
        stateCell(calc1, column(table), id, statement),
      ];
    }
    case 'unstate':
      return [rows.with(step.at, { given: row.given }), stateCell(calc1, column(table), id, undefined)];
  }
}

function values(notebook: Notebook): readonly unknown[] {
  const read = notebook.column('s.t.v');
  if (read.status !== 'ok') throw new Error(read.problem.message);
  return Array.from({ length: read.reading.length }, (_, row) => read.reading.values[row]);
}

/** What a checker's list says: by row the value stated and the one computed. */
function listed(notebook: Notebook): readonly unknown[] {
  return statedValues(notebook).map(({ row, value, computed }) => [
    row,
    value?.kind === 'number' && value.si,
    computed.status === 'ok' && computed.value.kind === 'number' && computed.value.si,
  ]);
}

function expectRows(notebook: Notebook, rows: readonly PlainRow[]): void {
  expect(values(notebook)).toEqual(rows.map((row) => row.stated ?? row.given * 2));
  const stated = rows.flatMap((row, index) =>
    row.stated === undefined ? [] : [[index, row.stated, row.given * 2]],
  );
  expect(listed(notebook)).toEqual(stated);
}

test('stated cells stay with their rows as in a plain list of rows, and undo brings each back', () => {
  fc.assert(
    fc.property(fc.array(given, { minLength: 2, maxLength: 6 }), steps, (start, todo) => {
      let rows: readonly PlainRow[] = start.map((one) => ({ given: one }));
      const first = bookOf(rows);
      const notebook = openNotebook(first);
      const back: [Edit, readonly PlainRow[]][] = [];
      for (const step of todo) {
        const next = taken(step, rows, tableOf(notebook.book));
        if (!next) continue;
        const outcome = notebook.apply(next[1]);
        if (!outcome.ok) throw new Error(outcome.problems[0]?.message);
        back.push([outcome.value.inverse, rows]);
        rows = next[0];
        expectRows(notebook, rows);
      }
      const opened = openBook(writeBook(notebook.book));
      if (!opened.ok) throw new Error(opened.problems[0]?.message);
      expectRows(openNotebook(opened.value.book), rows);
      for (const [inverse, before] of back.reverse()) {
        expect(notebook.apply(inverse).ok).toBe(true);
        expectRows(notebook, before);
      }
      expect(notebook.book).toEqual(first);
    }),
    { numRuns: 150, seed: 20261128 },
  );
});

test('a row moved in a table of 100,000 rows leaves a few runs of identities', () => {
  const base = bookOf([]);
  const long: Table = { ...tableOf(base), length: 100_000, columns: [] };
  const book: Book = { ...base, sheets: [{ key: 's', title: 'S', parts: [long] }] };
  const applied = applyEdit(book, moveTableRows(place, long, 70_000, 1, 5));
  if (!applied.ok) throw new Error(applied.problems[0]?.message);
  const { ids } = tableOf(applied.value.book);
  expect(ids?.runs).toEqual([
    { first: 1, count: 5 },
    { first: 70_001, count: 1 },
    { first: 6, count: 69_995 },
    { first: 70_002, count: 29_999 - 1 + 1 },
  ]);
});

test('rows moved beyond their table are refused', () => {
  const book = bookOf([{ given: 1 }, { given: 2 }]);
  expect(applyEdit(book, moveTableRows(place, tableOf(book), 0, 1, 2)).ok).toBe(false);
  expect(applyEdit(book, moveTableRows(place, tableOf(book), 1, 2, 0)).ok).toBe(false);
  expect(applyEdit(book, moveTableRows(place, tableOf(book), -1, 1, 0)).ok).toBe(false);
});
