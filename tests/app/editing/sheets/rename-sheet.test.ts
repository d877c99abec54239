import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { renameSheetEdit } from '../../../../src/app/editing/sheets/rename-sheet.ts';
import { duplicateSheet } from '../../../../src/app/editing/sheets/sheet-edits.ts';
import { applyEdit, type Book, type Edit, openBook, writeBook } from '../../../../src/document/index.ts';
import { type Notebook, openNotebook } from '../../../../src/notebook/index.ts';
import { sampleBook } from '../../editor/completion/sample-session.ts';

const templates = new URL('../../../../templates/', import.meta.url);
const books = readdirSync(templates).map((id) => {
  const opened = openBook(readFileSync(new URL(`${id}/book.quaybook.json`, templates), 'utf8'));
  if (!opened.ok) throw new Error(`${id} is no sound book`);
  return opened.value.book;
});

function after(book: Book, edit: Edit): Book {
  const applied = applyEdit(book, edit);
  if (!applied.ok) throw new Error(applied.problems[0]?.message);
  return applied.value.book;
}

/** What every line and column comes to, in the book's order, which neither keys nor copies change. */
function results(notebook: Notebook, sheet?: string): readonly unknown[] {
  return [...notebook.model.items.values()].flatMap((item): readonly unknown[] => {
    if (sheet !== undefined && item.sheet !== sheet) return [];
    if (item.kind === 'input' || item.kind === 'formula') {
      const read = notebook.result(item.id);
      return [read.status === 'ok' ? read.value : read.status];
    }
    const read = notebook.column(item.id);
    if (read.status !== 'ok') return [read.status];
    return Array.from({ length: read.reading.length }, (_, row) => {
      const cell = read.reading.at(row);
      return cell.status === 'ok' ? cell.value : cell.status;
    });
  });
}

const choice = fc.record({
  book: fc.nat(books.length - 1),
  sheet: fc.nat(1000),
  key: fc.stringMatching(/^[A-Za-zα-ω][A-Za-z0-9_']{0,6}$/),
});

test('a sheet with another key comes to what it came to, and nothing says the old key', () => {
  const before = books.map((book) => results(openNotebook(book)));
  let carriedOut = 0;
  fc.assert(
    fc.property(choice, ({ book: index, sheet: at, key: newKey }) => {
      const book = books[index] as Book;
      const { key } = book.sheets[at % book.sheets.length] as Book['sheets'][number];
      const edit = renameSheetEdit(book, key, newKey);
      if (!edit.ok || newKey === key) return;
      const renamed = openNotebook(after(book, edit.value));
      expect(results(renamed)).toEqual(before[index]);
      const formulas = [...renamed.model.items.values()].flatMap((item) =>
        'checked' in item ? [...item.checked.references] : [],
      );
      expect(formulas.filter((id) => id.startsWith(`${key}.`))).toEqual([]);
      carriedOut += 1;
    }),
    { numRuns: 20 },
  );
  expect(carriedOut).toBeGreaterThan(12);
});

test('a second sheet comes to what the first one comes to, and refers to itself', () => {
  let carriedOut = 0;
  for (const book of books) {
    const first = openNotebook(book);
    for (const { key } of book.sheets) {
      const change = duplicateSheet(book, key);
      if (!change) throw new Error('no second sheet');
      const notebook = openNotebook(after(book, change.edit));
      expect(results(notebook, change.sheet)).toEqual(results(first, key));
      const others = [...notebook.model.items.values()].filter(({ sheet }) => sheet === change.sheet);
      const back = others.flatMap((item) =>
        'checked' in item ? [...item.checked.references].filter((id) => id.startsWith(`${key}.`)) : [],
      );
      expect(back).toEqual([]);
      carriedOut += 1;
    }
  }
  expect(carriedOut).toBeGreaterThan(10);
});

test('a key is renamed in the formulas of its own sheet, of others, and behind its tables', () => {
  const edit = renameSheetEdit(sampleBook, 'pier', 'quay');
  if (!edit.ok) throw new Error(edit.problems[0]?.message);
  const text = writeBook(after(sampleBook, edit.value));
  expect(text).toContain('MAX(quay.layers.bottom) + quay.b');
  expect(text).not.toContain('pier.');
});

test.each([
  ['basis', 'another sheet'],
  ['layers', 'a table'],
  ['9x', 'not a name'],
  ['sum', 'a word of the formulas'],
])('%s is refused as the key of a sheet: %s', (key, words) => {
  const edit = renameSheetEdit(sampleBook, 'pier', key);
  expect(edit.ok ? '' : edit.problems[0]?.message).toContain(words);
});

test('a key that something has is refused with the way out', () => {
  const words = (key: string) => {
    const edit = renameSheetEdit(sampleBook, 'pier', key);
    return edit.ok ? 'ok' : edit.problems.map(({ message, hints }) => [message, ...hints].join('; '));
  };
  const hint = 'choose one that no sheet and no table of the book has';
  expect(words('basis')).toEqual([`“basis” is the name of another sheet already; ${hint}`]);
  expect(words('layers')).toEqual([`“layers” is the name of a table already; ${hint}`]);
});
