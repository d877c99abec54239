import { expect, test } from 'vitest';
import { describeMove } from '../../../../src/app/editing/sheets/describe-move.ts';
import {
  addSheet,
  keyFor,
  moveSheetBy,
  removeSheetEdit,
  usersOfSheet,
} from '../../../../src/app/editing/sheets/sheet-edits.ts';
import { applyEdit, type Book, blankBook, type Edit, type Row } from '../../../../src/document/index.ts';
import { openNotebook } from '../../../../src/notebook/index.ts';
import { groupedSheets } from '../../../../src/record/findings/grouped-sheets.ts';
import { after } from '../applied.ts';

const sheet = (key: string, group?: string) => ({ key, title: key, parts: [], ...(group && { group }) });
const book: Book = {
  ...blankBook(),
  sheets: [sheet('a', 'One'), sheet('b', 'Two'), sheet('c', 'One'), sheet('d', 'Two')],
};

/** Sheets as a person reads them: `One a c`. */
function read(edit: Edit | undefined, of = book): readonly string[] {
  if (!edit) return ['nothing'];
  const applied = applyEdit(of, edit);
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

test.each([
  ['a', 1, ['Two b c', 'One a', 'Four d']],
  ['a', -1, ['nothing']],
  ['d', -1, ['One a', 'Four d', 'Two b c']],
  ['d', 1, ['nothing']],
] as const)('the only sheet of a group keeps it: %s moves by %i past another group', (key, by, after) => {
  const sheets = [sheet('a', 'One'), sheet('b', 'Two'), sheet('c', 'Two'), sheet('d', 'Four')];
  const lone: Book = { ...book, sheets };
  expect(read(moveSheetBy(lone, key, by), lone)).toEqual(after);
  // The sheets of the other group need not stand together in the file.
  const apart: Book = {
    ...book,
    sheets: [sheet('a', 'One'), sheet('b', 'Two'), sheet('d', 'Four'), sheet('c', 'Two')],
  };
  expect(read(moveSheetBy(apart, key, by), apart)).toEqual(after);
});

test('a move into another group, or out of one, is told', () => {
  expect(describeMove(moveSheetBy(book, 'c', 1) as Edit)).toBe('the sheet “c” moved into the group “Two”');
  const loose: Book = { ...book, sheets: [sheet('a'), sheet('b', 'Two'), sheet('c', 'Two')] };
  expect(describeMove(moveSheetBy(loose, 'b', -1) as Edit)).toBe(
    'the sheet “b” moved out of the group “Two”',
  );
  expect(describeMove(moveSheetBy(loose, 'c', -1) as Edit)).toBeUndefined();
  // A sheet without a group has no heading to lose.
  expect(describeMove(moveSheetBy(loose, 'a', 1) as Edit)).toBe('the sheet “a” moved into the group “Two”');
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

test('who refers to a sheet is named: formulas, methods that are not in force, and what chooses between them', () => {
  const rows = (id: string, ...all: readonly Row[]) => ({ id, kind: 'rows', rows: all }) as const;
  const option = {
    id: 'r1',
    kind: 'choice',
    name: 'rule',
    entry: 'a',
    options: [{ value: 'a' }, { value: 'b' }],
  } as const;
  const methods = [
    { id: 'm1', for: ['a'], formula: '1 m' },
    { id: 'm2', formula: 'basis.L' },
  ];
  const notebook = openNotebook({
    ...blankBook(),
    sheets: [
      {
        ...sheet('basis'),
        parts: [rows('p1', option, { id: 'r2', kind: 'given', name: 'L', entry: '2 m' })],
      },
      {
        ...sheet('use'),
        parts: [
          rows(
            'p2',
            { ...option, id: 'r3', name: 'own' },
            { id: 'r4', kind: 'calc', name: 'plain', formula: '2 * basis.L' },
            {
              id: 'r5',
              kind: 'calc',
              name: 'chosen',
              by: 'basis.rule',
              methods: [{ id: 'm3', formula: '1 m' }],
            },
            { id: 'r6', kind: 'calc', name: 'waiting', by: 'own', methods },
            { id: 'r7', kind: 'calc', name: 'free', formula: '3 m' },
          ),
        ],
      },
    ],
  });
  expect(usersOfSheet(notebook, 'basis').map(({ id }) => id)).toEqual([
    'use.plain',
    'use.chosen',
    'use.waiting',
  ]);
});

test('what a sheet was brought from goes with the last of its sheets, and comes back with it', () => {
  const brought: Book = {
    ...book,
    origins: [
      { id: 'o1', title: 'Fenders' },
      { id: 'o2', title: 'Bollards' },
    ],
    sheets: [
      { ...sheet('a'), origin: 'o1' },
      { ...sheet('b'), origin: 'o1' },
      { ...sheet('c'), origin: 'o2' },
      sheet('d'),
    ],
  };
  const once = after(brought, removeSheetEdit(brought, 'a'));
  expect(once.origins?.map(({ id }) => id)).toEqual(['o1', 'o2']);
  const twice = after(once, removeSheetEdit(once, 'b'));
  expect(twice.origins?.map(({ id }) => id)).toEqual(['o2']);
  expect(after(twice, removeSheetEdit(twice, 'c'))).not.toHaveProperty('origins');
});
