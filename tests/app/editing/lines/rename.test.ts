import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { renameEdit } from '../../../../src/app/editing/lines/rename.ts';
import type { CellPlace } from '../../../../src/app/view-model/place.ts';
import {
  applyEdit,
  type Book,
  type Column,
  openBook,
  type Part,
  type Row,
} from '../../../../src/document/index.ts';
import { type Notebook, openNotebook } from '../../../../src/notebook/index.ts';
import { lineOf, sampleBook, sessionOn } from '../../editor/completion/sample-session.ts';

function renamed(place: CellPlace, name: string): Book {
  const edit = renameEdit(sessionOn(), place, name);
  if (!edit.ok) throw new Error(edit.problems[0]?.message);
  const applied = applyEdit(sampleBook, edit.value);
  if (!applied.ok) throw new Error(applied.problems[0]?.message);
  return applied.value.book;
}

function refusal(place: CellPlace, name: string): string {
  const edit = renameEdit(sessionOn(), place, name);
  if (edit.ok) throw new Error('not refused');
  const [found] = edit.problems;
  return [found?.message, ...(found?.hints ?? [])].join('; ');
}

const part = (book: Book, id: string): Part | undefined =>
  book.sheets.flatMap(({ parts }) => parts).find((one) => one.id === id);
const formula = (book: Book, id: string): string | undefined => {
  const all: readonly (Row | Column)[] = book.sheets.flatMap(({ parts }) => parts.flatMap(linesOf));
  const found = all.find((one) => one.id === id);
  return found && 'formula' in found ? found.formula : undefined;
};
function linesOf(one: Part): readonly (Row | Column)[] {
  if (one.kind === 'rows') return one.rows;
  return one.kind === 'table' ? one.columns : [];
}
const column = (item: string): CellPlace => ({ sheet: 'pier', part: 't', item, field: 'name' });
const table: CellPlace = { sheet: 'pier', part: 't', item: '', field: 'name' };

describe('a line', () => {
  test('is renamed in formulas of its sheet, of tables, of other sheets, and in a sketch', () => {
    const book = renamed(lineOf('b', 'name'), 'L_b');
    expect(formula(book, 'W')).toBe('w * L_b + basis.P');
    expect(formula(book, 'tf')).toBe('h * L_b * 1 psf * IF(soil = "clay"; 1; 2)');
    expect(formula(book, 'uz')).toBe('SERIES(0 ft; L_b; 10 ft)');
    expect(formula(book, 'y')).toBe('MAX(pier.layers.bottom) + pier.L_b');
    expect(part(book, 'fig')).toMatchObject({ cells: { length: 'L_b', load: 'w' } });
  });

  test('of another sheet is renamed behind its sheet', () => {
    const book = renamed({ sheet: 'basis', part: 'bp', item: 'P', field: 'name' }, 'P_crane');
    expect(formula(book, 'W')).toBe('w * b + basis.P_crane');
  });

  test('keeps a look-alike sign out of its name', () => {
    const book = renamed(lineOf('b', 'name'), ' \u00b5_b ');
    expect(formula(book, 'uz')).toBe('SERIES(0 ft; \u03bc_b; 10 ft)');
  });
});

describe('a column', () => {
  test('is renamed alone in its own table and behind the table elsewhere, in charts and options', () => {
    const book = renamed(column('th'), 'thick');
    expect(formula(book, 'tb')).toBe('ABOVE(bottom; 0 ft) + thick');
    expect(formula(book, 'x')).toBe('pier.layers.thick');
    expect(part(book, 'ch')).toMatchObject({ table: 'layers', x: 'bottom', y: ['f', 'thick'] });
    const soils = renamed(column('ts'), 'ground');
    expect(part(soils, 'p')).toMatchObject({
      rows: expect.arrayContaining([expect.objectContaining({ from: 'layers.ground' })]),
    });
    expect(part(soils, 'fig')).toMatchObject({ cells: { soils: 'layers.ground' } });
  });

  test('may have the name of a column of another table', () => {
    expect(formula(renamed(column('th'), 'z'), 'tb')).toBe('ABOVE(bottom; 0 ft) + z');
  });
});

test('a table is renamed before its columns, in charts and options', () => {
  const book = renamed(table, 'strata');
  expect(formula(book, 'f')).toBe('SUM(strata.f)');
  expect(formula(book, 'y')).toBe('MAX(pier.strata.bottom) + pier.b');
  expect(formula(book, 'tb')).toBe('ABOVE(bottom; 0 ft) + h');
  expect(part(book, 'ch')).toMatchObject({ table: 'strata', x: 'bottom', y: ['f', 'h'] });
  expect(part(book, 'p')).toMatchObject({
    rows: expect.arrayContaining([expect.objectContaining({ from: 'strata.soil' })]),
  });
});

