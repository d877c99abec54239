import { expect, test } from 'vitest';
import {
  applyEdit,
  type Book,
  blankBook,
  type Calc,
  type CalcColumn,
  type CalcPlace,
  canonicalJson,
  type Edit,
  hashBook,
  insertMethod,
  moveMethod,
  openBook,
  removeMethod,
  setFormula,
  setMethodField,
  setMethodsBy,
  useMethods,
  useOneFormula,
  writeBook,
} from '../../src/document/index.ts';

const line: Calc = { id: 'a', kind: 'calc', name: 'a', formula: '1 m', unit: 'm', reference: 'R', note: 'N' };
const column: CalcColumn = { id: 'y', kind: 'calc', name: 'y', formula: '2 m' };
const book: Book = {
  ...blankBook(),
  sheets: [
    {
      key: 's',
      title: '',
      parts: [
        { id: 'p', kind: 'rows', rows: [line] },
        { id: 't', kind: 'table', name: 't', length: 0, columns: [column] },
      ],
    },
  ],
};
const methods = [
  { id: 'm', for: ['clay', 'silt'], formula: '1 m', reference: 'R', note: 'N' },
  { id: 'n', formula: '2 m' },
];
const places: readonly [string, CalcPlace, Calc | CalcColumn][] = [
  ['a line', { sheet: 's', part: 'p', row: 'a' }, line],
  ['a column', { sheet: 's', table: 't', column: 'y' }, column],
];

function after(start: Book, edit: Edit): Book {
  const applied = applyEdit(start, edit);
  if (!applied.ok) throw new Error(applied.problems[0]?.message);
  const back = applyEdit(applied.value.book, applied.value.inverse);
  // Whatever an edit does, its inverse takes back.
  expect(back.ok && back.value.book).toEqual(start);
  return applied.value.book;
}

function at(made: Book, place: CalcPlace): Calc | CalcColumn {
  const parts = made.sheets[0]?.parts ?? [];
  const found = parts.flatMap((part): readonly (Calc | CalcColumn)[] =>
    part.kind === 'rows' || part.kind === 'table'
      ? [...(part.kind === 'rows' ? part.rows : part.columns)].filter((one) => one.kind === 'calc')
      : [],
  );
  const one = found.find(({ id }) => id === ('row' in place ? place.row : place.column));
  if (!one) throw new Error('the line is gone');
  return one;
}

test.each(places)('%s of one formula gets methods and gives them up again', (_, place, start) => {
  const made = after(book, useMethods(place, start, 'soil', methods));
  expect(at(made, place)).toMatchObject({ by: 'soil', methods });
  for (const field of ['formula', 'reference', 'note']) expect(at(made, place)).not.toHaveProperty(field);
  const kept = after(made, useOneFormula(place, at(made, place), 'm'));
  expect(at(kept, place)).toEqual({ ...start, formula: '1 m', reference: 'R', note: 'N' });
});

test.each(places)('methods of %s come, go, move and change', (_, place, start) => {
  const made = after(book, useMethods(place, start, 'soil', methods));
  const more = after(made, insertMethod(place, 0, { id: 'o', for: ['sand'], formula: '3 m' }));
  const ids = (one: Book) => at(one, place).methods?.map(({ id }) => id);
  expect(ids(more)).toEqual(['o', 'm', 'n']);
  expect(ids(after(more, moveMethod(place, 'o', 1)))).toEqual(['m', 'o', 'n']);
  expect(ids(after(more, removeMethod(place, 'm')))).toEqual(['o', 'n']);
  const changed = after(more, setMethodField(place, 'o', 'formula', '4 m'));
  expect(at(changed, place).methods?.[0]).toEqual({ id: 'o', for: ['sand'], formula: '4 m' });
  expect(at(after(more, setMethodsBy(place, 'kind')), place).by).toBe('kind');
  expect(hashBook(changed)).not.toBe(hashBook(more));
});

const [[, place]] = places as [(typeof places)[number]];
const made = after(book, useMethods(place, line, 'soil', methods));

test.each([
  [
    'an option that another has',
    insertMethod(place, 0, { id: 'o', for: ['CLAY'], formula: '1' }),
    'book-option-twice',
  ],
  ['one for all others in front', moveMethod(place, 'n', 0), 'book-method-not-last'],
  ['options taken from one in front', setMethodField(place, 'm', 'for', undefined), 'book-method-not-last'],
  [
    'a formula beside methods',
    setFormula({ sheet: 's', part: 'p', row: 'a' }, '1'),
    'book-formula-or-methods',
  ],
  [
    'another id',
    {
      label: '',
      patches: [
        { kind: 'set', at: ['sheets', 's', 'parts', 'p', 'rows', 'a', 'methods', 'm', 'id'], value: 'z' },
      ],
    } satisfies Edit,
    'edit-field-fixed',
  ],
  ['a method that is not there', removeMethod(place, 'z'), 'edit-place-missing'],
])('%s is refused', (_, edit, code) => {
  const refused = applyEdit(made, edit);
  expect(!refused.ok && refused.problems.map((found) => found.code)).toContain(code);
});

test('the last method stays', () => {
  const one = after(made, removeMethod(place, 'm'));
  expect(applyEdit(one, removeMethod(place, 'n')).ok).toBe(false);
});

test('a file has the methods of a line in their order and opens as it was', () => {
  const text = writeBook(made);
  const opened = openBook(text);
  expect(opened.ok && canonicalJson(opened.value.book)).toBe(canonicalJson(made));
  expect(text.indexOf('"for"')).toBeGreaterThan(text.indexOf('"methods"'));
  expect(text.indexOf('"methods"')).toBeGreaterThan(text.indexOf('"by"'));
});
