import { describe, expect, test } from 'vitest';
import {
  type Book,
  blankBook,
  type Part,
  setCells,
  setEntry,
  setFormula,
  setRowField,
  setSettings,
  setUnit,
} from '../../src/document/index.ts';
import { openNotebook, writeUtilisation } from '../../src/notebook/index.ts';

const parts: readonly Part[] = [
  {
    id: 'p',
    kind: 'rows',
    rows: [
      { id: 'w', kind: 'given', name: 'w', entry: '3 m', unit: 'm' },
      { id: 'q', kind: 'given', name: 'q', entry: '5 kPa' },
      {
        id: 'k',
        kind: 'choice',
        name: 'kind',
        entry: 'open',
        options: [{ value: 'open' }, { value: 'closed' }],
      },
      { id: 'f', kind: 'choice', name: 'layer', entry: 'fill', from: 'layers.soil' },
      { id: 'l', kind: 'calc', name: 'load', formula: 'q * w' },
      { id: 'm', kind: 'calc', name: 'M', formula: 'load * w^2 / 8', unit: 'kN·m' },
      { id: 'c', kind: 'check', name: 'ok', formula: '20 (kN·m) >= M' },
      {
        id: 'd',
        kind: 'calc',
        name: 'deep',
        formula: 'LOOKUP(layer; layers.soil; layers.t; "exact")',
        unit: 'm',
      },
    ],
  },
  {
    id: 't',
    kind: 'table',
    name: 'layers',
    length: 2,
    columns: [
      { id: 's', kind: 'given', name: 'soil', type: 'text', chunks: [['fill', 'clay']] },
      { id: 'th', kind: 'given', name: 't', unit: 'm', range: { max: '20 m' }, chunks: [[2, 30]] },
    ],
  },
];
const book: Book = { ...blankBook(), sheets: [{ key: 's', title: 'S', parts }] };
const row = (id: string) => ({ sheet: 's', part: 'p', row: id });

function si(id: string, notebook = openNotebook(book)): number | undefined {
  const read = notebook.result(id);
  return read.status === 'ok' && read.value.kind === 'number' ? read.value.si : undefined;
}

