import { describe, expect, test } from 'vitest';
import { chartChoices } from '../../../../src/app/editing/lines/chart-columns.ts';
import {
  type Details,
  detailsAt,
  detailsEdit,
  drawnBy,
  withTable,
} from '../../../../src/app/editing/lines/details.ts';
import { insertChart } from '../../../../src/app/editing/lines/insert-chart.ts';
import type { CellPlace } from '../../../../src/app/view-model/place.ts';
import { applyEdit, type Book, type Edit, findSheet, type Part } from '../../../../src/document/index.ts';
import { openNotebook } from '../../../../src/notebook/index.ts';
import { sampleBook } from '../../editor/completion/sample-session.ts';
import { at, smallBook } from '../../small-book.ts';

/** The book after an edit, whose inverse must lead back. */
function changed(book: Book, edit: Edit | undefined): Book {
  if (!edit) throw new Error('there is no edit');
  const applied = applyEdit(book, edit);
  if (!applied.ok) throw new Error(applied.problems.map(({ message }) => message).join('; '));
  const back = applyEdit(applied.value.book, applied.value.inverse);
  expect(back.ok && back.value.book).toEqual(book);
  return applied.value.book;
}

const partsOf = (book: Book, sheet: string): readonly Part[] => findSheet(book, sheet)?.parts ?? [];

/** The chart that is put below a place, and the part it stands below. */
function inserted(
  book: Book,
  place: CellPlace,
): { readonly above: string | undefined; readonly chart: Part } {
  const change = insertChart(openNotebook(book), place);
  if (!change?.ok) throw new Error(change ? change.problems[0]?.message : 'no such place');
  const parts = partsOf(changed(book, change.value.edit), place.sheet);
  const index = parts.findIndex(({ id }) => id === change.value.place?.part);
  const chart = parts[index];
  if (!chart) throw new Error('the person is not on the chart');
  return { above: parts[index - 1]?.id, chart };
}

describe('a chart below a place', () => {
  test('is of the table it stands under: its second column with numbers over the first', () => {
    const { above, chart } = inserted(smallBook(), at('p3', 'r1', 'k2'));
    expect(above).toBe('p3');
    expect(chart).toEqual({
      id: chart.id,
      kind: 'chart',
      form: 'line',
      table: 'spans',
      x: 'length',
      y: ['twice'],
    });
  });

  test.each([
    ['p', 'layers', 'above all tables the first of the sheet'],
    ['t', 'layers', 'on a table that one'],
    ['u', 'marks', 'on the second table that one'],
    ['ch', 'marks', 'further below the nearest above'],
  ])('below %s it is of %s: %s', (part, table) => {
    const place = { sheet: 'pier', part, item: '', field: 'title' };
    const { above, chart } = inserted(sampleBook, place);
    expect(above).toBe(part);
    expect(chart).toMatchObject({ table });
  });

  test('draws the only column with numbers over the first column', () => {
    const book = smallBook();
    const only = {
      ...book,
      sheets: book.sheets.map((sheet) => ({
        ...sheet,
        parts: sheet.parts.map((part) =>
          part.kind === 'table' ? { ...part, columns: part.columns.slice(0, 2) } : part,
        ),
      })),
    };
    expect(inserted(only, at('p3', '', 'title')).chart).toMatchObject({ x: 'mark', y: ['length'] });
  });

  test('takes no blank column for its axis, nor for its series', () => {
    const book = smallBook();
    const blank = {
      id: 'kb',
      kind: 'given',
      name: 'offset',
      unit: 'm',
      chunks: [[null, null, null]],
    } as const;
    const before = {
      ...book,
      sheets: book.sheets.map((sheet) => ({
        ...sheet,
        parts: sheet.parts.map((part) =>
          part.kind === 'table' ? { ...part, columns: [blank, ...part.columns] } : part,
        ),
      })),
    };
    expect(inserted(before, at('p3', '', 'title')).chart).toMatchObject({ x: 'length', y: ['twice'] });
    const alone = {
      ...before,
      sheets: before.sheets.map((sheet) => ({
        ...sheet,
        parts: sheet.parts.map((part) =>
          part.kind === 'table' ? { ...part, columns: part.columns.slice(0, 3) } : part,
        ),
      })),
    };
    expect(inserted(alone, at('p3', '', 'title')).chart).toMatchObject({ x: 'mark', y: ['length'] });
  });

  test('is refused on a sheet without a table, with what to do', () => {
    const change = insertChart(openNotebook(sampleBook), {
      sheet: 'basis',
      part: 'bp',
      item: 'P',
      field: 'value',
    });
    expect(change?.ok).toBe(false);
    expect(change && !change.ok && change.problems).toMatchObject([
      {
        code: 'chart-without-table',
        message: 'a chart is drawn from a table, and sheet “Basis” has none',
        hints: ['insert a table first'],
      },
    ]);
  });
});

