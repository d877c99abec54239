import { expect, test } from 'vitest';
import type { Row } from '../../src/document/index.ts';
import { openNotebook } from '../../src/notebook/index.ts';
import { sourcesOf } from '../../src/record/index.ts';
import { blockOf, bookOf } from '../make-book.ts';

const rows: readonly Row[] = [
  { id: 'a', kind: 'given', name: 'a', entry: '3 m', unit: 'm', reference: 'drawing 12' },
  {
    id: 'm',
    kind: 'given',
    name: 'm',
    entry: '2',
    unit: '-',
    reference: 'Handbook (2001), table 3, from memory',
  },
  { id: 'r', kind: 'choice', name: 'rule', entry: 'new', options: [{ value: 'new' }, { value: 'old' }] },
  {
    id: 'b',
    kind: 'calc',
    name: 'b',
    by: 'rule',
    unit: 'm',
    reference: 'arithmetic',
    methods: [
      { id: 'm1', for: ['new'], formula: 'a * m', reference: 'EN 1991-1-1:2002, 6.3' },
      { id: 'm2', for: ['old'], formula: 'a', reference: 'common practice, no source' },
    ],
  },
  { id: 'c', kind: 'calc', name: 'c', formula: 'b * 2', unit: 'm', reference: 'arithmetic' },
  { id: 'd', kind: 'calc', name: 'd', formula: 'a + 1 m', unit: 'm', reference: 'maker’s certificate' },
  { id: 'k', kind: 'check', name: 'k', formula: 'c <= 20 m', unit: 'm' },
];
const book = bookOf({ s: [blockOf('p', ...rows)] });

test('every reference has its kind, its lines, and what rests on it through other lines', () => {
  const found = sourcesOf(openNotebook(book));
  const told = found.map(({ reference, kind, lines, results }) => [
    reference,
    kind,
    lines.join(' '),
    results,
  ]);
  expect(new Set(told)).toEqual(
    new Set([
      ['drawing 12', 'no work cited', 's.a', 4],
      ['Handbook (2001), table 3, from memory', 'from memory', 's.m', 3],
      ['EN 1991-1-1:2002, 6.3', 'cited', 's.b', 3],
      ['arithmetic', 'own working', 's.c', 2],
      ['maker’s certificate', 'maker’s data wanted', 's.d', 1],
      ['', 'no reference', 's.rule s.k', 3],
    ]),
  );
  expect(found[0]?.results).toBe(4);
});

test('the method that is not in force brings no reference', () => {
  const notebook = openNotebook(book);
  expect(sourcesOf(notebook).some(({ reference }) => reference.startsWith('common practice'))).toBe(false);
});

const told = (rows: readonly Row[]) =>
  sourcesOf(openNotebook(bookOf({ s: [blockOf('p', ...rows)] }))).map(
    ({ reference, kind, lines, results }) => `${kind}: ${reference} beside ${lines.join(' ')}, ${results}`,
  );

test('a stated value rests on its reason, and no more on what its formula takes', () => {
  const [a, m, rule, b, c] = rows;
  const stated = { ...b, stated: { entry: '7 m', reason: 'letter of 3 May' } } as Row;
  const found = told([a, m, rule, stated, c].filter((row) => row !== undefined));
  expect(found).toContain('stated: letter of 3 May beside s.b, 2');
  expect(found).toContain('no work cited: drawing 12 beside s.a, 0');
  expect(found.filter((words) => words.includes('EN 1991'))).toEqual([]);
});

test('a linked line rests on the line it takes its value from, one to be linked on what it stood for', () => {
  const linked = {
    id: 'n',
    kind: 'calc',
    name: 'n',
    formula: 'a',
    unit: 'm',
    reference: 'structural analysis',
    link: { kind: 'given', entry: '2 m' },
  } as Row;
  const open = { id: 'o', kind: 'given', name: 'o', entry: '1 m', unit: 'm', toLink: 'A_e on “Pile”' } as Row;
  const [a] = rows;
  const found = told([a, linked, open].filter((row) => row !== undefined));
  expect(found).toEqual([
    'no work cited: drawing 12 beside s.a, 1',
    'to be linked: A_e on “Pile” beside s.o, 0',
  ]);
});

test('what only a method that is not in force takes counts for nothing', () => {
  const chooses = (entry: string): readonly Row[] =>
    rows.map((row) => (row.id === 'r' ? ({ ...row, entry } as Row) : row));
  const memory = (entry: string) => told(chooses(entry)).find((words) => words.startsWith('from memory'));
  expect(memory('new')).toMatch(/s\.m, 3$/);
  expect(memory('old')).toMatch(/s\.m, 0$/);
});