describe('a notebook', () => {
  test('infers types where the unit column is blank, and takes a unit to read them in', () => {
    const notebook = openNotebook(book);
    expect(si('s.load', notebook)).toBe(15_000);
    expect(notebook.unitOf('s.load').text).toBe('kN/m');
    expect(si('s.M', notebook)).toBe((15_000 * 9) / 8);
  });

  test('reads a check either way round', () => {
    const notebook = openNotebook(book);
    expect(notebook.verdict('s.ok')).toMatchObject({ holds: true, utilisation: 16.875 / 20 });
  });

  test('an edit of an entry computes what depends on it and tells what changed', () => {
    const notebook = openNotebook(book);
    const applied = notebook.apply(setEntry(row('w'), '4 m'));
    expect(applied.ok && [...applied.value.changed].sort()).toEqual(
      expect.arrayContaining(['s.M', 's.load', 's.ok', 's.w']),
    );
    expect(si('s.load', notebook)).toBe(20_000);
    expect(notebook.verdict('s.ok')?.holds).toBe(false);
    if (applied.ok) notebook.apply(applied.value.inverse);
    expect(si('s.load', notebook)).toBe(15_000);
  });

  test('an entry of another dimension changes the types of what follows from it', () => {
    const notebook = openNotebook(book);
    notebook.apply(setEntry(row('q'), '5 kN/m^3'));
    expect(notebook.unitOf('s.load').text).toBe('kPa');
    expect(notebook.result('s.M').status).toBe('problem');
    notebook.apply(setEntry(row('q'), '6 kPa'));
    expect(si('s.M', notebook)).toBe((6000 * 3 * 9) / 8);
  });

  test('a formula with a problem is told, what depends on it waits, and mending heals both', () => {
    const notebook = openNotebook(book);
    notebook.apply(setFormula(row('l'), 'q * nosuch'));
    expect(notebook.result('s.load')).toMatchObject({ status: 'problem', problem: { code: 'name-unknown' } });
    expect(notebook.result('s.M').status).toBe('waiting');
    notebook.apply(setFormula(row('l'), 'q * w'));
    expect(si('s.M', notebook)).toBe((15_000 * 9) / 8);
  });

  test('a renamed line is not found under its old name', () => {
    const notebook = openNotebook(book);
    notebook.apply(setRowField(row('w'), 'name', 'width'));
    expect(notebook.result('s.load')).toMatchObject({ status: 'problem', problem: { data: { name: 'w' } } });
  });

  test('a unit column that disagrees refuses the line', () => {
    const notebook = openNotebook(book);
    notebook.apply(setUnit(row('l'), 'kN'));
    expect(notebook.result('s.load')).toMatchObject({
      status: 'problem',
      problem: { code: 'unit-disagrees' },
    });
  });

  test('a choice takes one of its list, or of the column it names', () => {
    const notebook = openNotebook(book);
    expect(si('s.deep', notebook)).toBe(2);
    notebook.apply(setEntry(row('f'), 'CLAY'));
    expect(si('s.deep', notebook)).toBe(30);
    notebook.apply(setEntry(row('k'), 'opn'));
    expect(notebook.result('s.kind')).toMatchObject({
      status: 'problem',
      problem: { code: 'choice-unknown' },
    });
    notebook.apply(setCells({ sheet: 's', table: 't', column: 's' }, 1, ['silt']));
    expect(notebook.result('s.layer')).toMatchObject({
      status: 'problem',
      problem: { code: 'choice-unknown' },
    });
  });

  test('warns of cells beyond their range and computes with them', () => {
    const notebook = openNotebook(book);
    expect(notebook.problems()).toMatchObject([
      { code: 'column-out-of-range', severity: 'warning', cell: 's.layers.t' },
    ]);
    notebook.apply(setCells({ sheet: 's', table: 't', column: 'th' }, 1, ['10 m']));
    expect(notebook.problems()).toEqual([]);
  });

  test('a unit the book defines is known after the edit that defines it', () => {
    const notebook = openNotebook(book);
    notebook.apply(setSettings('units', [{ symbol: 'slab', definition: '3 m' }]));
    notebook.apply(setEntry(row('w'), '2 slab'));
    expect(si('s.w', notebook)).toBe(6);
  });

  test('lines in a circle name the circle, with and without units', () => {
    const notebook = openNotebook(book);
    notebook.apply(setFormula(row('l'), 'M / w^2'));
    const read = notebook.result('s.load');
    expect(read.status === 'problem' && read.problem.message).toMatch(
      /s\.load.*s\.M.*s\.load|s\.M.*s\.load.*s\.M/,
    );
  });

  test('a chain of thousands of lines without units is understood', () => {
    const rows = Array.from({ length: 5000 }, (_, at) => ({
      id: `r${at}`,
      kind: 'calc' as const,
      name: `x${at}`,
      formula: at === 4999 ? '1 m' : `x${at + 1} + 1 m`,
    }));
    const chain: Book = {
      ...blankBook(),
      sheets: [{ key: 's', title: '', parts: [{ id: 'p', kind: 'rows', rows }] }],
    };
    expect(si('s.x0', openNotebook(chain))).toBe(5000);
  });
});

describe('a utilisation as printed', () => {
  test.each([
    [0.8, true, '80 %'],
    [0.0421, true, '4.2 %'],
    [0.9999, true, '100 %'],
    [1, true, '100 %'],
    [1.0001, false, '100.01 %'],
    [1.004, false, '100.4 %'],
    [1.03, false, '103 %'],
    [1 + 1e-13, false, 'just over 100 %'],
  ])('%f', (utilisation, holds, text) => {
    expect(writeUtilisation(utilisation, holds)).toBe(text);
  });
});