describe('the details of a chart', () => {
  const place = { sheet: 'pier', part: 'ch', item: '', field: 'title' };
  const notebook = openNotebook(sampleBook);
  const now = detailsAt(sampleBook, place);
  const keep = (wanted: Details) => detailsEdit({ notebook }, place, { ...now, ...wanted });

  test('are its title, form, table and columns', () => {
    expect(now).toEqual({ title: '', form: 'line', table: 'layers', x: 'bottom', y: 'f\nh' });
  });

  test('are changed in one edit', () => {
    const edit = keep({ title: ' Depths ', form: 'bar', x: 'soil', y: 'h' });
    const book = changed(sampleBook, edit.ok ? edit.value : undefined);
    expect(partsOf(book, 'pier').find(({ id }) => id === 'ch')).toEqual({
      id: 'ch',
      kind: 'chart',
      title: 'Depths',
      form: 'bar',
      table: 'layers',
      x: 'soil',
      y: ['h'],
    });
  });

  test('follow another table where it lacks a column, and only there', () => {
    const sheet = 'pier';
    expect(withTable(notebook, sheet, now, 'marks')).toEqual({ ...now, table: 'marks', x: 'z', y: 'n' });
    const shared = { ...now, table: 'marks', x: 'h', y: 'f' };
    expect(withTable(notebook, sheet, shared, 'layers')).toEqual({ ...shared, table: 'layers' });
  });

  test('offer the tables of the sheet, and as series the columns with numbers', () => {
    const { table, x, y } = chartChoices(notebook, 'pier', drawnBy(now));
    expect(table.map(({ value }) => value)).toEqual(['layers', 'marks']);
    expect(x).toEqual([
      { value: 'soil' },
      { value: 'h', label: 'thickness' },
      { value: 'bottom' },
      { value: 'f' },
    ]);
    expect(y.map(({ value }) => value)).toEqual(['h', 'bottom', 'f']);
  });

  test('offer what the chart draws even where it is gone, so that it can be taken away', () => {
    const { table, x, y } = chartChoices(notebook, 'pier', drawnBy({ ...now, y: 'gone' }));
    expect(y.map(({ value }) => value)).toEqual(['h', 'bottom', 'f', 'gone']);
    expect([table.length, x.length]).toEqual([2, 4]);
    expect(chartChoices(notebook, 'pier', drawnBy({ ...now, table: 'lost' })).table).toContainEqual({
      value: 'lost',
    });
  });

  test.each([
    [{ y: '' }, 'chart-without-columns', 'no column of layers is chosen to be drawn'],
    [{ y: 'soil' }, 'figure-cell-kind', '“layers.soil” is taken as a series and is not a column of numbers'],
    [
      { form: 'histogram', x: 'soil', y: '' },
      'figure-cell-kind',
      '“layers.soil” is taken as a series and is not a column of numbers',
    ],
    [{ y: 'hh' }, 'figure-name-unknown', 'the picture is drawn from “layers.hh”, which is not in this book'],
    [{ table: 'lost' }, 'figure-name-unknown', 'the picture is drawn from “lost”, which is not in this book'],
  ])('%o is refused: %s', (wanted, code, message) => {
    const edit = keep(wanted);
    expect(edit.ok).toBe(false);
    expect(!edit.ok && edit.problems).toMatchObject([{ code, message }]);
  });

  test('need no series in a histogram, which then counts the column itself', () => {
    const edit = keep({ form: 'histogram', y: '' });
    const book = changed(sampleBook, edit.ok ? edit.value : undefined);
    expect(partsOf(book, 'pier').find(({ id }) => id === 'ch')).toMatchObject({ form: 'histogram', y: [] });
  });
});
