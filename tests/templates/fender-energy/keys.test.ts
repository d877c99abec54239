import { expect, test } from 'vitest';
import { templateBook } from '../../../src/cli/books.ts';
import { enterRows, openNotebook } from '../../../src/notebook/index.ts';

const misspelt: readonly (readonly [string, Readonly<Record<string, string>>, string, string])[] = [
  ['abnormal', { type: 'contaner' }, 'data.abnormal.type', 'container'],
  ['pressure', { ship_kind: 'bulk carier' }, 'data.pressure.ship_kind', 'bulk carrier'],
  ['friction', { pair: 'UHMWPE to steel' }, 'data.friction.pair', 'UHMW to steel'],
];

test.each(misspelt)('in %s the row %o is a problem of %s, with %s as the nearest', (table, row, id, near) => {
  const book = templateBook('fender-energy');
  const edit = enterRows(book, table, [row], 'a test');
  if (!edit.ok) throw new Error(edit.problems.map(({ message }) => message).join('; '));
  const notebook = openNotebook(book);
  expect(notebook.apply(edit.value).ok).toBe(true);
  const found = notebook.problems().filter(({ cell }) => cell === id);
  const [written] = Object.values(row);
  expect(found.map(({ message }) => message)).toEqual([`row 1: “${written}” is not one of the choices`]);
  // The nearest comes first; others that are near follow it.
  expect(found[0]?.hints[0]?.startsWith(`did you mean “${near}”`)).toBe(true);
});
