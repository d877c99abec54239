import { expect, test } from 'vitest';
import { type Book, blankBook, type Case } from '../../src/document/index.ts';
import { enterRows, openNotebook, statedValues } from '../../src/notebook/index.ts';
import { verifyTemplate } from '../../src/review/index.ts';

/** Layers whose friction a rule gives from depth, and their sum. */
const book: Book = {
  ...blankBook(),
  sheets: [
    {
      key: 's',
      title: 'S',
      parts: [
        {
          id: 't',
          kind: 'table',
          name: 'layers',
          length: 1,
          columns: [
            { id: 'h', kind: 'given', name: 'h', unit: 'm', chunks: [[1]] },
            { id: 'f', kind: 'calc', name: 'f', formula: '2 (kN/m) * h', unit: 'kN' },
            { id: 'k', kind: 'calc', name: 'kind', formula: 'IF(h > 5 m; "thick"; "thin")' },
          ],
        },
        {
          id: 'r',
          kind: 'rows',
          rows: [{ id: 'F', kind: 'calc', name: 'F', formula: 'SUM(layers.f)', unit: 'kN' }],
        },
      ],
    },
  ],
};

const example: Case = {
  id: 'one',
  title: 'one layer read by hand',
  kind: 'published',
  source: 'a worked example, p. 7',
  tables: {
    layers: [
      { h: 3, f: null, kind: 'sheared' },
      { h: 4, f: 10 },
      { h: 5, f: '0.02 MN' },
    ],
  },
  expect: [
    { name: 'F', value: 36, unit: 'kN' },
    { name: 'layers.f', row: 1, value: 6, unit: 'kN' },
    { name: 'layers.f', row: 2, value: 8, unit: 'kN' },
    { name: 'layers.kind', row: 1, text: 'thin' },
    { name: 'layers.kind', row: 2, text: 'thin' },
  ],
};

test('rows that are entered state the cells of calculated columns they have a value for, with a reason', () => {
  const notebook = openNotebook(book);
  const edit = enterRows(book, 'layers', example.tables?.layers ?? [], 'a worked example, p. 7');
  if (!edit.ok || !notebook.apply(edit.value).ok) throw new Error('the rows cannot be entered');
  const stated = statedValues(notebook).map(({ id, row, statement }) => [id, row, statement]);
  expect(stated).toEqual([
    ['s.layers.f', 1, { entry: '10', reason: 'a worked example, p. 7' }],
    ['s.layers.f', 2, { entry: '0.02 MN', reason: 'a worked example, p. 7' }],
    ['s.layers.kind', 0, { entry: 'sheared', reason: 'a worked example, p. 7' }],
  ]);
  expect(notebook.problems()).toEqual([]);
});

test('what is stated is used, and what the case expects of that cell is compared with the formula', () => {
  const [report] = verifyTemplate(book, { template: 'invented', cases: [example] }).cases;
  expect(report?.refused).toBeUndefined();
  expect(report?.judgements.filter(({ agrees }) => !agrees).map(({ words }) => words)).toEqual([]);
  const wrong = { ...example, expect: [{ name: 'layers.f', row: 2, value: 10, unit: 'kN' }] };
  const [doubtful] = verifyTemplate(book, { template: 'invented', cases: [wrong] }).cases;
  expect(doubtful?.agrees).toBe(false);
});

test('a column that the table does not have refuses the case', () => {
  const unknown = { ...example, tables: { layers: [{ h: 3, g: 10 }] } };
  const [report] = verifyTemplate(book, { template: 'invented', cases: [unknown] }).cases;
  expect(report?.refused).toContain('g');
});
