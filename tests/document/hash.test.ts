import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import {
  applyEdit,
  type Book,
  canonicalJson,
  createHasher,
  hashBook,
  openBook,
  replaceTableRows,
  setCells,
  setEntry,
  type Table,
  writeBook,
} from '../../src/document/index.ts';
import { everyPart } from './read-book.ts';

const book = everyPart();
const layers = { sheet: 'pile', table: 'p4' };

function digest(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('hex');
}

/** The hash as the doc comment of the hasher defines it, from JSON text by Node. */
function independentHash(whole: Book): string {
  const { format, version, review, ...plain } = JSON.parse(JSON.stringify(whole));
  expect([format, typeof version, typeof review]).toEqual(['quaybook', 'number', 'object']);
  for (const sheet of plain.sheets) {
    for (const part of sheet.parts) {
      for (const column of part.columns ?? []) {
        if (column.chunks) column.chunks = column.chunks.map((chunk: never) => digest(JSON.stringify(chunk)));
      }
    }
    sheet.parts = sheet.parts.map((part: never) => digest(canonicalJson(part)));
  }
  return digest(canonicalJson(plain));
}

function edited(whole: Book, edit: Parameters<typeof applyEdit>[1]): Book {
  const applied = applyEdit(whole, edit);
  if (!applied.ok) throw new Error(applied.problems[0]?.message);
  return applied.value.book;
}

test('the hash is made as it is described', () => {
  expect(hashBook(book)).toBe(independentHash(book));
});

test('a hash follows the content: an edit changes it, its inverse restores it, a file keeps it', () => {
  const edit = setEntry({ sheet: 'pile', part: 'p3', row: 'r1' }, '30 in');
  const applied = applyEdit(book, edit);
  if (!applied.ok) throw new Error(applied.problems[0]?.message);
  expect(hashBook(applied.value.book)).not.toBe(hashBook(book));
  expect(hashBook(edited(applied.value.book, applied.value.inverse))).toBe(hashBook(book));
  const opened = openBook(writeBook(book));
  expect(opened.ok && hashBook(opened.value.book)).toBe(hashBook(book));
});

test('after an edit of a cell a kept hasher hashes one chunk and gives the same hash', () => {
  const length = 100_000;
  const table = book.sheets[0]?.parts[3] as Table;
  const rows = { length, cells: { thickness: Array.from({ length }, (_, i) => i) } };
  const long = edited(book, replaceTableRows(layers, table, rows));
  const hasher = createHasher();
  const first = hashBook(long, hasher);
  const after = edited(long, setCells({ ...layers, column: 'k2' }, 77_777, ['1 ft']));
  // Chunks of the book before the edit can no longer be read: only remembered hashes can stand for them.
  const before = long.sheets[0]?.parts[3] as Table;
  for (const column of before.columns) {
    if (column.kind !== 'given') continue;
    for (const chunk of column.chunks) Object.assign(chunk, { length: 0 });
  }
  expect(hashBook(after, hasher)).not.toBe(first);
  const changed = rows.cells.thickness.map((cell, i) => (i === 77_777 ? '1 ft' : cell));
  const fresh = edited(book, replaceTableRows(layers, table, { length, cells: { thickness: changed } }));
  expect(hashBook(after, hasher)).toBe(independentHash(fresh));
});
