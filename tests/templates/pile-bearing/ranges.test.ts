import { expect, test } from 'vitest';
import { templateBook } from '../../../src/cli/books.ts';
import { type Edit, joinEdits } from '../../../src/document/index.ts';
import { enterRows, enterValues, type Item, lineNamed, openNotebook } from '../../../src/notebook/index.ts';

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

/** A number or level that is entered; the tables of factors are printed, and another value is stated. */
function givenOf(item: Item): readonly Entered[] {
  if (item.type.kind !== 'number' && item.type.kind !== 'point') return [];
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

test('nothing in the tables of factors is entered, and each of their numbers has both limits', () => {
  const { model } = openNotebook(templateBook(id));
  const printed = [...model.items.values()].filter((item) => item.id.startsWith('ref.'));
  expect(printed.length).toBeGreaterThan(30);
  const open = printed.filter((item) => {
    if (item.kind !== 'formula column' || item.column.kind !== 'calc') return true;
    const { min, max } = item.column.range ?? {};
    return item.type.kind === 'number' && (min === undefined || max === undefined);
  });
  expect(open.map((item) => item.id)).toEqual([]);
});

test.each([
  ['factors of safety', 'ref.fs', 'F_1', '1', 3, 'pile.c_comp'],
  ['resistance factors', 'ref.phi', 'φ_n', '1', 7, 'loads.c_φ'],
])(
  '%s of one in the place of those printed are stated, pointed out, and said of the checks',
  (_, table, column, value, rows, check) => {
    const book = templateBook(id);
    const notebook = openNotebook(book);
    const cells = Array.from({ length: rows }, () => ({ [column]: value }));
    const edits = [
      enterRows(book, table, cells, 'criteria of the client'),
      enterValues(book, { basis: check === 'loads.c_φ' ? 'LRFD' : 'ASD', φ_by: 'static: alpha' }, 'a test'),
    ].map((outcome) => {
      if (!outcome.ok) throw new Error(outcome.problems.map(({ message }) => message).join('; '));
      return outcome.value;
    });
    expect(notebook.apply(joinEdits('a test', edits)).ok).toBe(true);
    const item = notebook.model.items.get(`${table}.${column}`);
    const stated = item?.kind === 'formula column' && item.column.kind === 'calc' ? item.column.stated : [];
    expect(stated?.map(({ reason }) => reason)).toEqual(cells.map(() => 'criteria of the client'));
    const line = lineNamed(notebook.model, check);
    const verdict = line.ok ? notebook.verdict(line.value.id) : undefined;
    expect(verdict?.outOfRange?.data.on).toContain(`${table}.${column}`);
  },
);
