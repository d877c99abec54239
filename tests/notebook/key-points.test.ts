import { describe, expect, test } from 'vitest';
import { setCells, setEntry, type Table } from '../../src/document/index.ts';
import { openNotebook } from '../../src/notebook/index.ts';
import { findingsOf } from '../../src/record/findings/findings.ts';
import { stones } from '../keyed-table.ts';
import { blockOf, bookOf, calc, given } from '../make-book.ts';

const loads: Table = {
  id: 'loads',
  kind: 'table',
  name: 'loads',
  length: 2,
  columns: [
    { id: 'k', kind: 'given', name: 'of', type: 'text', chunks: [['granite', 'basalt']] },
    {
      id: 'd',
      kind: 'calc',
      name: 'dense',
      formula: 'LOOKUP(of; stones.stone; stones.ρ; "exact")',
      unit: 'kg/m^3',
    },
    {
      id: 'p',
      kind: 'calc',
      name: 'price',
      formula: 'LOOKUP(of; stones.stone; stones.cost; "first")',
      unit: 'USD/t',
    },
    { id: 'm', kind: 'calc', name: 'stands_in', formula: 'MATCH(of; stones.stone; "exact")', unit: '-' },
    { id: 'q', kind: 'calc', name: 'twice', formula: '2*dense', unit: 'kg/m^3' },
  ],
};
const lines = blockOf(
  'l',
  given('size', '3 m', 'm'),
  calc('all', { formula: 'SUM(loads.twice)', unit: 'kg/m^3' }),
  calc('mark', { formula: '"x" & INDEX(loads.of; 1)' }),
  calc('by_mark', { formula: 'LOOKUP(mark; stones.stone; stones.ρ; "exact")', unit: 'kg/m^3' }),
);
const open = (...rows: readonly (typeof lines)[]) => openNotebook(bookOf({ s: [stones, loads, ...rows] }));
const at = { sheet: 's', table: 'loads', column: 'k' };
const told = (notebook: ReturnType<typeof open>) =>
  findingsOf(notebook).problems.map(({ cell, message }) => `${cell}: ${message}`);

describe('a key that is entered and stands in no row: key-not-found', () => {
  test('is told once, where it is entered, however many look for it', () => {
    const notebook = open(blockOf('l', calc('all', { formula: 'SUM(loads.twice)', unit: 'kg/m^3' })));
    expect(told(notebook)).toEqual([]);
    notebook.apply(setCells(at, 1, ['Bassalt']));
    expect(told(notebook)).toEqual([
      's.loads.of: row 2: "Bassalt" stands in no row of “stones.stone”; the nearest there is "basalt"',
    ]);
    expect(findingsOf(notebook).problems[0]).toMatchObject({
      code: 'key-not-found',
      severity: 'error',
      hints: ['enter one that is listed there, or add a row to the list'],
    });
    for (const id of ['s.loads.dense', 's.loads.price', 's.loads.stands_in', 's.loads.twice']) {
      const column = notebook.column(id);
      expect(column.status === 'ok' && column.reading.statusAt(1), id).toBe('waiting');
    }
    // What follows leads to the entry.
    expect(notebook.result('s.all')).toMatchObject({
      status: 'waiting',
      problem: { message: expect.stringMatching(/row 2 of “s\.loads” fails: “of” is "Bassalt"/) },
    });
    notebook.apply(setCells(at, 1, [' BASALT']));
    expect(told(notebook)).toEqual([]);
  });

  test('names what is listed where nothing there is near, as it was typed', () => {
    const notebook = open();
    notebook.apply(setCells(at, 0, ['mud']));
    expect(told(notebook)).toEqual([
      's.loads.of: row 1: "mud" stands in no row of “stones.stone” (there: "Granite" and "basalt")',
    ]);
  });

  test('of a line, with the nearest number', () => {
    const look = { formula: 'LOOKUP(size; stones.ρ/1000 (kg/m^4); stones.cost; "exact")', unit: 'USD/t' };
    const notebook = open(blockOf('l', given('size', '3 m', 'm'), calc('c', look), calc('d', look)));
    expect(told(notebook)).toEqual([]);
    notebook.apply(setEntry({ sheet: 's', part: 'l', row: 'size' }, '2.6 m'));
    expect(told(notebook)).toEqual([
      expect.stringMatching(/^s\.size: 2\.6 m stands in no row of “.*”; the nearest there is 2\.7 m$/),
    ]);
  });
});

test('a key that is computed is mended in its formula, and told where it is looked for', () => {
  const notebook = open(lines);
  expect(told(notebook)).toEqual([
    expect.stringMatching(
      /^s\.by_mark: “mark” is "xgranite", which stands in no row of “stones\.stone”; the nearest there is "Granite"$/,
    ),
  ]);
});
