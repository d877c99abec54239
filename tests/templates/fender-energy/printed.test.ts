import { expect, test } from 'vitest';
import { templateBook } from '../../../src/cli/books.ts';
import { joinEdits } from '../../../src/document/index.ts';
import { enterRows, enterValues, openNotebook } from '../../../src/notebook/index.ts';

const id = 'fender-energy';

test('nothing in the tables of guidelines and bands is entered but names and reasons; ships are', () => {
  const { model } = openNotebook(templateBook(id));
  const entered = [...model.items.values()].flatMap((item) =>
    item.kind === 'input column' && item.sheet === 'data' && item.type.kind === 'number' ? [item.id] : [],
  );
  expect(entered.filter((one) => !one.startsWith('data.ships.'))).toEqual([]);
  expect([...model.items.keys()].filter((one) => one.startsWith('data.')).length).toBeGreaterThan(40);
});

test.each([
  ['an abnormal factor', 'data.abnormal', { type: 'container', largest: '1.25' }, 'largest'],
  ['an angle factor', 'data.angles', { AF_t: '1' }, 'AF_t'],
  ['an end of a band', 'data.bands', { factor: 'softness factor', lo: '0' }, 'lo'],
  [
    'a hull pressure',
    'data.pressure',
    { ship_kind: 'bulk carrier', type: 'bulk carrier', p_t: '150' },
    'p_t',
  ],
])('%s in the place of the printed one is stated with a reason', (_, table, row, column) => {
  const book = templateBook(id);
  const notebook = openNotebook(book);
  const edit = enterRows(book, table, [row], 'criteria of the client');
  if (!edit.ok) throw new Error(edit.problems.map(({ message }) => message).join('; '));
  expect(notebook.apply(edit.value).ok).toBe(true);
  const item = notebook.model.items.get(`${table}.${column}`);
  const stated = item?.kind === 'formula column' && item.column.kind === 'calc' ? item.column.stated : [];
  expect(stated?.map(({ reason }) => reason)).toEqual(['criteria of the client']);
});

test('factors of the fender in the place of the example are stated with a reason', () => {
  const book = templateBook(id);
  const notebook = openNotebook(book);
  const names = ['tol', 'f_c', 'VF_min', 'VF_max', 'TF_min', 'TF_max', 'AG_min', 'AG_max'];
  const edit = enterValues(
    book,
    Object.fromEntries(names.map((name) => [`fender.${name}`, '1'])),
    'certificate of the maker',
  );
  if (!edit.ok) throw new Error(edit.problems.map(({ message }) => message).join('; '));
  expect(notebook.apply(joinEdits('a test', [edit.value])).ok).toBe(true);
  const reasons = names.map((name) => {
    const item = notebook.model.items.get(`fender.${name}`);
    return item?.kind === 'formula' ? item.stated?.statement.reason : undefined;
  });
  expect(reasons).toEqual(names.map(() => 'certificate of the maker'));
});
