import { describe, expect, test } from 'vitest';
import { setCells, setEntry, type Table } from '../../src/document/index.ts';
import { type Notebook, openNotebook } from '../../src/notebook/index.ts';
import { layersOf } from '../layers-of-soil.ts';
import { blockOf, bookOf, calc, choice, given } from '../make-book.ts';

const layers = layersOf([50, null, null], [null, 20, 0]);
const lines = blockOf(
  'l',
  choice('by', 'levels', 'lengths'),
  given('El', '9 m', 'm'),
  { ...given('L_in', '', 'm'), optional: true },
  calc('L', {
    unit: 'm',
    by: 'by',
    methods: [
      { id: 'm1', for: ['levels'], formula: 'El' },
      { id: 'm2', for: ['lengths'], formula: 'L_in' },
    ],
  }),
);
const open = (...parts: readonly (Table | typeof lines)[]) => openNotebook(bookOf({ s: [...parts] }));
const said = (notebook: Notebook) =>
  notebook
    .problems()
    .filter(({ code }) => code === 'entry-unread')
    .map(({ cell, message, severity }) => `${severity} ${cell}: ${message}`);
const cells = (column: string) => ({ sheet: 's', table: 'layers', column });

describe('an entry that only methods read which are not in force: entry-unread', () => {
  test('is a remark in the rows where it stands, with what chooses there', () => {
    const notebook = open(layers);
    expect(said(notebook)).toEqual([]);
    notebook.apply(setCells(cells('s'), 1, [50, 60]));
    notebook.apply(setCells(cells('N'), 0, [7]));
    expect(said(notebook)).toEqual([
      'warning s.layers.s_u: rows 2–3: the entry is not used for “sand”',
      'warning s.layers.N: row 1: the entry is not used for “clay”',
    ]);
    notebook.apply(setCells(cells('soil'), 0, ['sand', 'clay', 'clay']));
    expect(said(notebook)).toEqual([
      'warning s.layers.s_u: row 1: the entry is not used for “sand”',
      'warning s.layers.N: row 2: the entry is not used for “clay”',
    ]);
  });

  test('says first of all that what chooses there is blank, and what that counts as', () => {
    const columns = layers.columns.map((column) =>
      column.name === 'soil' ? { ...column, default: 'clay', chunks: [['clay', null, null]] } : column,
    ) as Table['columns'];
    const notebook = open({ ...layers, columns });
    expect(notebook.problems()[0]).toMatchObject({
      cell: 's.layers.N',
      message: 'row 2: “soil” is blank and counts as “clay”, for which the entry is not used',
      hints: ['say what “soil” is, or leave the entry blank'],
    });
  });

  test('is none where another formula reads the column, or a method in force elsewhere reads all of it', () => {
    const reads = blockOf('r', calc('s_max', { formula: 'MAX(KNOWN(layers.s_u))', unit: 'kPa' }));
    const notebook = open(layers, reads);
    notebook.apply(setCells(cells('s'), 1, [50]));
    expect(said(notebook)).toEqual([]);
    const [soil, s, N] = layers.columns;
    if (!soil || !s || !N) throw new Error('the table has columns');
    const whole: Table = {
      ...layers,
      columns: [
        soil,
        s,
        {
          id: 'g',
          kind: 'calc',
          name: 'g',
          unit: 'kPa',
          by: 'soil',
          methods: [
            { id: 'm1', for: ['clay'], formula: 'MAX(KNOWN(layers.s_u))' },
            { id: 'm2', for: ['sand'], formula: '0 kPa' },
          ],
        },
      ],
    };
    const other = open(whole);
    other.apply(setCells(cells('s'), 1, [50]));
    expect(said(other)).toEqual([]);
    other.apply(setCells(cells('soil'), 0, ['sand']));
    expect(said(other)).toEqual(['warning s.layers.s_u: rows 1–2: the entry is not used for “sand”']);
  });

  test('of a line, by the choice', () => {
    const notebook = open(lines);
    expect(said(notebook)).toEqual([]);
    notebook.apply(setEntry({ sheet: 's', part: 'l', row: 'L_in' }, '4 m'));
    expect(said(notebook)).toEqual(['warning s.L_in: the entry is not used for “levels”']);
    notebook.apply(setEntry({ sheet: 's', part: 'l', row: 'by' }, 'lengths'));
    expect(said(notebook)).toEqual([]);
  });
});
