import { expect, test } from 'vitest';
import { groupedSheets } from '../../../src/app/editing/grouped-sheets.ts';
import { addSheet, keyFor, moveSheetBy } from '../../../src/app/editing/sheet-edits.ts';
import { applyEdit, type Book, blankBook, type Edit } from '../../../src/document/index.ts';

const sheet = (key: string, group?: string) => ({ key, title: key, parts: [], ...(group && { group }) });
const book: Book = {
  ...blankBook(),
  sheets: [sheet('a', 'One'), sheet('b', 'Two'), sheet('c', 'One'), sheet('d', 'Two')],
};

/** Sheets as a person reads them: `One a c`. */
function read(edit: Edit | undefined): readonly string[] {
  if (!edit) return ['nothing'];
  const applied = applyEdit(book, edit);
  if (!applied.ok) throw new Error(applied.problems[0]?.message);
  return [...groupedSheets(applied.value.book)].map(([group, sheets]) =>
    [group, ...sheets.map(({ key }) => key)].join(' '),
  );
}

test.each([
  ['a', -1, ['nothing']],
  ['a', 1, ['Two b d', 'One c a']],
  ['c', -1, ['One c a', 'Two b d']],
  ['c', 1, ['One a', 'Two c b d']],
  ['b', -1, ['One a c b', 'Two d']],
  ['b', 1, ['One a c', 'Two d b']],
  ['d', 1, ['nothing']],
] as const)('%s moves by %i', (key, by, after) => {
  const found = read(moveSheetBy(book, key, by));
  expect([...found].sort()).toEqual([...after].sort());
});

test('a new sheet stands behind another one, or last', () => {
  expect(read(addSheet(book, 'b', sheet('e', 'Two')).edit)).toEqual(['One a c', 'Two b e d']);
  expect(read(addSheet(book, undefined, sheet('e')).edit)).toEqual(['One a c', 'Two b d', ' e']);
});

test('keys are made from titles, and are free', () => {
  expect(keyFor(book, 'Pile bearing, 2nd berth')).toBe('pile_bearing_2nd_berth');
  expect(keyFor(book, 'A')).toBe('a_2');
  expect(keyFor(book, '  ')).toBe('sheet');
  expect(keyFor(book, 'Sum')).toBe('sum_2');
});
