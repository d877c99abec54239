import { expect, test } from 'vitest';
import { clearCells } from '../../../../src/app/editing/cells/range-edits.ts';
import { removeColumnAt } from '../../../../src/app/editing/lines/column-edits.ts';
import { describeDeletion } from '../../../../src/app/editing/lines/describe-deletion.ts';
import {
  insertBelow,
  moveLine,
  removeLines,
  removeWholePart,
} from '../../../../src/app/editing/lines/line-edits.ts';
import { applyEdit, type Edit, insertSheet, joinEdits, removeSheet } from '../../../../src/document/index.ts';
import { at, smallBook } from '../../small-book.ts';

const book = smallBook();

/** What an edit of the small book took out. */
function told(edit: Edit | undefined): string | undefined {
  if (!edit) throw new Error('there is no edit');
  const applied = applyEdit(book, edit);
  if (!applied.ok) throw new Error(applied.problems.map(({ message }) => message).join('; '));
  return describeDeletion(applied.value.inverse);
}

const line = (id: string) => at('p2', id, 'value');
const row = (id: string) => at('p3', id, 'k2');

test.each([
  ['a column', removeColumnAt(book, at('p3', 'head', 'k3'))?.edit, 'column twice'],
  ['a line', removeLines(book, [line('r3')]), 'line M'],
  ['lines', removeLines(book, [line('r1'), line('r2'), line('r3')]), '3 lines'],
  ['a row of a table', removeLines(book, [row('r1')]), 'row'],
  ['rows of a table', removeLines(book, [row('r1'), row('r2')]), '2 rows'],
  ['lines and rows', removeLines(book, [line('r4'), row('r0'), row('r1')]), '2 rows and line c_M'],
  ['a block', removeWholePart(at('p2', '', '')), 'block Beam'],
  ['a table', removeWholePart(at('p3', '', '')), 'table spans'],
  ['words', removeWholePart(at('p1', '', '')), 'text'],
  ['a sheet', removeSheet('beam'), 'sheet Beam'],
] as const)('taking out %s is told by name', (_, edit, words) => {
  expect(told(edit)).toBe(words);
});

test.each([
  ['putting in a line', insertBelow(book, 'beam', line('r1'), 'given')?.edit],
  ['moving a line', moveLine(book, line('r1'), 1)?.edit],
  ['moving a row of a table', moveLine(book, row('r0'), 1)?.edit],
  ['clearing a cell', clearCells(book, [[row('r0')]])],
  [
    'a sheet in place of another',
    joinEdits('replace', [removeSheet('beam'), insertSheet(0, { key: 'slab', title: 'Slab', parts: [] })]),
  ],
] as const)('%s takes nothing out', (_, edit) => {
  expect(told(edit)).toBeUndefined();
});
