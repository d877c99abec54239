import { expect, test } from 'vitest';
import {
  insertColumnBeside,
  moveColumnBy,
  removeColumnAt,
} from '../../../../src/app/editing/lines/column-edits.ts';
import { type Details, detailsAt, detailsEdit } from '../../../../src/app/editing/lines/details.ts';
import type { CellPlace } from '../../../../src/app/view-model/place.ts';
import { applyEdit, type Book, type Edit, type Part } from '../../../../src/document/index.ts';
import { openNotebook } from '../../../../src/notebook/index.ts';
import { at, smallBook } from '../../small-book.ts';

function changed(edit: Edit | undefined, book: Book = smallBook()): Book {
  if (!edit) throw new Error('no edit');
  const applied = applyEdit(book, edit);
  if (!applied.ok) throw new Error(applied.problems[0]?.message);
  return applied.value.book;
}

function withDetails(place: CellPlace, details: Details, book: Book = smallBook()): Book {
  const notebook = openNotebook(book);
  const edit = detailsEdit({ notebook }, place, { ...detailsAt(book, place), ...details });
  if (!edit.ok) throw new Error(edit.problems[0]?.message);
  return changed(edit.value, book);
}

const part = (book: Book, id: string): Part | undefined => book.sheets[0]?.parts.find((one) => one.id === id);
const columns = (book: Book): readonly string[] => {
  const table = part(book, 'p3');
  return table?.kind === 'table' ? table.columns.map(({ name }) => name) : [];
};

test('a given takes a range, a note and leave to be blank, and gives them back', () => {
  const place = at('p2', 'r1', 'label');
  const book = withDetails(place, { min: '1 m', max: ' 9 m ', optional: 'yes', note: 'as surveyed' });
  expect(part(book, 'p2')).toMatchObject({
    rows: expect.arrayContaining([
      expect.objectContaining({
        id: 'r1',
        range: { min: '1 m', max: '9 m' },
        optional: true,
        note: 'as surveyed',
      }),
    ]),
  });
  expect(withDetails(place, { min: '', max: '', optional: '', note: '' }, book)).toEqual(smallBook());
});

test('a calculated line and a calculated column take a range', () => {
  const line = withDetails(at('p2', 'r3', 'label'), { max: '25 kN*m' });
  expect(part(line, 'p2')).toMatchObject({
    rows: expect.arrayContaining([expect.objectContaining({ id: 'r3', range: { max: '25 kN*m' } })]),
  });
  const column = at('p3', 'head', 'k3');
  expect(detailsAt(withDetails(column, { min: '1 m' }), column)).toMatchObject({ min: '1 m', max: '' });
});

test('a value is no unit', () => {
  const notebook = openNotebook(smallBook());
  const place = at('p2', 'r4', 'label');
  const edit = detailsEdit({ notebook }, place, { ...detailsAt(notebook.book, place), unit: '80' });
  expect(edit.ok ? [] : edit.problems.map(({ code }) => code)).toEqual(['unit-is-value']);
});

test('a check takes a unit, prose a role', () => {
  expect(
    detailsAt(withDetails(at('p2', 'r4', 'label'), { unit: 'kN·m' }), at('p2', 'r4', 'label')).unit,
  ).toBe('kN·m');
  expect(part(withDetails(at('p1', '', 'text'), { role: 'assumption' }), 'p1')).toMatchObject({
    role: 'assumption',
  });
});

test('options of a choice are lines of value and words', () => {
  const book = smallBook();
  const [sheet] = book.sheets;
  const choice = { id: 'r9', kind: 'choice', name: 'm', entry: 'a', options: [{ value: 'a' }] } as const;
  const withChoice: Book = {
    ...book,
    sheets: [
      {
        key: 'beam',
        title: '',
        parts: [...(sheet?.parts ?? []), { id: 'p9', kind: 'rows', rows: [choice] }],
      },
    ],
  };
  const after = withDetails(at('p9', 'r9', 'label'), { options: 'a = API\n\nb\n' }, withChoice);
  expect(part(after, 'p9')).toMatchObject({
    rows: [{ options: [{ value: 'a', label: 'API' }, { value: 'b' }] }],
  });
});

test('a column takes another name in every formula, a type and a unit', () => {
  const book = withDetails(at('p3', 'head', 'k2'), { name: 'span', unit: 'ft' });
  expect(part(book, 'p3')).toMatchObject({
    columns: [{ id: 'k1' }, { id: 'k2', name: 'span', unit: 'ft' }, { id: 'k3', formula: '2 * span' }],
  });
});

test('a refused name changes nothing', () => {
  const book = smallBook();
  const place = at('p3', 'head', 'k2');
  const edit = detailsEdit({ notebook: openNotebook(book) }, place, {
    ...detailsAt(book, place),
    name: 'mark',
  });
  expect(edit.ok).toBe(false);
});

test('columns are inserted beside, moved within the table and taken out', () => {
  const book = smallBook();
  const inserted = insertColumnBeside(book, at('p3', 'head', 'k1'), 'given');
  const after = changed(inserted?.edit);
  expect(columns(after)).toEqual(['mark', 'column_1', 'length', 'twice']);
  expect(columns(changed(insertColumnBeside(book, at('p3', 'head', 'k3'), 'calc')?.edit))).toHaveLength(4);
  expect(columns(changed(moveColumnBy(book, at('p3', 'head', 'k2'), -1)?.edit))).toEqual([
    'length',
    'mark',
    'twice',
  ]);
  expect(moveColumnBy(book, at('p3', 'head', 'k1'), -1)).toBeUndefined();
  const removed = removeColumnAt(book, at('p3', 'head', 'k3'));
  expect(columns(changed(removed?.edit))).toEqual(['mark', 'length']);
  expect(removed?.place?.field).toBe('k2');
});

test('an option whose value and words are both written otherwise is the same one still', () => {
  const choice = {
    id: 'r9',
    kind: 'choice',
    name: 'head_by',
    entry: 'free',
    options: [{ value: 'free', label: 'free to turn' }, { value: 'fixed' }],
  } as const;
  const line = {
    id: 'r10',
    kind: 'calc',
    name: 'k_h',
    by: 'head_by',
    methods: [
      { id: 'm1', for: ['free'], formula: '1' },
      { id: 'm2', for: ['fixed'], formula: '2' },
    ],
  } as const;
  const [sheet, ...others] = smallBook().sheets;
  if (!sheet) throw new Error('the book has no sheet');
  const rows = { id: 'p9', kind: 'rows', rows: [choice, line] } as const;
  const book: Book = { ...smallBook(), sheets: [{ ...sheet, parts: [...sheet.parts, rows] }, ...others] };
  const after = withDetails(at('p9', 'r9', 'label'), { options: 'pinned = pinned at the cap\nfixed' }, book);
  expect(part(after, 'p9')).toMatchObject({
    rows: [{ entry: 'pinned' }, { methods: [{ for: ['pinned'] }, { for: ['fixed'] }] }],
  });
});