describe('a name that will not do is refused', () => {
  test.each([
    [lineOf('b', 'name'), '9x', 'the new symbol is “9x”, which is not a name'],
    [lineOf('b', 'name'), '', 'the new symbol is “”, which is not a name'],
    [lineOf('b', 'name'), 'a.b', 'the new symbol is “a.b”, which is not a name'],
    [lineOf('b', 'name'), 'q', '“q” is the name of another line already'],
    [lineOf('b', 'name'), 'layers', '“layers” is the name of a table already'],
    [lineOf('b', 'name'), 'h', '“h” is the name of a column of layers already'],
    [lineOf('b', 'name'), 'Max', '“Max” is a word of the formulas themselves'],
    [lineOf('b', 'name'), 'true', '“true” is a word of the formulas themselves'],
    [lineOf('b', 'name'), 'x'.repeat(61), 'the new symbol has 61 characters, and may have at most 60'],
    [column('th'), 'b', '“b” is the name of another line already'],
    [column('th'), 'f', '“f” is the name of a column of layers already'],
    [table, 'basis', '“basis” is the name of a sheet already'],
    [table, 'w', '“w” is the name of another line already'],
  ])('%j as %s', (place, name, words) => {
    expect(refusal(place, name)).toContain(words);
  });

  test('with a code for each reason', () => {
    const code = (name: string) => {
      const edit = renameEdit(sessionOn(), lineOf('b', 'name'), name);
      return edit.ok ? 'ok' : edit.problems[0]?.code;
    };
    expect([code('q'), code('sum'), code('1'), code('L')]).toEqual([
      'rename-taken',
      'rename-reserved',
      'book-name-spelling',
      'ok',
    ]);
  });

  test('nor can prose be renamed', () => {
    expect(refusal({ sheet: 'pier', part: 'fig', item: '', field: 'name' }, 'x')).toContain(
      'something with a name',
    );
  });
});

const templates = new URL('../../../../templates/', import.meta.url);
const books = readdirSync(templates).map((id) => {
  const opened = openBook(readFileSync(new URL(`${id}/book.quaybook.json`, templates), 'utf8'));
  if (!opened.ok) throw new Error(`${id} is no sound book`);
  return opened.value.book;
});

/** Every place of a book that has a name, with that name. */
function namedPlaces(book: Book): readonly CellPlace[] {
  return book.sheets.flatMap(({ key: sheet, parts }) =>
    parts.flatMap((one) => {
      const at = (item: string): CellPlace => ({ sheet, part: one.id, item, field: 'name' });
      if (one.kind === 'rows') return one.rows.map(({ id }) => at(id));
      return one.kind === 'table' ? [at(''), ...one.columns.map(({ id }) => at(id))] : [];
    }),
  );
}

/** What every line and column comes to, in the book's order, which a rename does not change. */
function results(notebook: Notebook): readonly unknown[] {
  return [...notebook.model.items.values()].map((item) => {
    if (item.kind === 'input' || item.kind === 'formula') {
      const read = notebook.result(item.id);
      return read.status === 'ok' ? read.value : read.status;
    }
    const read = notebook.column(item.id);
    if (read.status !== 'ok') return read.status;
    return Array.from({ length: read.reading.length }, (_, row) => {
      const cell = read.reading.at(row);
      return cell.status === 'ok' ? cell.value : cell.status;
    });
  });
}

test('after a rename every result is what it was', () => {
  const before = books.map((book) => results(openNotebook(book)));
  const name = fc.stringMatching(/^[A-Za-zα-ω][A-Za-z0-9_']{0,6}$/);
  const choice = fc.record({ book: fc.nat(books.length - 1), place: fc.nat(10_000), name });
  let carriedOut = 0;
  fc.assert(
    fc.property(choice, ({ book: index, place: at, name: newName }) => {
      const book = books[index] as Book;
      const places = namedPlaces(book);
      const place = places[at % places.length] as CellPlace;
      const edit = renameEdit({ notebook: { book } as Notebook }, place, newName);
      if (!edit.ok) return;
      const applied = applyEdit(book, edit.value);
      if (!applied.ok) throw new Error(applied.problems[0]?.message);
      expect(results(openNotebook(applied.value.book))).toEqual(before[index]);
      carriedOut += 1;
    }),
    { numRuns: 40 },
  );
  expect(carriedOut).toBeGreaterThan(12);
});
