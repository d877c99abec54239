import { expect, test } from 'vitest';
import { templateBook } from '../../../src/cli/books.ts';
import { type Edit, joinEdits } from '../../../src/document/index.ts';
import { enterRows, enterValues, type Item, openNotebook } from '../../../src/notebook/index.ts';

const id = 'pile-bearing';

test('every number that is entered has a least and a greatest value, and says why', () => {
  const { model } = openNotebook(templateBook(id));
  const entered = [...model.items.values()].flatMap(givenOf);
  expect(entered.length).toBeGreaterThan(70);
  const open = entered.flatMap(({ name, range, note = '' }) =>
    range?.min !== undefined && range.max !== undefined && /Range: \S/.test(note) ? [] : [name],
  );
  expect(open).toEqual([]);
});

interface Entered {
  readonly name: string;
  readonly range?: { readonly min?: string; readonly max?: string };
  readonly note?: string;
}

/** A number or level that is entered; the tables of factors are those of their sources. */
function givenOf(item: Item): readonly Entered[] {
  if (item.id.startsWith('ref.') || (item.type.kind !== 'number' && item.type.kind !== 'point')) return [];
  if (item.kind === 'input') return item.row.kind === 'given' ? [{ ...item.row, name: item.id }] : [];
  if (item.kind !== 'input column' || item.column.kind !== 'given') return [];
  return [{ ...item.column, name: item.id }];
}

const layer = { soil: 'clay', h: '60 m', γ: '18 kN/m^3', γ_is: 'total', s_u1: '50 kPa', s_u2: '50 kPa' };
const beyond: readonly (readonly [
  string,
  Readonly<Record<string, string>>,
  Readonly<Record<string, string>>,
])[] = [
  ['a strength of clay in kPa for ksf', {}, { s_u1: '1000 ksf' }],
  ['a strength at the bottom likewise', {}, { s_u2: '1000 ksf' }],
  ['a weight of soil heavier than rock', {}, { γ: '60 kN/m^3' }],
  ['an angle of no soil', {}, { φ: '70 deg' }],
  ['friction of no soil', {}, { f_in: '2000 kPa' }],
  ['a level beyond any berth', { 'pile.El_tip': 'El. -900 ft' }, {}],
  ['a yield strength in MPa for ksi', { 'loads.f_y': '345 ksi' }, {}],
  ['a modulus in ksi for MPa', { 'loads.E_s': '29,000 MPa' }, {}],
  ['a rail load of no crane', { 'loads.w_c': '2,000 klf' }, {}],
  ['a strength of concrete in MPa for ksi', { "loads.f'_c": '40 ksi' }, {}],
];

test.each(beyond)('%s is pointed out', (_, lines, cells) => {
  const book = templateBook(id);
  const notebook = openNotebook(book);
  const edits: readonly Edit[] = [
    enterRows(book, 'pile.layers', [{ ...layer, ...cells }], 'a test'),
    enterValues(book, lines, 'a test'),
  ].map((outcome) => {
    if (!outcome.ok) throw new Error(outcome.problems.map(({ message }) => message).join('; '));
    return outcome.value;
  });
  expect(notebook.apply(joinEdits('a test', edits)).ok).toBe(true);
  const said = notebook
    .problems()
    .filter(({ code }) => code === 'out-of-range' || code === 'column-out-of-range');
  expect(said).toHaveLength(1);
});
